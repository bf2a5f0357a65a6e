import { countOf, EXTRA_KINDS, type Extra, type ExtraKind } from '../extras';
import { LEAVE_OUT, type Choice } from './asked';
import { cellText } from './cell';
import type { MeaningKey } from './meanings';
import { readQuantity } from './readQuantity';
import { cellsOf, type RawOpening } from './rowCells';

/*
 * Keystones, plinth blocks and rosettes of a row: counted in columns of their own, or named in its remarks and confirmed.
 */

const COLUMN: Readonly<Record<ExtraKind, MeaningKey>> = {
  keystone: 'keystone',
  'plinth block': 'plinthBlock',
  rosette: 'rosette',
};
const NAMED: Readonly<Record<ExtraKind, string>> = {
  keystone: 'key ?stones?',
  'plinth block': 'plinths?(?: blocks?)?',
  rosette: 'rosettes?',
};
const WORDS: Readonly<Record<string, number>> = { a: 1, an: 1, one: 1, two: 2, pair: 2, three: 3, four: 4 };
const COUNTED = String.raw`(?:\(?\b(\d{1,2}|a|an|one|two|pair|three|four)\)?(?: of)? )?`;

export const NAMES_AN_EXTRA = new RegExp(String.raw`\b(?:${Object.values(NAMED).join('|')})\b`, 'i');

/** How many of a kind a remark means that doesn't count them: blocks and rosettes come in pairs, one at each leg or corner. */
function usual(kind: ExtraKind, said: string): number {
  return kind !== 'keystone' && /s$/i.test(said) && !/^plinths?$/i.test(said) ? 2 : 1;
}

const FROM_OTHERS =
  /\b(?:by (?:the )?(?:owner|others?|gc|mfr|manufacturer)|n\.?i\.?c\b\.?|no|without|w\/o|exist\w*)\b/i;

/** What a remark proposes: every kind it names, `w/ keystone and (2) plinth blocks` is one keystone and two blocks. */
export function extrasChoices(text: string): readonly Choice[] {
  const extras = EXTRA_KINDS.flatMap((kind): Extra[] => {
    const match = new RegExp(String.raw`${COUNTED}\b(${NAMED[kind]})\b`, 'i').exec(text);
    if (match === null) return [];
    const count = match[1]?.toLowerCase();
    const each = count === undefined ? usual(kind, match[2] ?? '') : (WORDS[count] ?? Number(count));
    return each > 0 ? [{ kind, each }] : [];
  });
  const label = extras.map(({ kind, each }) => countOf(kind, each)).join(', ');
  const withThem: Choice = { label: `with ${label}, at the shop's price`, extras };
  const without: Choice = { label: 'priced without it' };
  return [...(FROM_OTHERS.test(text) ? [without, withThem] : [withThem, without]), LEAVE_OUT];
}

/** What the row's own columns count; a sentence for each cell that is no count. */
export function extrasOfColumns(raw: RawOpening): {
  readonly extras: readonly Extra[];
  readonly faults: readonly string[];
} {
  const faults: string[] = [];
  const extras = EXTRA_KINDS.flatMap((kind): Extra[] => {
    const [first] = cellsOf(raw, COLUMN[kind]);
    if (first === undefined) return [];
    const text = cellText(first.cell);
    if (/^(?:yes|y|x|true|✓)$/i.test(text)) return [{ kind, each: 1 }];
    if (/^(?:no|n|false|0)$/i.test(text)) return [];
    const count = readQuantity(first.cell, `The count of ${kind}s`);
    if (count.ok) return [{ kind, each: count.value }];
    faults.push(count.message);
    return [];
  });
  return { extras, faults };
}

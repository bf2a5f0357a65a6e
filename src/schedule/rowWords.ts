import { ENDS, HEAD_SHAPES, type Ends, type HeadShape } from '../head/head';
import { curveNotMade, readEnds, readHeadWords, type HeadWords } from '../head/words';
import { ok, type Result } from '../result';
import { cellText, typedBeforeDate } from './cell';
import { listed, quote } from './figure';
import type { Findings } from './given';
import { columnsFor } from './layout';
import { spokenName, type MeaningKey } from './meanings';
import type { OpeningField } from './opening';
import { readQuantity } from './readQuantity';
import { cellsOf, type RawOpening } from './rowCells';

/** A text; a mark such as 1-2 that a spreadsheet program made a date of is not used. */
export function textOf(raw: RawOpening, key: MeaningKey & OpeningField, say: Findings): string | null {
  const [first] = cellsOf(raw, key);
  if (first === undefined) return null;
  const text = cellText(first.cell);
  if (!(first.cell instanceof Date)) return text;
  const typed = typedBeforeDate(first.cell) ?? '';
  say.problem(
    key,
    `${spokenName(key)} is the date ${text} in the file, which is what a spreadsheet program makes of ${typed.replace('/', '-')} or ${typed}; please type it as text.`,
  );
  return null;
}

/** Headings that are none for a quantity, yet may count: "Qty LH", "Pairs". */
const MAY_COUNT = /\b(?:qty|quan\w*|pairs?|prs?)\b|^(?:total|count)$/i;

export function quantityOf(raw: RawOpening, say: Findings): number | null {
  const doubt = (sentence: string, choices?: readonly string[]) => {
    say.problem('quantity', sentence, choices);
    return null;
  };
  const [column] = columnsFor(raw.block, 'quantity');
  if (column === undefined) {
    const unread = raw.block.filter(({ key, heading }) => key === null && MAY_COUNT.test(heading));
    // Columns whose cells all are counts were asked about for the list as a whole.
    const odd = unread.filter(({ index }) => !/^(?:\d{1,4})?$/.test(cellText(raw.cells[index])));
    if (odd.length > 0) {
      const said = unread.map(({ index, heading }) => {
        const text = cellText(raw.cells[index]);
        return `${quote(heading)} ${text === '' ? 'is blank' : `says ${quote(text)}`}`;
      });
      return doubt(`${listed(said)}; please give one quantity.`);
    }
    say.note('The schedule has no quantity column, so one was taken.');
    return 1;
  }
  const [first, ...others] = cellsOf(raw, 'quantity');
  if (first === undefined) {
    const said = cellText(raw.cells[column.index]);
    return doubt(
      said === ''
        ? 'Quantity is blank; a whole number is needed.'
        : `Quantity must be a whole number of 1 or more; the cell says ${quote(said)}.`,
    );
  }
  if (raw.shared.has(first.column.index))
    return doubt('The quantity stands in a cell merged over several rows; please give each opening its own.');
  const figures = new Set<number>();
  for (const { cell } of [first, ...others.filter((other) => other.column.rank === first.column.rank)]) {
    const count = readQuantity(cell);
    if (!count.ok) return doubt(count.message);
    figures.add(count.value);
  }
  const [count = null, another] = figures;
  if (another === undefined) return count;
  return doubt(
    `Two columns give the quantity, ${listed([...figures].map(String))}; please say which is right.`,
    [...figures].map(String),
  );
}

/** What the row's head says besides its shape: "eyebrow on legs", "equilateral". */
type NamedHead = { readonly head: HeadShape | null; readonly inDoubt: boolean } & Partial<
  Pick<HeadWords, 'ends' | 'riseOf' | 'spanOf'>
> & {
    /** Named for its height: a rise above half the width is meant. */
    readonly isHigh?: boolean;
  };

/** The head the row names, or null; `inDoubt` where it names one that can't be used. */
export function headOf(raw: RawOpening, say: Findings): NamedHead {
  const [best, ...others] = cellsOf(raw, 'head').map(({ cell }) => ({ cell, read: headAndEnds(cellText(cell)) }));
  if (best === undefined) return { head: null, inDoubt: false };
  const said = quote(cellText(best.cell));
  if (!best.read.ok) {
    const known = curveNotMade(cellText(best.cell));
    say.problem(
      'head',
      known === null
        ? `The head can't be read: the cell says ${said}; accepted are ${listed(HEAD_SHAPES, 'or')}.`
        : `The head ${said} can't be taken as it is: ${known}.`,
    );
    return { head: null, inDoubt: true };
  }
  const { shape: head, ends, riseOf, spanOf } = best.read.value;
  if (RAKED.test(cellText(best.cell))) {
    say.problem(
      'head',
      `The head is given as ${said}, which is an arch with one high side or a straight slope; which?`,
      ['half segmental', 'shed'],
    );
    return { head: null, inDoubt: true };
  }
  if (cellText(best.cell).includes('?')) {
    say.problem('head', `The head is given as ${said}; is it ${head}?`, [head]);
    return { head: null, inDoubt: true };
  }
  for (const { read } of others) {
    // A second column that names no head ("Type": A, B, C) is no contradiction.
    if (!read.ok || read.value.shape === head) continue;
    say.problem(
      'head',
      `Two columns give different heads, ${head} and ${read.value.shape}; please say which is right.`,
      [head, read.value.shape],
    );
    return { head: null, inDoubt: true };
  }
  return { head, inDoubt: false, ends, riseOf, spanOf, isHigh: /horseshoe/i.test(cellText(best.cell)) };
}

const RAKED = /^rak(?:ed|ing) arch(?:ed)?$/i;

const WITH_ENDS =
  /^(.{2,40}?)\s*(?:w\/|with|on|,|;|\+|&|-)\s*((?:mitered )?(?:side )?legs?|(?:level|radial|mitered) ends?|level cuts?)\.?$/i;

/** The hand of a head with one high side: the same curve either way. */
const HAND = /^(.{2,40}?)[\s,(-]+((?:l\.?h\.?|r\.?h\.?|left|right)(?:[ -]hand)?)\)?$/i;

/** The hand that a head's cell names behind its shape; null for none. */
export function handIn(text: string): string | null {
  return HAND.exec(text)?.[2] ?? null;
}

const HAS_A_HAND: ReadonlySet<HeadShape> = new Set<HeadShape>([
  'quarter round',
  'quarter ellipse',
  'half segmental',
  'shed',
]);

/** "half round top, radial ends": a head, and how it ends; "quarter round LH": one, and its hand. */
function headAndEnds(text: string): Result<HeadWords> {
  const whole = readHeadWords(text);
  const handed = whole.ok ? undefined : HAND.exec(text)?.[1];
  const other = handed === undefined ? whole : readHeadWords(handed);
  const read = other.ok && HAS_A_HAND.has(other.value.shape) ? other : whole;
  const parts = read.ok ? null : WITH_ENDS.exec(text);
  if (parts === null) return read;
  const head = readHeadWords(parts[1] ?? '');
  const ends = readEnds(parts[2] ?? '');
  return head.ok && ends.ok ? ok({ ...head.value, ends: ends.value }) : read;
}

export function endsOf(raw: RawOpening, say: Findings): Ends | null {
  const [first] = cellsOf(raw, 'ends');
  if (first === undefined) return null;
  const read = readEnds(cellText(first.cell));
  if (read.ok) return read.value;
  const said = quote(cellText(first.cell));
  say.problem('ends', `The ends can't be read: the cell says ${said}; accepted are ${listed(ENDS, 'or')}.`);
  return null;
}

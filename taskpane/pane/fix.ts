import type { HeadShape } from '../../src/head/head';
import { SHAPES } from '../../src/head/shapes';
import { readEnds, readHead } from '../../src/head/words';
import { ok, refuse, type Result } from '../../src/result';
import type { Opening, OpeningField, OpeningInputs, Problem } from '../../src/schedule/opening';
import type { GivenLengths } from '../../src/schedule/given';
import { readLength } from '../../src/schedule/readLength';
import { readQuantity } from '../../src/schedule/readQuantity';
import { resolveShape } from '../../src/schedule/resolve';
import type { Standards } from '../../src/standards';
import type { Unit } from '../../src/unit';
import { fieldOf } from './fields';
import { asTyped } from './typed';

const SHAPE: readonly OpeningField[] = ['head', 'span', 'rise'];
const MUST_STAND: readonly OpeningField[] = ['quantity', 'head', 'span'];

/** Heads whose rise is typed; the others have it from their span, or have none. */
export function hasOwnRise(head: HeadShape): boolean {
  return SHAPES[head].rise.ofSpan === null;
}

/**
 * The opening at `at` with one field as the user typed it, judged by the schedule's own rules; head, span and rise are
 * judged together again. A bare length is in `typedIn`, the workbook's unit where left out. A text that can't be taken is
 * refused in a sentence and changes nothing.
 */
export function fixOpening(
  openings: readonly Opening[],
  at: number,
  field: OpeningField,
  text: string,
  standards: Standards,
  typedIn: Unit = standards.unit,
): Result<Opening> {
  const opening = openings[at];
  if (!opening) return refuse(`There is no opening ${at + 1} in this list any more.`);
  const read = readField(field, text.trim(), standards.unit, typedIn);
  if (!read.ok) return read;
  if (field === 'mark') {
    const mark = String(read.value ?? '').toLowerCase();
    const twin = openings.find((other, index) => index !== at && mark !== '' && other.mark.toLowerCase() === mark);
    if (twin) return refuse(`The mark "${text.trim()}" already stands in row ${twin.row}; give this opening another.`);
  }
  const next: Opening = {
    ...opening,
    [field]: read.value,
    problems: opening.problems.filter((one) => one.field !== field),
  };
  return ok(SHAPE.includes(field) ? withShape(opening, next, field, standards) : next);
}

function readField(field: OpeningField, text: string, unit: Unit, typedIn: Unit): Result<OpeningInputs[OpeningField]> {
  const { label, kind } = fieldOf(field);
  if (text === '')
    return MUST_STAND.includes(field) ? refuse(`${label} can't be left blank.`) : ok(field === 'mark' ? '' : null);
  if (field === 'head') return readHead(text);
  if (field === 'ends') return readEnds(text);
  if (field === 'sides' && !/^[12]$/.test(text)) return refuse(`Sides cased are 1 or 2; you typed "${text}".`);
  if (kind === 'count') return asTyped(readQuantity(text, label));
  if (kind === 'money') return readMoney(label, text);
  if (kind === 'length') {
    const zero = field === 'leg' || field === 'otherLeg' || field === 'reveal';
    return asTyped(readLength(text, { name: label, column: typedIn, unit, zero }));
  }
  return ok(text);
}

function readMoney(label: string, text: string): Result<number> {
  const figure = text.replace(/^\$\s*/, '').replace(/,(?=\d{3}(?:\D|$))/g, '');
  const value = /^\d+(?:\.\d+)?$/.test(figure) ? Number(figure) : NaN;
  return Number.isFinite(value) ? ok(value) : refuse(`${label} must be an amount of 0 or more; you typed "${text}".`);
}

/** Head, span and rise depend on one another: what was said against them is dropped and they are judged anew. */
function withShape(before: Opening, next: Opening, field: OpeningField, standards: Standards): Opening {
  // A rise left over from another head.
  const setAside = field === 'head' && next.head !== null && !hasOwnRise(next.head) && before.head !== next.head;
  const rise = setAside || (next.head === 'half round' && field === 'span') ? null : next.rise;
  const given: GivenLengths = {
    ...(next.span === null ? {} : { width: { value: next.span } }),
    ...(rise === null ? {} : { rise: { value: rise } }),
  };
  const problems: Problem[] = next.problems.filter((one) => !SHAPE.includes(one.field));
  const shape = resolveShape(given, next.head, false, standards, {
    note: () => undefined,
    rough: () => undefined,
    problem: (about, message) => void problems.push({ row: next.row, field: about, message }),
  });
  return { ...next, ...shape, problems, ...roughLeft(next, field, shape.rise !== before.rise) };
}

/** A figure the user typed no longer follows the rough opening it was worked out from. */
function roughLeft({ rough }: Opening, field: OpeningField, riseChanged: boolean): Pick<Opening, 'rough'> {
  if (rough === undefined) return {};
  const { span, rise } = rough;
  return {
    rough: {
      ...(span !== undefined && field !== 'span' ? { span } : {}),
      ...(rise !== undefined && field !== 'rise' && !riseChanged ? { rise } : {}),
    },
  };
}

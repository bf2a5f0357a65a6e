import type { HeadShape } from '../../src/head/head';
import { SHAPES } from '../../src/head/shapes';
import { ok, refuse, type Result } from '../../src/result';
import { readField } from '../../src/schedule/answerField';
import { FIELD_KINDS } from '../../src/schedule/fieldKinds';
import { isBare } from '../../src/schedule/readLength';
import type { Opening, OpeningField, OpeningInputs, Problem } from '../../src/schedule/opening';
import type { GivenLengths } from '../../src/schedule/given';
import { resolveShape } from '../../src/schedule/resolve';
import type { Standards } from '../../src/standards';
import type { Unit } from '../../src/unit';

const SHAPE: readonly OpeningField[] = ['head', 'span', 'rise'];

/** Heads whose rise is typed; the others have it from their span, or have none. */
export function hasOwnRise(head: HeadShape): boolean {
  return SHAPES[head].rise.ofSpan === null;
}

/** What was typed for a field of the opening at `at`; a mark that another has is refused. */
function readTyped(
  openings: readonly Opening[],
  at: number,
  field: OpeningField,
  text: string,
  unit: Unit,
): Result<OpeningInputs[OpeningField]> {
  const read = readField(field, text, unit);
  if (!read.ok || field !== 'mark') return read;
  const mark = String(read.value ?? '').toLowerCase();
  const twin = openings.find((other, index) => index !== at && mark !== '' && other.mark.toLowerCase() === mark);
  return twin
    ? refuse(`The mark "${text.trim()}" already stands in row ${twin.row}; give this opening another.`)
    : read;
}

/** What was typed, as an answer that is read the same in a workbook of the other unit. */
export function keptAnswer(
  openings: readonly Opening[],
  at: number,
  field: OpeningField,
  text: string,
  unit: Unit,
): Result<string> {
  const read = readTyped(openings, at, field, text, unit);
  if (!read.ok) return read;
  const typed = text.trim();
  return ok(FIELD_KINDS[field].kind === 'length' && typed !== '' && isBare(typed) ? `${typed} ${unit}` : typed);
}

/**
 * The opening at `at` with one field as the user typed it, judged by the schedule's own rules; head, span and rise are
 * judged together again. A bare length is in the workbook's unit. A text that can't be taken is
 * refused in a sentence and changes nothing.
 */
export function fixOpening(
  openings: readonly Opening[],
  at: number,
  field: OpeningField,
  text: string,
  standards: Standards,
): Result<Opening> {
  const opening = openings[at];
  if (!opening) return refuse(`There is no opening ${at + 1} in this list any more.`);
  const read = readTyped(openings, at, field, text, standards.unit);
  if (!read.ok) return read;
  const next: Opening = {
    ...opening,
    [field]: read.value,
    problems: opening.problems.filter((one) => one.field !== field),
  };
  return ok(SHAPE.includes(field) ? withShape(opening, next, field, standards) : next);
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

import type { Standards } from '../standards';
import { AS_LISTED, LEAVE_OUT, type Choice } from './asked';
import type { RowChanges } from './changes';
import { askedWith, atItsPlace } from './companions';
import { figure } from './figure';
import type { Findings, GivenLengths } from './given';
import type { Opening, Problem } from './opening';
import { straightRow } from './straightStock';

/*
 * Units side by side. A list may give the width of one or of all, and over them may go one head or a head each with a mull casing
 * between: nothing of this is assumed, each is an answer with its own price.
 */

const WORDS: Readonly<Record<string, number>> = {
  ...{ pair: 2, paired: 2, pairs: 2, twin: 2, twins: 2, two: 2, double: 2, trip: 3, triple: 3, triplet: 3, three: 3 },
  ...{ four: 4, quad: 4 },
};
const COUNTED = /\b(\d|two|three|four)[ -]?(?:wide|units?|windows?|mulled|ganged|lite?s?)\b/i;
const MOST_UNITS = 9;

/** How many units a remark speaks of; null where it doesn't say. */
function unitsIn(text: string): number | null {
  const counted = COUNTED.exec(text)?.[1]?.toLowerCase();
  const word = /\b(pair(?:ed|s)?|twins?|trip(?:le|let)?|double|quad)\b/i.exec(text)?.[1]?.toLowerCase();
  const units = counted === undefined ? WORDS[word ?? ''] : (WORDS[counted] ?? Number(counted));
  return units !== undefined && units >= 2 && units <= MOST_UNITS ? units : null;
}

/** What may be meant by units that stand together, as listed first. */
export function togetherChoices(text: string): readonly Choice[] {
  const units = unitsIn(text);
  const counts = units === null ? [2, 3] : [units];
  return [
    AS_LISTED,
    ...counts.flatMap((count): Choice[] => [
      { label: `one head over ${count} units of the width listed`, together: { units: count, heads: 'one' } },
      { label: `${count} heads of the width listed, with a mull casing`, together: { units: count, heads: 'each' } },
    ]),
    LEAVE_OUT,
  ];
}

/** The width of one head over several units, from that of one of them. */
export function underOneHead(
  given: GivenLengths,
  { together }: RowChanges,
  { mullPost }: Standards,
  say: Findings,
): void {
  if (together?.heads !== 'one') return;
  const { units } = together;
  const width = given.width?.value;
  if (width === undefined) {
    const fault = `One head over ${units} units needs the width of one unit, or please give the span of the head.`;
    given.width = { fault };
    delete given.roughWidth;
    return;
  }
  const span = units * width + (units - 1) * mullPost;
  given.width = { value: span };
  say.note(`Span ${figure(span)} is ${units} units of ${figure(width)}, ${figure(mullPost)} between them.`);
  if (given.rise?.value !== undefined) say.note(`Rise ${figure(given.rise.value)} is taken for the one head over all.`);
}

/**
 * Heads of their own over units side by side: so many more of them, legs only at the two outer sides, and between two units one
 * mull casing of the same profile, as long as a leg. Other openings stay as they are.
 */
export function asTogether(changes: RowChanges, opening: Opening, standards: Standards): readonly Opening[] {
  const { together, raw } = changes;
  if (together?.heads !== 'each') return [opening];
  const { units } = together;
  const { quantity, leg, mark, problems } = opening;
  const shared = (problem: Problem) => askedWith(raw, problem);
  const times = (count: number) => (quantity === null ? null : quantity * count);
  const hasLegs = leg !== null && leg > 0;
  const note = `${units} heads side by side, with a mull casing between each two.`;
  const notes = [...opening.notes, note];
  const heads: Opening[] = !hasLegs
    ? [{ ...opening, quantity: times(units), notes }]
    : [
        // One leg each for the two outer units; those between them stand on mull casings alone.
        { ...opening, quantity: times(2), otherLeg: 0, notes },
        ...(units === 2
          ? []
          : [
              {
                ...{
                  ...opening,
                  mark: `${mark} middle`.trim(),
                  quantity: times(units - 2),
                  leg: 0,
                  otherLeg: null,
                  notes,
                },
                problems: problems.map(shared),
              },
            ]),
      ];
  const count = times(units - 1);
  const said = `Mull casing of ${mark === '' ? 'the units' : mark}: ${units - 1} for each row of units.`;
  const asks: Problem[] = hasLegs
    ? []
    : [{ row: raw.row, field: 'span', message: 'The length of the mull casing follows from the leg; please give it.' }];
  const open = problems.filter(({ field }) => field === 'quantity' || field === 'leg').map(shared);
  const straight = straightRow(opening, { count: count ?? 1, length: leg ?? 1, said }, [...open, ...asks], shared);
  const mull = { ...straight, mark: `${mark} mull`.trim(), remarks: null, quantity: count };
  const [first = opening, ...middle] = heads;
  return [asCounted(first, changes, standards), ...middle, hasLegs ? mull : { ...mull, span: null }];
}

/** The heads with the number that was given for them alone: what is given for the row is how many times its units come. */
function asCounted(heads: Opening, changes: RowChanges, standards: Standards): Opening {
  const { at: _place, ...counted } = atItsPlace(heads, 1, changes, standards);
  return { ...counted, ...(heads.at === undefined ? {} : { at: heads.at }), countedAt: `${changes.raw.at}.1` };
}

import type { HeadShape } from '../head/head';
import { SHAPES } from '../head/shapes';
import type { Standards } from '../standards';
import { capital, figure, listed } from './figure';
import type { Findings, GivenLengths } from './given';
import { fromHeights, fromLeg, fromRadius, type Candidate } from './riseSources';

/** The rise from whichever figures give it; all that do must agree. */
export function resolveRise(
  given: GivenLengths,
  head: HeadShape | null,
  span: number | null,
  standards: Standards,
  tolerance: number,
  say: Findings,
): number | null {
  if (given.rise?.fault !== undefined) {
    say.problem('rise', given.rise.fault, given.rise.choices);
    return null;
  }
  if (given.rise !== undefined && given.rise.value === 0) {
    const advice = head === null ? 'please name the head; straight has none' : `a ${head} head has one`;
    say.problem('rise', `Rise is 0; ${advice}.`);
    return null;
  }
  const faults: string[] = [];
  const candidates: Candidate[] = [];
  const near = (value: number) => (rise: number) => Math.abs(rise - value) <= tolerance;
  if (head === 'half round' && span !== null)
    candidates.push({
      rise: span / 2,
      how: `half the width is ${figure(span / 2)}`,
      note: null,
      agrees: near(span / 2),
    });
  const stated = given.rise?.value;
  if (stated !== undefined)
    candidates.push({ rise: stated, how: `rise is ${figure(stated)}`, note: null, agrees: near(stated) });
  const before = candidates.length;
  const wrong = fromHeights(given, standards, near, candidates, faults, say);
  const tooSmall = fromRadius(given, head, span, tolerance, candidates, faults, say);
  if (wrong !== null || tooSmall !== null) {
    say.problem('rise', wrong ?? tooSmall ?? '');
    return null;
  }
  fromLeg(given, near, candidates);
  const first = candidates[0];
  if (first === undefined) {
    // Where the shape is not known either, the question about the shape asks for the rise as well.
    if (head !== null || faults.length > 0)
      say.problem(
        'rise',
        missing(head, span, faults),
        given.radius?.fault === undefined ? undefined : given.radius.choices,
      );
    return null;
  }
  for (const fault of faults) say.note(`${fault} It was not needed.`);
  const against = candidates.filter((other) => !other.agrees(first.rise));
  if (against.length > 0) {
    const lead =
      head === 'half round' && span !== null
        ? `A half round ${figure(span)} wide${ofRough(given, standards)} has a rise of ${figure(span / 2)}`
        : capital(first.how);
    const choices = [...new Set([first, ...against].map(({ rise }) => figure(rise)))];
    say.problem('rise', `${lead}, but ${listed(against.map(({ how }) => how))}; please say which is right.`, choices);
    return null;
  }
  againstHeight(given, first.rise, tolerance, say);
  if (first.rough !== undefined) say.rough('rise', first.rough);
  if (before === 0 && first.note !== null) say.note(first.note);
  else if (head === 'half round' && stated === undefined)
    say.note(`Rise ${figure(first.rise)} is half the width of the half round.`);
  else if (stated !== undefined && Math.abs(stated - first.rise) > 1e-9)
    say.note(`The rise is given as ${figure(stated)}; ${figure(first.rise)} is half the width and was used.`);
  return withinReach(head, span, first.rise, tolerance, say);
}

/** A width that nobody wrote: where it comes from. */
function ofRough({ width, roughWidth }: GivenLengths, { roughWidth: allowance }: Standards): string {
  if (width !== undefined || roughWidth?.value === undefined) return '';
  return ` (the rough opening ${figure(roughWidth.value)} less ${figure(allowance)})`;
}

/** A leg up to the spring line and the rise make the height, where nothing else says where the spring line is. */
function againstHeight(
  { leg, height, springHeight }: GivenLengths,
  rise: number,
  tolerance: number,
  say: Findings,
): void {
  if (!leg?.value || height?.value === undefined || springHeight !== undefined) return;
  const left = height.value - rise;
  if (Math.abs(left - leg.value) <= tolerance) return;
  say.problem(
    'leg',
    `The leg ${figure(leg.value)} and the rise ${figure(rise)} make ${figure(leg.value + rise)}, but the height is ${figure(height.value)}; please give the leg.`,
    [figure(leg.value), ...(left > 0 ? [figure(left)] : [])],
  );
}

function missing(head: HeadShape | null, span: number | null, faults: readonly string[]): string {
  if (head === 'half round' && span === null) return 'Rise is unknown because the width is.';
  const [fault] = faults;
  if (fault !== undefined) return fault;
  const rule = head === null ? null : SHAPES[head].rise;
  if (rule?.asked !== undefined) return `Rise is missing; please give the ${rule.asked}.`;
  const other = rule?.ofRadius ? `, the radius${span === null ? ' with the width' : ''}` : '';
  return `Rise is missing; please give the rise${other} or the heights to the crown and to the spring line.`;
}

/** A rise that can be made and is most likely another: asked about. */
function unusual(why: string, rise: number, span: number, say: Findings, or: number[] = []): null {
  const sentence = `The rise ${figure(rise)} over a width of ${figure(span)} ${why}; please confirm it.`;
  say.problem('rise', sentence, [rise, ...or].map(figure));
  return null;
}

/** Heads whose rise is that of their corners: a small one is nothing unusual. */
const OF_CORNERS: ReadonlySet<HeadShape | null> = new Set<HeadShape | null>(['radius corners', 'clipped corners']);

/** Refuses a rise that the shape cannot have. */
function withinReach(
  head: HeadShape | null,
  span: number | null,
  rise: number,
  tolerance: number,
  say: Findings,
): number | null {
  if (span === null) return rise;
  const misfit = head === null ? undefined : SHAPES[head].rise.misfit;
  const tooHigh = rise > span ? `A rise of ${figure(rise)} over a width of ${figure(span)} can't be right.` : null;
  const why = misfit ? misfit(span, rise, tolerance, figure) : tooHigh;
  const aboveHalf = why === null && rise > span / 2 + tolerance;
  if (aboveHalf && head === 'segmental')
    say.note(
      `The rise ${figure(rise)} is more than half the width ${figure(span)}, so the arc is more than a half circle.`,
    );
  if (why === null && !say.riseIsMeant) {
    if (aboveHalf && (head === 'segmental' || head === 'elliptical'))
      return unusual('is more than half the width', rise, span, say);
    if (!OF_CORNERS.has(head) && rise < span / 75) return unusual('is very flat', rise, span, say);
    const inches = say.riseInInches ?? null;
    if (inches !== null && rise < span / 30 && inches >= span / 30 && inches <= span / 2 + tolerance)
      return unusual('is flat, and would not be in inches', rise, span, say, [inches]);
  }
  if (why === null) return rise;
  say.problem('rise', why);
  return null;
}

import type { HeadShape } from '../head/head';
import type { Standards } from '../standards';
import { perInch } from '../unit';
import { figure, listed } from './figure';
import type { OpeningField, RoughFigures } from './opening';

/** A length as the row gives it: read, or present and unreadable (`fault` is the sentence), or null where it is blank. */
export type Given =
  { readonly value: number; readonly fault?: undefined } | { readonly value?: undefined; readonly fault: string };
export type GivenLengths = Partial<
  Record<
    'width' | 'roughWidth' | 'height' | 'headHeight' | 'roughHeight' | 'springHeight' | 'leg' | 'rise' | 'radius',
    Given
  >
>;

/** Collects what is to be said about one opening. */
export interface Findings {
  note(sentence: string): void;
  problem(field: OpeningField, sentence: string): void;
  /** The span or the rise is this rough figure less the shop's allowance. */
  rough(field: keyof RoughFigures, figure: number): void;
}

/** Figures that should agree may differ by 1/32 in: schedules are rounded. */
const TOLERANCE_INCHES = 1 / 32;

export interface Shape {
  readonly head: HeadShape | null;
  readonly span: number | null;
  readonly rise: number | null;
}

/** Head, span and rise from whatever the row gives; what had to be worked out is noted, what contradicts is a problem. */
export function resolveShape(
  given: GivenLengths,
  stated: HeadShape | null,
  headInDoubt: boolean,
  standards: Standards,
  say: Findings,
): Shape {
  const tolerance = TOLERANCE_INCHES * perInch(standards.unit) * (1 + 1e-9);
  const span = resolveSpan(given, stated, standards, tolerance, say);
  if (stated === 'straight') return { head: stated, span, rise: noRise(given, tolerance, say) };
  if (stated === 'round' || stated === 'quarter round') {
    if (span !== null) checkWhole(given, stated, span, tolerance, say);
    return { head: stated, span, rise: null };
  }
  const rise = resolveRise(given, stated, span, standards, tolerance, say);
  if (stated !== null) return { head: stated, span, rise };
  if (headInDoubt) return { head: null, span, rise };
  return { head: inferHead(span, rise, tolerance, say), span, rise };
}

function resolveSpan(
  given: GivenLengths,
  head: HeadShape | null,
  standards: Standards,
  tolerance: number,
  say: Findings,
): number | null {
  const { width, roughWidth, radius, rise } = given;
  if (width?.fault !== undefined) {
    say.problem('span', width.fault);
    return null;
  }
  const allowance = standards.roughWidth;
  if (width !== undefined) {
    if (roughWidth?.fault !== undefined) say.note(`${roughWidth.fault} The opening's own width was used.`);
    else if (roughWidth !== undefined && roughWidth.value < width.value - tolerance) {
      say.problem(
        'span',
        `The rough opening ${figure(roughWidth.value)} is narrower than the width ${figure(width.value)}.`,
      );
      return null;
    } else if (roughWidth !== undefined && Math.abs(roughWidth.value - width.value - allowance) > tolerance)
      say.note(
        `The rough opening ${figure(roughWidth.value)} is not the width ${figure(width.value)} plus the usual ${figure(allowance)}; the width was used.`,
      );
    return width.value;
  }
  if (roughWidth?.fault !== undefined) {
    say.problem('span', roughWidth.fault);
    return null;
  }
  if (roughWidth !== undefined) {
    const span = roughWidth.value - allowance;
    if (span <= 0) {
      say.problem('span', `The rough opening ${figure(roughWidth.value)} less ${figure(allowance)} leaves no width.`);
      return null;
    }
    say.note(`Width ${figure(span)} is the rough opening ${figure(roughWidth.value)} less ${figure(allowance)}.`);
    say.rough('span', roughWidth.value);
    return span;
  }
  const r = radius?.value;
  if (r !== undefined && (head === 'half round' || head === 'round')) {
    say.note(`Width ${figure(2 * r)} is twice the radius ${figure(r)}.`);
    return 2 * r;
  }
  if (r !== undefined && head === 'quarter round') {
    say.note(`Width ${figure(r)} is the radius of the quarter round.`);
    return r;
  }
  const h = rise?.value;
  if (r !== undefined && h !== undefined && h > 0 && h <= r && head === 'segmental') {
    const span = 2 * Math.sqrt(h * (2 * r - h));
    say.note(`Width ${figure(span)} follows from the radius ${figure(r)} and the rise ${figure(h)}.`);
    return span;
  }
  say.problem('span', 'Width is missing; please give the width of the opening or of its rough opening.');
  return null;
}

function noRise(given: GivenLengths, tolerance: number, say: Findings): null {
  const { rise, radius } = given;
  if (rise?.value !== undefined && rise.value > tolerance)
    say.problem(
      'head',
      `The head is straight, yet a rise of ${figure(rise.value)} is given; please say which is right.`,
    );
  else if (radius?.value !== undefined)
    say.problem(
      'head',
      `The head is straight, yet a radius of ${figure(radius.value)} is given; please say which is right.`,
    );
  for (const { fault } of [rise ?? {}, radius ?? {}] as { fault?: string }[])
    if (fault !== undefined) say.note(`${fault} A straight head needs none.`);
  return null;
}

/** Round and quarter-round heads follow from the width; figures given beside it must say the same. */
function checkWhole(
  given: GivenLengths,
  head: 'round' | 'quarter round',
  span: number,
  tolerance: number,
  say: Findings,
): void {
  const radius = head === 'round' ? span / 2 : span;
  const off = (value: number, ...right: number[]) => right.every((figure) => Math.abs(value - figure) > tolerance);
  const { rise, height, springHeight, leg } = given;
  const name = head === 'round' ? 'round' : 'quarter-round';
  if (given.radius?.value !== undefined && off(given.radius.value, radius))
    say.problem(
      'span',
      `A ${name} head ${figure(span)} wide has a radius of ${figure(radius)}; the schedule says ${figure(given.radius.value)}.`,
    );
  if (rise?.value !== undefined && rise.value !== 0 && off(rise.value, span, ...(head === 'round' ? [span / 2] : [])))
    say.problem(
      'rise',
      `A ${name} head ${figure(span)} wide is ${figure(span)} high; the schedule says its rise is ${figure(rise.value)}.`,
    );
  const top = height?.value;
  const below = springHeight?.value ?? leg?.value;
  if (head === 'round' && top !== undefined && off(top, span))
    say.problem(
      'span',
      `A round opening is as wide as it is high; the schedule says ${figure(span)} wide and ${figure(top)} high.`,
    );
  if (head === 'quarter round' && top !== undefined && below !== undefined && off(top - below, span))
    say.problem(
      'span',
      `A quarter-round head ${figure(span)} wide is ${figure(span)} high; height less spring height is ${figure(top - below)}.`,
    );
}

interface Candidate {
  readonly rise: number;
  /** "rise 6", "radius 30 on a width of 36 gives a rise of 6". */
  readonly how: string;
  /** For the note where this one is used; null where it was simply copied. */
  readonly note: string | null;
  readonly agrees: (rise: number) => boolean;
  /** The rough figure behind it, where there is one. */
  readonly rough?: number;
}

function resolveRise(
  given: GivenLengths,
  head: HeadShape | null,
  span: number | null,
  standards: Standards,
  tolerance: number,
  say: Findings,
): number | null {
  if (given.rise?.fault !== undefined) {
    say.problem('rise', given.rise.fault);
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
    if (head !== null || faults.length > 0) say.problem('rise', missing(head, span, faults));
    return null;
  }
  for (const fault of faults) say.note(`${fault} It was not needed.`);
  const against = candidates.filter((other) => !other.agrees(first.rise));
  if (against.length > 0) {
    const lead =
      head === 'half round' && span !== null
        ? `A half round ${figure(span)} wide has a rise of ${figure(span / 2)}`
        : capitalized(first.how);
    say.problem('rise', `${lead}, but ${listed(against.map(({ how }) => how))}; please say which is right.`);
    return null;
  }
  if (first.rough !== undefined) say.rough('rise', first.rough);
  if (before === 0 && first.note !== null) say.note(first.note);
  else if (head === 'half round' && stated === undefined)
    say.note(`Rise ${figure(first.rise)} is half the width of the half round.`);
  else if (stated !== undefined && Math.abs(stated - first.rise) > 1e-9)
    say.note(`The rise is given as ${figure(stated)}; ${figure(first.rise)} is half the width and was used.`);
  return withinReach(head, span, first.rise, tolerance, say);
}

function fromHeights(
  given: GivenLengths,
  standards: Standards,
  near: (value: number) => (rise: number) => boolean,
  candidates: Candidate[],
  faults: string[],
  say: Findings,
): string | null {
  const { springHeight, headHeight, height, roughHeight } = given;
  for (const { fault } of [springHeight ?? {}, headHeight ?? {}, height ?? {}] as { fault?: string }[])
    if (fault !== undefined) faults.push(fault);
  const spring = springHeight?.value;
  if (spring === undefined) return null;
  let top = headHeight?.value ?? height?.value;
  let name = headHeight?.value === undefined ? 'height' : 'head height';
  let rough: number | undefined;
  if (top === undefined && roughHeight?.value !== undefined) {
    top = roughHeight.value - standards.roughHeight;
    name = 'height';
    rough = roughHeight.value - spring;
    say.note(
      `Height ${figure(top)} is the rough opening ${figure(roughHeight.value)} less ${figure(standards.roughHeight)}.`,
    );
  }
  if (top === undefined) return null;
  if (top <= spring) return `Spring height ${figure(spring)} is not below the ${name} ${figure(top)}.`;
  const rise = top - spring;
  candidates.push({
    rise,
    how: `${name} ${figure(top)} less spring height ${figure(spring)} gives ${figure(rise)}`,
    note: `Rise ${figure(rise)} is the ${name} ${figure(top)} less the spring height ${figure(spring)}.`,
    agrees: near(rise),
    ...(rough === undefined ? {} : { rough }),
  });
  return null;
}

function fromRadius(
  given: GivenLengths,
  head: HeadShape | null,
  span: number | null,
  tolerance: number,
  candidates: Candidate[],
  faults: string[],
  say: Findings,
): string | null {
  if (given.radius?.fault !== undefined) faults.push(given.radius.fault);
  const radius = given.radius?.value;
  if (radius === undefined || span === null) return null;
  if (head === 'elliptical' || head === 'three-centered') {
    say.note(`The radius ${figure(radius)} was not used: a head of this shape has more than one.`);
    return null;
  }
  const half = span / 2;
  if (radius < half - tolerance) return `A radius of ${figure(radius)} is less than half the width ${figure(span)}.`;
  const reach = Math.max(radius, half);
  const pointed = head === 'pointed';
  const rise = pointed ? Math.sqrt(half * (2 * reach - half)) : reach - Math.sqrt((reach - half) * (reach + half));
  const radiusOf = (h: number) => (pointed ? (half * half + h * h) / span : (half * half + h * h) / (2 * h));
  candidates.push({
    rise,
    how: `radius ${figure(radius)} on a width of ${figure(span)} gives ${figure(rise)}`,
    note: `Rise ${figure(rise)} follows from the radius ${figure(radius)} and the width ${figure(span)}.`,
    // Near a half round a rounded radius moves the rise far, so either figure may be the one that agrees.
    agrees: (h) => Math.abs(h - rise) <= tolerance || Math.abs(radiusOf(h) - radius) <= tolerance,
  });
  return null;
}

/** Height less leg, only where nothing else gives the rise: a leg may be cut to a sill or a plinth. */
function fromLeg(
  given: GivenLengths,
  near: (value: number) => (rise: number) => boolean,
  candidates: Candidate[],
): void {
  const leg = given.leg?.value;
  const top = given.height?.value;
  if (candidates.length > 0 || leg === undefined || leg === 0 || top === undefined || top <= leg) return;
  const rise = top - leg;
  candidates.push({
    rise,
    how: `height ${figure(top)} less leg ${figure(leg)} gives ${figure(rise)}`,
    note: `Rise ${figure(rise)} is the height ${figure(top)} less the leg ${figure(leg)}.`,
    agrees: near(rise),
  });
}

function missing(head: HeadShape | null, span: number | null, faults: readonly string[]): string {
  if (head === 'half round' && span === null) return 'Rise is unknown because the width is.';
  const [fault] = faults;
  if (fault !== undefined) return fault;
  const other =
    head === 'segmental' || head === 'pointed' ? `, the radius${span === null ? ' with the width' : ''}` : '';
  return `Rise is missing; please give the rise${other} or the heights to the crown and to the spring line.`;
}

/** Refuses a rise that the shape cannot have. */
function withinReach(
  head: HeadShape | null,
  span: number | null,
  rise: number,
  tolerance: number,
  say: Findings,
): number | null {
  if (span === null) return rise;
  const half = span / 2;
  const width = `half the width ${figure(span)}`;
  let why: string | null = null;
  if (head === 'pointed') {
    if (rise < half - tolerance) why = `A pointed head rises at least ${width}; its rise is given as ${figure(rise)}.`;
    else if (rise > 3 * span) why = `A rise of ${figure(rise)} over a width of ${figure(span)} can't be right.`;
  } else if (head === 'three-centered') {
    if (rise >= half) why = `A three-centered head rises less than ${width}; its rise is given as ${figure(rise)}.`;
  } else if (rise > span) why = `A rise of ${figure(rise)} over a width of ${figure(span)} can't be right.`;
  else if (head === 'segmental' && rise > half + tolerance)
    say.note(`The rise ${figure(rise)} is more than ${width}, so the arc is more than a half circle.`);
  if (why === null) return rise;
  say.problem('rise', why);
  return null;
}

function inferHead(span: number | null, rise: number | null, tolerance: number, say: Findings): HeadShape | null {
  if (span !== null && rise !== null) {
    if (Math.abs(rise - span / 2) <= tolerance) {
      say.note(
        `No head is named; the rise ${figure(rise)} is half the width ${figure(span)}, so it was taken as a half round.`,
      );
      return 'half round';
    }
    if (rise < span / 2) {
      say.note(
        `No head is named; with a rise of ${figure(rise)} on a width of ${figure(span)} it was taken as segmental.`,
      );
      return 'segmental';
    }
    say.problem(
      'head',
      `The head is not named, and a rise of ${figure(rise)} on a width of ${figure(span)} fits more than one shape.`,
    );
    return null;
  }
  say.problem(
    'head',
    rise === null
      ? 'The head is not named and no rise is given; please give the shape (straight where there is no arch) and its rise.'
      : 'The head is not named; please give its shape.',
  );
  return null;
}

function capitalized(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

import type { HeadShape } from '../head/head';
import { SHAPES } from '../head/shapes';
import type { Standards } from '../standards';
import { figure } from './figure';
import { agreement, type Findings, type GivenLengths } from './given';
import { resolveRise } from './resolveRise';
import { resolveSpan } from './resolveSpan';

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
  const tolerance = agreement(standards.unit);
  given = withDiameter(given, stated, tolerance, say);
  const span = resolveSpan(given, stated, standards, tolerance, say);
  if (stated === 'straight') return { head: stated, span, rise: noRise(given, tolerance, say) };
  if (stated !== null && isWhole(stated)) {
    if (span !== null) checkWhole(given, stated, span, tolerance, say);
    notNeeded(given, stated, say);
    return { head: stated, span, rise: null };
  }
  const rise = resolveRise(given, stated, span, standards, tolerance, say);
  if (stated !== null) return { head: stated, span, rise };
  const byDiameter = given.diameter !== undefined && rise === null;
  if (headInDoubt || byDiameter) return { head: null, span, rise };
  return { head: inferHead(span, rise, tolerance, say), span, rise };
}

/** A row that names no head and gives nothing to tell it by: many such are asked about once. */
export const NO_HEAD =
  'The head is not named and no rise is given; please give the shape (straight where there is no arch) and its rise.';

/** A diameter is the width of a whole or a half circle; on another head it is twice the radius, if it is that. */
function withDiameter(given: GivenLengths, head: HeadShape | null, tolerance: number, say: Findings): GivenLengths {
  const { diameter, width, roughWidth, radius } = given;
  if (diameter === undefined) return given;
  if (head === 'round' || head === 'half round') {
    if (width === undefined) return { ...given, width: diameter };
    if (
      width.value !== undefined &&
      diameter.value !== undefined &&
      Math.abs(width.value - diameter.value) > tolerance
    ) {
      const choices = [width.value, diameter.value].map(figure);
      const fault = `The width is ${choices[0]}, but the diameter is ${choices[1]}; please say which is right.`;
      return { ...given, width: { fault, choices } };
    }
    return given;
  }
  if (diameter.fault !== undefined) {
    say.note(`${diameter.fault} It was not used.`);
    return given;
  }
  const half = diameter.value / 2;
  if (head === null && width === undefined && roughWidth === undefined) {
    say.problem(
      'head',
      `A diameter of ${figure(diameter.value)} is given and no head is named; please give its shape.`,
      ['round', 'half round'],
    );
    return { ...given, width: diameter };
  }
  if (width === undefined && roughWidth === undefined) {
    const fault = `A diameter of ${figure(diameter.value)} is not the width of a ${head ?? 'nameless'} head; please give its width.`;
    return { ...given, width: { fault, choices: [figure(diameter.value)] } };
  }
  if (radius?.value !== undefined && Math.abs(radius.value - half) > tolerance)
    return {
      ...given,
      radius: {
        fault: `The radius is ${figure(radius.value)}, but the diameter ${figure(diameter.value)} is twice ${figure(half)}.`,
      },
    };
  const across = width?.value;
  if (given.rise !== undefined || given.springHeight !== undefined || across === undefined || half < across / 2)
    return { ...given, radius: { value: half } };
  const rise = half - Math.sqrt(half * half - (across * across) / 4);
  const fault = `A diameter of ${figure(diameter.value)} over a width of ${figure(across)} would be a radius of ${figure(half)} and a rise of ${figure(rise)}; please confirm the rise.`;
  return { ...given, radius: { fault, choices: [figure(rise)] } };
}

function noRise(given: GivenLengths, tolerance: number, say: Findings): null {
  const { rise, radius } = given;
  if (rise?.value !== undefined && rise.value > tolerance)
    say.problem(
      'head',
      `The head is straight, yet a rise of ${figure(rise.value)} is given; please say which is right.`,
      ['straight', 'segmental'],
    );
  else if (radius?.value !== undefined)
    say.problem(
      'head',
      `The head is straight, yet a radius of ${figure(radius.value)} is given; please say which is right.`,
      ['straight', 'segmental'],
    );
  notNeeded(given, 'straight', say);
  return null;
}

/** A rise or radius that can't be read where the shape has none of its own. */
function notNeeded({ rise, radius }: GivenLengths, head: HeadShape, say: Findings): void {
  for (const given of [rise, radius])
    if (given?.fault !== undefined) say.note(`${given.fault} A ${head} head needs none.`);
}

/** A head that its width gives, and that names no rise to be judged. */
function isWhole(head: HeadShape): boolean {
  return SHAPES[head].rise.ofSpan !== null && SHAPES[head].rise.needs === null;
}

/** Round, quarter-round and octagon heads follow from the width; figures given beside it must say the same. */
function checkWhole(given: GivenLengths, head: HeadShape, span: number, tolerance: number, say: Findings): void {
  const { closed } = SHAPES[head];
  const radius = head === 'quarter round' ? span : span / 2;
  const off = (value: number, ...right: number[]) => right.every((figure) => Math.abs(value - figure) > tolerance);
  const { rise, height, springHeight, leg } = given;
  const name = head.replace(' ', '-');
  if (head !== 'octagon' && given.radius?.value !== undefined && off(given.radius.value, radius))
    say.problem(
      'span',
      `A ${name} head ${figure(span)} wide has a radius of ${figure(radius)}; the schedule says ${figure(given.radius.value)}.`,
    );
  if (rise?.value !== undefined && rise.value !== 0 && off(rise.value, span, ...(closed ? [span / 2] : [])))
    say.problem(
      'rise',
      `${/^o/.test(name) ? 'An' : 'A'} ${name} head ${figure(span)} wide is ${figure(span)} high; the schedule says its rise is ${figure(rise.value)}.`,
    );
  const top = height?.value;
  const below = springHeight?.value ?? leg?.value;
  if (closed && top !== undefined && off(top, span))
    say.problem(
      'span',
      `${head === 'octagon' ? 'An octagon' : 'A round opening'} is as wide as it is high; the schedule says ${figure(span)} wide and ${figure(top)} high.`,
    );
  if (head === 'quarter round' && top !== undefined && below !== undefined && off(top - below, span))
    say.problem(
      'span',
      `A quarter-round head ${figure(span)} wide is ${figure(span)} high; height less spring height is ${figure(top - below)}.`,
    );
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
  say.problem('head', rise === null ? NO_HEAD : 'The head is not named; please give its shape.', ['straight']);
  return null;
}

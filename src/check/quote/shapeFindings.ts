import { makeHead } from '../../head/makeHead';
import { lengthText } from '../../lengthText';
import { ok } from '../../result';
import { roundTo } from '../../rounding';
import { figure } from '../../schedule/figure';
import type { Standards } from '../../standards';
import type { Inputs } from '../../takeoff/inputs';
import type { OwnFigures } from '../../takeoff/ownFigures';
import type { OpeningTakeoff } from '../../takeoff/takeoff';
import { perInch, type Unit } from '../../unit';
import type { Casing } from '../casing';
import { judge } from '../judge';
import { knownLengths, type KnownFigure } from '../lengthMistakes';
import { knownRadii } from '../radiusMistakes';
import { SCALE_MISTAKES } from '../scaleMistakes';
import { agrees, cantTell, differs, notGiven, type About, type Finding } from './finding';
import type { QuoteLine } from '../../quote/quote';

/** An opening whose figures are all there. */
export interface Complete {
  readonly inputs: Inputs;
  readonly own: OwnFigures;
}

export function complete(opening: OpeningTakeoff): Complete | null {
  const { inputs, own } = opening;
  return inputs !== null && own !== null ? { inputs, own } : null;
}

/**
 * The quoted length against the right one, the outside (long-point) length unless the heading says another edge. `pieces` is
 * how many the opening has: a length given for all of them together is one convention, not a mistake.
 */
export function lengthFinding(line: QuoteLine, at: Complete, pieces: number, standards: Standards): Finding {
  const unread = line.problems.find(({ field }) => field === 'length');
  if (unread) return cantTell('length', unread.message);
  if (line.length === null) return notGiven('length', 'length', line);
  const { curve } = at.own;
  const quoted = line.length;
  if (line.lengthOf === 'inside' || line.lengthOf === 'center') {
    const right = line.lengthOf === 'inside' ? curve.insideLength : curve.centerLength;
    const known = [{ mistake: 'outside (long-point) length', figure: curve.length }];
    return figureFinding('length', quoted, right, known, standards, `at the ${line.lengthOf} edge`);
  }
  const { tolerance, unit } = standards;
  const together = pieces > 1 && Math.abs(quoted - pieces * curve.length) <= tolerance * pieces + 1e-9;
  if (together && Math.abs(quoted - curve.length) > tolerance) {
    const all = `length ${asQuoted(quoted, unit)} is ${pieces} × the right ${lengthText(curve.length, unit)}`;
    if (line.lengthOf === 'all pieces') return agrees('length', all, quoted, pieces * curve.length);
    const { mistakes } = judge(quoted, curve.length, lengthMistakes(at, unit), tolerance);
    const or = mistakes.map((mistake) => `, or ${mistake}`).join('');
    return cantTell('length', `${all}: all pieces together${or}`, { quoted, right: curve.length, mistakes });
  }
  return figureFinding('length', quoted, curve.length, () => lengthMistakes(at, unit), standards, 'long point');
}

/** The quoted radius against the casing's inside radius, or the one the heading names. */
export function radiusFinding(line: QuoteLine, at: Complete, standards: Standards): Finding {
  const unread = line.problems.find(({ field }) => field === 'radius');
  if (unread) return cantTell('radius', unread.message);
  if (line.radius === null) return notGiven('radius', 'radius', line);
  const { crown, haunch } = at.own;
  const quoted = line.radius;
  if (crown === null) return cantTell('radius', `a ${at.inputs.head} head has no radius`, { quoted });
  const of = (ring: typeof crown.ring) =>
    line.radiusOf === 'outside' ? ring.outside : line.radiusOf === 'opening' ? ring.radius : ring.inside;
  if (haunch !== null) {
    const [top, side] = [of(crown.ring), of(haunch.ring)];
    const near = [top, side].find((right) => Math.abs(quoted - right) <= standards.tolerance + 1e-9);
    if (near !== undefined) return figureFinding('radius', quoted, near, [], standards, '');
    const radii = `${lengthText(top, standards.unit)} at the crown and ${lengthText(side, standards.unit)} at the haunches`;
    return cantTell('radius', `a ${at.inputs.head} head has several radii (${radii})`, { quoted });
  }
  const known = line.radiusOf === 'inside' ? () => radiusMistakes(at, standards.unit) : [];
  return figureFinding('radius', quoted, of(crown.ring), known, standards, `of the ${RADIUS_OF[line.radiusOf]}`);
}

const RADIUS_OF = { inside: "casing's inside edge", outside: "casing's outside edge", opening: 'opening' } as const;

/** The width of the opening, or a size that gives it: only a column headed as a width can be wrong. */
export function widthFinding(line: QuoteLine, at: Complete, standards: Standards): Finding | null {
  const { span, face, reveal } = at.inputs;
  const { unit, tolerance, roughWidth } = standards;
  const width = line.span ?? line.size?.width ?? null;
  if (width === null) return null;
  const known: readonly KnownFigure[] = [
    { mistake: 'rough opening for the opening', figure: span + roughWidth },
    { mistake: 'outside of the casing for the opening', figure: span + 2 * (face + reveal) },
    { mistake: 'inside of the casing for the opening', figure: span + 2 * reveal },
    ...SCALE_MISTAKES.flatMap(({ name, figures }) =>
      figures(span / perInch(unit)).map((figure) => ({ mistake: name, figure: figure * perInch(unit) })),
    ),
  ];
  if (line.span !== null) return figureFinding('width', width, span, known, standards, 'of the opening');
  const near = Math.abs(width - span) <= tolerance + 1e-9;
  return near
    ? agrees('width', `width ${asQuoted(width, unit)} agrees`, width, span)
    : cantTell('width', `what the size ${asQuoted(width, unit)} × ${asQuoted(line.size!.height, unit)} is of`, {
        quoted: width,
        right: span,
      });
}

/** A quoted length as it is, to four decimals where it is no fraction of the tape: 5.985 is not "6". */
function asQuoted(length: number, unit: Unit): string {
  return unit === 'mm' ? String(roundTo(4, length)) : figure(length);
}

/** One length-like figure judged; `known` is only worked out where the figure is not right. */
function figureFinding(
  about: About,
  quoted: number,
  right: number,
  known: readonly KnownFigure[] | (() => readonly KnownFigure[]),
  { tolerance, unit }: Standards,
  which: string,
): Finding {
  const [said, is] = [asQuoted(quoted, unit), lengthText(right, unit)];
  const near = Math.abs(quoted - right) <= tolerance + 1e-9 * Math.max(1, right);
  if (near) return agrees(about, `${about} ${said} agrees`, quoted, right);
  const { mistakes } = judge(quoted, right, typeof known === 'function' ? known() : known, tolerance);
  const off = `${lengthText(Math.abs(quoted - right), unit)} ${quoted < right ? 'short' : 'long'}`;
  const why = mistakes.length > 0 ? `${mistakes.join(' or ')} (${off})` : `${off}, by no mistake that is known`;
  const cause = mistakes.length > 0 ? mistakes.join(' or ') : `${about} off, unexplained`;
  return differs(about, `${about} ${said}, right is ${is}${which && ` ${which}`}: ${why}`, {
    mistakes,
    cause,
    quoted,
    right,
  });
}

/** The known mistakes suppose inches (feet, rounding); their figures come back in the workbook's unit. */
function inUnit(
  { inputs, own }: Complete,
  unit: Unit,
  of: (casing: Casing) => readonly KnownFigure[],
): readonly KnownFigure[] {
  const inch = perInch(unit);
  const rise = inputs.rise === null ? null : inputs.rise / inch;
  const head = inch === 1 ? ok(own.curve.head) : makeHead(inputs.head, inputs.span / inch, rise);
  if (!head.ok) return [];
  const casing: Casing = {
    head: head.value,
    face: inputs.face / inch,
    reveal: inputs.reveal / inch,
    ends: inputs.ends,
  };
  return of(casing).map(({ mistake, figure }) => ({ mistake, figure: figure * inch }));
}

export function lengthMistakes(at: Complete, unit: Unit): readonly KnownFigure[] {
  return inUnit(at, unit, knownLengths);
}

export function radiusMistakes(at: Complete, unit: Unit): readonly KnownFigure[] {
  return inUnit(at, unit, knownRadii);
}

import { isNear } from '../rules/lineRules';
import { lengthText } from '../../lengthText';
import type { SideFigure } from '../../quote/quote';
import type { Standards } from '../../standards';
import { perInch } from '../../unit';
import type { KnownFigure } from '../lengthMistakes';
import { legLength } from './curveFindings';
import { asQuoted, figureFinding, plainMistakes, type Complete } from './figureFinding';
import { agrees, cantTell, differs, type Finding } from './finding';

/** The width of the opening: only a figure said to be one can be wrong. */
function widthFinding(quoted: number, at: Complete, standards: Standards): Finding {
  const { span, face, reveal } = at.inputs;
  const known: readonly KnownFigure[] = [
    { mistake: 'rough opening for the opening', figure: span + standards.roughWidth },
    { mistake: 'outside of the casing for the opening', figure: span + 2 * (face + reveal) },
    { mistake: 'inside of the casing for the opening', figure: span + 2 * reveal },
    ...plainMistakes(span, standards.unit),
  ];
  return figureFinding('width', quoted, span, known, standards, 'of the opening');
}

/** A size, which may be of anything: width by height, or width by rise. */
export function sizeFindings(
  { width, height }: { readonly width: number; readonly height: number },
  at: Complete,
  standards: Standards,
): Finding[] {
  const { unit, tolerance } = standards;
  const { span } = at.inputs;
  const near = (one: number, other: number) => isNear(one, other, tolerance);
  const said = `${asQuoted(width, unit)} × ${asQuoted(height, unit)}`;
  if (!near(width, span)) return [cantTell('width', `what the size ${said} is of`, { quoted: width, right: span })];
  const found = [agrees('width', `width ${asQuoted(width, unit)} agrees`, width, span)];
  const { rise } = at.own.curve.head;
  // The height of an opening isn't in the takeoff; what is less than its width may be its rise.
  if (near(height, rise)) return [...found, agrees('rise', `rise ${asQuoted(height, unit)} agrees`, height, rise)];
  return height < span * 0.75 && rise > 0
    ? [
        ...found,
        cantTell(
          'rise',
          `what ${asQuoted(height, unit)} in the size ${said} is of; the rise is ${lengthText(rise, unit)}`,
        ),
      ]
    : found;
}

/** Sizes by which lumber is called, and what they measure, in inches (common practice). */
const NOMINAL: readonly (readonly [number, number])[] = [
  [1, 0.75],
  [1.25, 1],
  [1.5, 1.25],
  [2, 1.5],
  [3, 2.5],
  [4, 3.5],
  [5, 4.5],
  [6, 5.5],
  [8, 7.25],
  [10, 9.25],
];

/** A width or thickness of molding may be off by no more than this part of the tolerance. */
export const OF_SECTION = 4;

/** A figure of the casing or of the opening under its own heading or name. */
export function sideFinding(kind: SideFigure, quoted: number, at: Complete, standards: Standards): Finding {
  const { inputs } = at;
  const { unit } = standards;
  if (kind === 'span') return widthFinding(quoted, at, standards);
  if (kind === 'leg') return legFinding(quoted, at, standards);
  if (kind === 'rise') {
    const { rise } = at.own.curve.head;
    const known = () => [
      { mistake: 'radius taken for the rise', figure: at.own.crown?.ring.radius ?? 0 },
      { mistake: 'half the span taken for the rise', figure: inputs.span / 2 },
      { mistake: 'rise to the outside of the casing', figure: rise + inputs.face + inputs.reveal },
      { mistake: 'rise to the inside of the casing', figure: rise + inputs.reveal },
      ...plainMistakes(rise, unit),
    ];
    return figureFinding('rise', quoted, rise, known, standards, '');
  }
  const right = inputs[kind];
  const about = kind === 'face' ? 'casing width' : kind;
  const inch = perInch(unit);
  const section = { ...standards, tolerance: standards.tolerance / OF_SECTION };
  const nominal =
    kind !== 'reveal' &&
    NOMINAL.some(
      ([called, is]) => Math.abs(quoted - called * inch) < 1e-6 && Math.abs(right - is * inch) <= section.tolerance,
    );
  if (nominal)
    return agrees(about, `${about} ${asQuoted(quoted, unit)} nominal is ${lengthText(right, unit)}`, quoted, right);
  return figureFinding(about, quoted, right, () => plainMistakes(right, unit), section, '');
}

/** One leg, to the spring line or to its long point. */
function legFinding(quoted: number, at: Complete, standards: Standards): Finding {
  const long = legLength(at);
  if (long === null) {
    const { leg: given, ends } = at.inputs;
    // The row gives a leg, but nothing of this head stands on one: what is repeated of the row is no mistake.
    if (given > 0 && isNear(quoted, given, standards.tolerance))
      return agrees('leg', `a leg of ${asQuoted(quoted, standards.unit)} agrees`, quoted, given);
    if (ends === 'legs') return cantTell('leg', 'the takeoff has no length for the legs', { quoted });
    return differs('leg', `a leg of ${asQuoted(quoted, standards.unit)}, the takeoff has no legs`, {
      cause: 'legs where the takeoff has none',
      quoted,
      said: { quoted: asQuoted(quoted, standards.unit), right: 'no legs' },
    });
  }
  const { leg, otherLeg, face, reveal } = at.inputs;
  const near = [leg, long, otherLeg ?? leg].find((right) => isNear(quoted, right, standards.tolerance));
  const known = () => [
    { mistake: 'both legs together', figure: 2 * long },
    { mistake: 'both legs together', figure: 2 * leg },
    { mistake: 'head height for the leg', figure: leg + at.own.curve.head.rise },
    { mistake: 'a casing width added to the leg', figure: leg + face },
    { mistake: 'a casing width added to the leg', figure: leg + face + reveal },
    ...plainMistakes(long, standards.unit),
  ];
  return figureFinding('leg', quoted, near ?? long, known, standards, leg === long ? '' : 'at the long point');
}

/** Straight legs that a line counts, for `pieces` heads: one for each side that the head springs from. */
export function legCountFinding(quoted: number, at: Complete, pieces: number): Finding {
  if (at.inputs.ends !== 'legs' && at.inputs.leg === 0)
    return differs('leg count', `${quoted} legs, the takeoff has none`, {
      cause: 'legs where the takeoff has none',
      quoted,
      right: 0,
      said: { quoted: String(quoted), right: 'none' },
    });
  const each = at.own.curve.legs.length || 2;
  const right = each * pieces;
  if (quoted === right || quoted === each) return agrees('leg count', `${quoted} legs agree`, quoted, right);
  const mistakes =
    quoted === pieces && each > 1
      ? ['one leg for each head']
      : quoted === 2 * right
        ? ['a pair counted for one leg']
        : [];
  return differs('leg count', `${quoted} legs, the takeoff has ${right}${mistakes.map((one) => `: ${one}`).join('')}`, {
    mistakes,
    cause: mistakes[0] ?? 'legs counted wrong',
    quoted,
    right,
    said: { quoted: String(quoted), right: `${right} right` },
  });
}

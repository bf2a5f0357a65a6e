import { makeHead } from '../../head/makeHead';
import { lengthText } from '../../lengthText';
import { ok } from '../../result';
import { roundTo } from '../../rounding';
import { figure, listed } from '../../schedule/figure';
import type { Standards } from '../../standards';
import { legLength as longPoint } from '../../takeoff/curve';
import type { Inputs } from '../../takeoff/inputs';
import type { OwnFigures } from '../../takeoff/ownFigures';
import type { OpeningTakeoff } from '../../takeoff/takeoff';
import { perInch, type Unit } from '../../unit';
import type { Casing } from '../casing';
import { judge } from '../judge';
import { knownLengths, type KnownFigure } from '../lengthMistakes';
import { knownRadii } from '../radiusMistakes';
import { SCALE_MISTAKES, WRITING_MISTAKES } from '../scaleMistakes';
import { agrees, cantTell, differs, notGiven, type About, type Finding } from './finding';
import type { Described, QuoteLine, SideFigure } from '../../quote/quote';

/** An opening whose figures are all there. */
export interface Complete {
  readonly inputs: Inputs;
  readonly own: OwnFigures;
}

export function complete(opening: OpeningTakeoff): Complete | null {
  const { inputs, own } = opening;
  return inputs !== null && own !== null ? { inputs, own } : null;
}

/** What the rest of the quote and of the takeoff says of a length. */
export interface Beside {
  /** Widths of the takeoff's casings. */
  readonly faces: readonly number[];
  /** Other lines of several pieces give the length of one. */
  readonly eachPiece: boolean;
}

const NOTHING_BESIDE: Beside = { faces: [], eachPiece: false };

/** Widths that casing is sold in, in inches (common practice). */
const COMMON_FACES = [2.25, 2.5, 2.75, 3, 3.25, 3.5, 4, 4.25, 4.5, 5, 5.25, 5.5];

/** How long one leg is to its long point; null where the opening has none. */
export function legLength({ inputs, own }: Complete): number | null {
  const [top] = own.curve.legs;
  return inputs.leg > 0 && top !== undefined ? longPoint(inputs.leg, top) : null;
}

/** Words by which a line is for the head and its legs as one. */
const WITH_LEGS =
  /\b(?:with|w\/|w|incl\w*|and|&|\+|on) ?(?:the |straight |side )?(?:\(?(?:2|two|pair of)\)? )?(?:straight |side )?legs?\b|\bhead (?:and|&|\+|w\/) ?legs?\b|\bcomplete (?:set|unit)\b/i;

export function saysLegs({ description, legCount, side, described }: QuoteLine): boolean {
  return (
    WITH_LEGS.test(description) ||
    legCount !== null ||
    side.leg !== undefined ||
    described.some(({ kind }) => kind === 'leg' || kind === 'legCount')
  );
}

/**
 * The quoted length against the right one, the outside (long-point) length unless the heading says another edge. `pieces` is
 * how many the opening has: a length given for all of them together is one convention, not a mistake. Quoted with its legs, head and
 * legs are one run.
 */
export function lengthFinding(
  line: QuoteLine,
  at: Complete,
  pieces: number,
  standards: Standards,
  { faces, eachPiece }: Beside = NOTHING_BESIDE,
): Finding {
  const unread = line.problems.find(({ field }) => field === 'length');
  if (unread) return cantTell('length', unread.message);
  if (line.length === null) return notGiven('length', 'length', line);
  const { curve } = at.own;
  const { tolerance, unit } = standards;
  const quoted = line.length;
  const near = (right: number, times = 1) => Math.abs(quoted - right) <= tolerance * times + 1e-9 * Math.max(1, right);
  if (line.lengthOf === 'inside' || line.lengthOf === 'center') {
    const right = line.lengthOf === 'inside' ? curve.insideLength : curve.centerLength;
    const known = [{ mistake: 'outside (long-point) length', figure: curve.length }];
    return figureFinding('length', quoted, right, known, standards, `at the ${line.lengthOf} edge`);
  }
  const leg = legLength(at);
  const runs = leg === null ? [] : [curve.length + 2 * leg, curve.length + 2 * at.inputs.leg];
  if (line.lengthOf === 'with legs' && leg !== null) {
    const known = [
      { mistake: 'legs left out', figure: curve.length },
      { mistake: 'one leg left out', figure: curve.length + leg },
    ];
    return figureFinding(
      'length',
      quoted,
      runs.find((run) => near(run)) ?? runs[0]!,
      known,
      standards,
      'of head and legs',
    );
  }
  const run = runs.find((one) => near(one));
  if (run !== undefined && saysLegs(line) && !near(curve.length))
    return agrees('length', `length ${asQuoted(quoted, unit)} agrees, head and legs together`, quoted, run);
  const together = pieces > 1 && near(pieces * curve.length, pieces);
  const said = line.side.leg;
  const known = () => [
    ...(leg === null
      ? []
      : [
          { mistake: 'two legs added', figure: runs[0]! },
          { mistake: 'two legs added', figure: runs[1]! },
          { mistake: 'one leg added', figure: curve.length + leg },
        ]),
    ...(said === undefined ? [] : [{ mistake: 'two legs added', figure: curve.length + 2 * said }]),
    ...lengthMistakes(at, unit),
    ...[...faces, line.side.face ?? 0, ...COMMON_FACES.map((inches) => inches * perInch(unit))].flatMap((face) => {
      if (face === 0) return [];
      const other = at.own.curve.head.length(at.inputs.reveal + face, at.inputs.ends);
      return other.ok && face !== at.inputs.face
        ? [
            {
              mistake: "another casing width's length",
              figure: other.value,
              slip: face !== line.side.face,
            },
          ]
        : [];
    }),
  ];
  if (together && eachPiece && line.lengthOf !== 'all pieces' && !near(curve.length)) {
    const pieced = [{ mistake: 'the length of all pieces', figure: quoted }, ...known()];
    return figureFinding('length', quoted, curve.length, pieced, standards, 'long point');
  }
  if (together && !near(curve.length)) {
    const all = `length ${asQuoted(quoted, unit)} is ${pieces} × the right ${lengthText(curve.length, unit)}`;
    if (line.lengthOf === 'all pieces') return agrees('length', all, quoted, pieces * curve.length);
    const { mistakes } = judge(quoted, curve.length, known(), tolerance);
    const or = mistakes.map((mistake) => `, or ${mistake}`).join('');
    return cantTell('length', `${all}: all pieces together${or}`, { quoted, right: curve.length, mistakes });
  }
  return figureFinding('length', quoted, curve.length, known, standards, 'long point');
}

/** The quoted radius against the casing's inside radius, or the one the heading names. */
export function radiusFinding(line: QuoteLine, at: Complete, standards: Standards): Finding {
  const unread = line.problems.find(({ field }) => field === 'radius');
  if (unread) return cantTell('radius', unread.message);
  if (line.radius === null) return notGiven('radius', 'radius', line);
  const { crown, rings } = at.own;
  const quoted = line.radius;
  if (crown === null) return cantTell('radius', `a ${at.inputs.head} head has no radius`, { quoted });
  const of = (ring: typeof crown.ring) =>
    line.radiusOf === 'outside' ? ring.outside : line.radiusOf === 'opening' ? ring.radius : ring.inside;
  if (rings.length > 1) {
    const right = rings.map(({ ring }) => of(ring));
    const near = right.find((each) => Math.abs(quoted - each) <= standards.tolerance + 1e-9);
    if (near !== undefined) return figureFinding('radius', quoted, near, [], standards, '');
    const [top, ...sides] = right.map((radius) => lengthText(radius, standards.unit));
    const radii = `${top} at the crown and ${listed(sides, 'and')} at the haunches`;
    return cantTell('radius', `a ${at.inputs.head} head has several radii (${radii})`, { quoted });
  }
  const known = line.radiusOf === 'inside' ? () => radiusMistakes(at, standards.unit) : [];
  return figureFinding('radius', quoted, of(crown.ring), known, standards, `of the ${RADIUS_OF[line.radiusOf]}`);
}

const RADIUS_OF = { inside: "casing's inside edge", outside: "casing's outside edge", opening: 'opening' } as const;

/** The width of the opening: only a figure said to be one can be wrong. */
export function widthFinding(quoted: number, at: Complete, standards: Standards): Finding {
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
  const near = (one: number, other: number) => Math.abs(one - other) <= tolerance + 1e-9;
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
const OF_SECTION = 4;

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
    if (given > 0 && Math.abs(quoted - given) <= standards.tolerance + 1e-9)
      return agrees('leg', `a leg of ${asQuoted(quoted, standards.unit)} agrees`, quoted, given);
    if (ends === 'legs') return cantTell('leg', 'the takeoff has no length for the legs', { quoted });
    return differs('leg', `a leg of ${asQuoted(quoted, standards.unit)}, the takeoff has no legs`, {
      cause: 'legs where the takeoff has none',
      quoted,
    });
  }
  const { leg, otherLeg, face, reveal } = at.inputs;
  const near = [leg, long, otherLeg ?? leg].find((right) => Math.abs(quoted - right) <= standards.tolerance + 1e-9);
  const known = () => [
    { mistake: 'both legs together', figure: 2 * long },
    { mistake: 'both legs together', figure: 2 * leg },
    { mistake: 'head height for the leg', figure: leg + at.own.curve.head.rise },
    { mistake: 'a casing width added to the leg', figure: leg + face },
    { mistake: 'a casing width added to the leg', figure: leg + face + reveal },
    ...plainMistakes(long, standards.unit),
  ];
  return figureFinding('leg', quoted, near ?? long, known, standards, leg === long ? '' : 'long point');
}

/** Straight legs that a line counts, for `pieces` heads: one for each side that the head springs from. */
export function legCountFinding(quoted: number, at: Complete, pieces: number): Finding {
  if (at.inputs.ends !== 'legs' && at.inputs.leg === 0)
    return differs('leg count', `${quoted} legs, the takeoff has none`, {
      cause: 'legs where the takeoff has none',
      quoted,
      right: 0,
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
  });
}

/** A figure in the words of a line that no column gives. What nothing explains is named, and the line never agrees. */
export function describedFinding(
  one: Described,
  line: QuoteLine,
  at: Complete,
  pieces: number,
  standards: Standards,
  beside: Beside,
): Finding[] {
  const { kind, value } = one;
  switch (kind) {
    case 'length':
      return [
        lengthFinding(
          { ...line, length: value, lengthOf: one.lengthOf ?? 'outside', problems: [] },
          at,
          pieces,
          standards,
          beside,
        ),
      ];
    case 'radius':
      return [
        radiusFinding({ ...line, radius: value, radiusOf: one.radiusOf ?? 'inside', problems: [] }, at, standards),
      ];
    case 'legCount':
      return [legCountFinding(value, at, pieces)];
    case 'quantity':
      return [];
    case 'section':
      return [sideFinding('thickness', value, at, standards), sideFinding('face', one.other!, at, standards)];
    case 'size':
      return sizeFindings({ width: value, height: one.other! }, at, standards);
    case 'diameter':
    case 'unknown':
      return [...unnamed(one, at, pieces, standards, beside)];
    default:
      return [sideFinding(kind, value, at, standards)];
  }
}

function* unnamed(
  { value, text }: Described,
  at: Complete,
  pieces: number,
  standards: Standards,
  beside: Beside,
): Generator<Finding> {
  const { inputs, own } = at;
  const { curve } = own;
  const rings = own.rings.flatMap(({ ring }) => [ring.inside, ring.radius, ring.outside]);
  const leg = legLength(at);
  const ours = [
    inputs.span,
    curve.head.rise,
    inputs.face,
    inputs.thickness,
    inputs.reveal,
    curve.length,
    curve.insideLength,
    pieces * curve.length,
    inputs.leg,
    inputs.otherLeg ?? 0,
    leg ?? 0,
    curve.length + 2 * (leg ?? 0),
    ...rings,
    ...rings.map((ring) => 2 * ring),
    ...curve.straights.flatMap(({ inside, outside }) => [inside, outside]),
    ...(inputs.haunch === null ? [] : [inputs.haunch]),
  ];
  const small = inputs.face + inputs.reveal;
  const within = value <= small ? standards.tolerance / OF_SECTION : standards.tolerance;
  if (ours.some((right) => right > 0 && Math.abs(value - right) <= within + 1e-9)) return;
  const as = lengthFinding(
    {
      description: '',
      legCount: null,
      side: {},
      described: [],
      problems: [],
      unread: [],
      lengthOf: 'outside',
      length: value,
    } as unknown as QuoteLine,
    at,
    pieces,
    standards,
    beside,
  );
  const may =
    value > curve.length / 2 ? as.mistakes.slice(0, 1).map((mistake) => `; as a length it would be ${mistake}`) : [];
  yield cantTell('column', `what ${JSON.stringify(text)} is of${may.join('')}`, {
    quoted: value,
    mistakes: may.length > 0 ? as.mistakes : [],
  });
}

function plainMistakes(right: number, unit: Unit): readonly KnownFigure[] {
  const inch = perInch(unit);
  return [
    ...SCALE_MISTAKES.map(({ name, scale }) => ({ mistake: name, figure: right * scale, scale })),
    ...WRITING_MISTAKES.flatMap(({ name, figures }) =>
      figures(right / inch).map((figure) => ({ mistake: name, figure: figure * inch, slip: true })),
    ),
  ];
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
  const cause = mistakes[0] ?? `${about} off, unexplained`;
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
  return of(casing).map((one) => ({ ...one, figure: one.figure * inch }));
}

export function lengthMistakes(at: Complete, unit: Unit): readonly KnownFigure[] {
  return inUnit(at, unit, knownLengths);
}

export function radiusMistakes(at: Complete, unit: Unit): readonly KnownFigure[] {
  return inUnit(at, unit, knownRadii);
}

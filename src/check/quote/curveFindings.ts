import { isNear } from '../rules/lineRules';
import { lengthText } from '../../lengthText';
import { listed } from '../../schedule/figure';
import type { Standards } from '../../standards';
import { legLength as longPoint } from '../../takeoff/curve';
import { perInch, type Unit } from '../../unit';
import { judge } from '../judge';
import type { QuoteLine } from '../../quote/quote';
import { makes } from '../../quote/reckon';
import { asQuoted, figureFinding, lengthMistakes, radiusMistakes, type Complete } from './figureFinding';
import { agrees, cantTell, notGiven, type Finding } from './finding';

/** What the rest of the quote and of the takeoff says of a length. */
export interface Beside {
  /** Widths of the takeoff's casings. */
  readonly faces: readonly number[];
  /** Other lines of several pieces give the length of one. */
  readonly eachPiece: boolean;
  /** Under a heading such as "Total LF": whether other lines give the length of all pieces; null where none tells. */
  readonly allPieces: boolean | null;
}

const NOTHING_BESIDE: Beside = { faces: [], eachPiece: false, allPieces: null };

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

function saysLegs({ description, legCount, side, described }: QuoteLine): boolean {
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
  { faces, eachPiece, allPieces }: Beside = NOTHING_BESIDE,
): Finding {
  const unread = line.problems.find(({ field }) => field === 'length');
  if (unread) return cantTell('length', unread.message);
  if (line.length === null) return notGiven('length', 'length', line);
  const { curve } = at.own;
  const { tolerance, unit } = standards;
  const quoted = line.length;
  const near = (right: number, times = 1) => isNear(quoted, right, tolerance * times);
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
      'with the legs',
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
  const count = (line.by === 'piece' && line.quantity) || pieces;
  const ofAllPieces = line.lengthOf === 'all pieces' && !countsFeetOfEach(line) && count > 1 && allPieces !== false;
  if (ofAllPieces && (allPieces || !near(curve.length))) {
    if (near(count * curve.length, count))
      return agrees('length', ofAll(quoted, count, curve.length, unit), quoted, count * curve.length);
    const mistakes = () => [
      { mistake: 'the length of one piece', figure: curve.length },
      ...known().map((one) => ({ ...one, figure: count * one.figure })),
    ];
    const wider = { ...standards, tolerance: count * tolerance };
    return figureFinding('length', quoted, count * curve.length, mistakes, wider, `for all ${count} pieces`);
  }
  if (together && eachPiece && line.lengthOf !== 'all pieces' && !near(curve.length)) {
    const pieced = [{ mistake: 'the length of all pieces', figure: quoted }, ...known()];
    return figureFinding('length', quoted, curve.length, pieced, standards, 'at the long point');
  }
  if (together && !near(curve.length)) {
    const all = ofAll(quoted, pieces, curve.length, unit);
    if (line.lengthOf === 'all pieces') return agrees('length', all, quoted, pieces * curve.length);
    const { mistakes } = judge(quoted, curve.length, known(), tolerance);
    const or = mistakes.map((mistake) => `, or ${mistake}`).join('');
    return cantTell('length', `${all}: all pieces together${or}`, { quoted, right: curve.length, mistakes });
  }
  return figureFinding('length', quoted, curve.length, known, standards, 'at the long point');
}

/** The amount says that the length is of one piece, whatever its heading says. */
export function countsFeetOfEach({ reckoning, extension }: QuoteLine): boolean {
  return reckoning?.ofEach === true && extension !== null && makes(reckoning, extension);
}

function ofAll(quoted: number, pieces: number, length: number, unit: Unit): string {
  return `length ${asQuoted(quoted, unit)} is ${pieces} × the right ${lengthText(length, unit)}`;
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
    const near = right.find((each) => isNear(quoted, each, standards.tolerance));
    if (near !== undefined) return figureFinding('radius', quoted, near, [], standards, '');
    const [top, ...sides] = right.map((radius) => lengthText(radius, standards.unit));
    const radii = `${top} at the crown and ${listed(sides, 'and')} at the haunches`;
    return cantTell('radius', `a ${at.inputs.head} head has several radii (${radii})`, { quoted });
  }
  const known = line.radiusOf === 'inside' ? () => radiusMistakes(at, standards.unit) : [];
  return figureFinding('radius', quoted, of(crown.ring), known, standards, RADIUS_OF[line.radiusOf]);
}

const RADIUS_OF = {
  inside: "at the casing's inside edge",
  outside: "at the casing's outside edge",
  opening: 'of the opening',
} as const;

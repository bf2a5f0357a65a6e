import { callOn } from '../formulaText';
import type { Ends } from '../head/head';
import { SHAPES } from '../head/shapes';
import { straightReach } from '../head/straight';
import type { Say } from '../head/shape';
import type { Standards } from '../standards';
import type { RowFigures } from './computeRow';

/** What a figure measures; decides its unit and number format wherever it is shown. */
export type FigureMeasure =
  'text' | 'length' | 'length text' | 'degrees' | 'count' | 'cuts' | 'minutes' | 'boardFeet' | 'money' | 'number';

/** One number or word that a figure rests on. */
export interface RestsOn {
  readonly name: string;
  readonly value: string | number | null;
  readonly measure: FigureMeasure;
}

/**
 * How a figure came about: the worksheet function that gives it (`ARCH.RADIUS`), then `from` are its arguments in their
 * order; or a sentence of arithmetic with the numbers in it.
 */
export interface Explained {
  readonly by: string;
  readonly from: readonly RestsOn[];
  /** How a person works it out by hand, with the numbers in it; left out where `by` says as much. */
  readonly how?: (say: Say) => string;
  /** As a worksheet formula of these very numbers, without `=`; left out where no function gives it. */
  readonly formula?: string;
}

/** Null: the opening has no such figure, or lacks what it rests on. */
export type Explain = (row: RowFigures, standards: Standards) => Explained | null;

export const rest = (name: string, value: RestsOn['value'] | undefined, measure: FigureMeasure): RestsOn => ({
  ...{ name, value: value ?? null, measure },
});
export const length = (name: string, value: number | null | undefined) => rest(name, value, 'length');

/** The kinds of ring that a head can have, from the crown out: a quarter of an ellipse has three, others of more arcs four. */
export const RINGS = ['crown', 'haunch', 'second haunch', 'third haunch'] as const;

/** What stands before the name of a ring's figure; the crown's has none. */
const ofRing = (ring: number) => (ring === 0 ? '' : `${RINGS[ring]} `);

/** A figure that a worksheet function of the very arguments gives; of a spill it is the cell `at`. */
export function byCall(
  name: string,
  from: readonly RestsOn[],
  at?: readonly [number, number],
): Explained & { readonly formula: string } {
  const formula = callOn(
    name,
    from.map(({ value }) => value),
    at,
  );
  return { by: `ARCH.${name}`, from, formula };
}

export const byInputs: Explain = () => ({ by: 'what the row gives, against what each input must be', from: [] });

const shapeOf = ({ known, curve }: RowFigures) => [
  rest('head', known.head, 'text'),
  length('span', known.span),
  length('rise', known.rise ?? curve?.head.rise),
];

const HOW_ENDS: Readonly<Record<Ends, string>> = {
  radial: '',
  level: ', cut level on the spring line',
  legs: ', run on to the legs',
  mitered: ', mitered to the legs',
  'over legs': ', over the legs',
  'between legs': ', between the legs',
  square: ", sawn at the opening's width",
};

/** The curve's length at an offset from the opening's edge; `where` says which edge that is. */
export function byHeadLength(offset: (reveal: number, face: number) => number, where: string): Explain {
  return (row, { overhang }) => {
    const { curve, known } = row;
    const { reveal, face, ends } = known;
    if (curve === null || reveal === null || face === null || ends === null) return null;
    const away = offset(reveal, face);
    const how = (say: Say) =>
      `${SHAPES[curve.head.shape].words.length}, measured ${say(away)} outside the opening, ${where}${HOW_ENDS[ends]}.`;
    // A straight head that isn't mitered is as long at every edge: it reaches as far as its ends are cut.
    const reach = known.head === 'straight' ? straightReach(ends, reveal, face, overhang) : undefined;
    const call = byCall('HEADLENGTH', [
      ...shapeOf(row),
      length('offset from the opening’s edge', reach ?? away),
      rest('ends', ends, 'text'),
      length('haunch', known.haunch),
    ]);
    if (known.head !== 'straight') return { ...call, how };
    return {
      by: 'span with reveals and casing, by how the ends are cut',
      from: [
        length('span', known.span),
        length('reveal', reveal),
        length('casing width', face),
        rest('ends', ends, 'text'),
        ...(ends === 'over legs' && overhang !== 0 ? [length('overhang on each side', overhang)] : []),
      ],
      formula: call.formula,
    };
  };
}

export const byTape: Explain = ({ curve }) =>
  curve && { by: 'the long point as on a tape', from: [length('long point', curve.length)] };

/** The joint with the left leg: the first figure of the function is the leg's, the second the head's. */
export function byMiter(which: 'leg' | 'head'): Explain {
  return (row) => {
    const { curve, known } = row;
    if (curve === null || curve.miter === null) return null;
    const from = [
      ...shapeOf(row),
      length('casing width', known.face),
      length('reveal', known.reveal),
      rest('ends', known.ends, 'text'),
      length('haunch', known.haunch),
    ];
    if (which === 'head') return { ...byCall('HEADMITER', from, [1, 2]), by: 'the second of ARCH.HEADMITER' };
    const how = () => 'Degrees off square of the joint, from its inside corner straight to its outside corner.';
    return { ...byCall('HEADMITER', from, [1, 1]), how };
  };
}

/** What `ARCH.HEADARCS` says of a ring's first arc: its radius or its degrees. */
function arcFormula(row: RowFigures, ring: number, column: 1 | 2): string {
  const { known, curve } = row;
  const chosen = known.arcs === null && known.haunch === null ? [] : [0, 'radial', known.arcs, known.haunch];
  const args = [...shapeOf(row).map(({ value }) => value), ...chosen];
  return callOn('HEADARCS', args, [(curve?.rings[ring]?.arcs[0] ?? 0) + 1, column]);
}

export function byRadius(ring: number): Explain {
  return (row) => {
    const { curve, known } = row;
    const kind = curve?.rings[ring];
    if (!curve || !kind) return null;
    const { span, rise, shape } = curve.head;
    const how = (say: Say) => SHAPES[shape].words.radius?.(say, span, rise, kind.radius) ?? '';
    if (ring > 0)
      return {
        by: 'its arc, as ARCH.HEADARCS gives it',
        ...{ from: shapeOf(row), how, formula: arcFormula(row, ring, 1) },
      };
    const from = [...shapeOf(row), rest('arcs', known.arcs, 'count'), length('haunch', known.haunch)];
    return { ...byCall('HEADRADIUS', from), how };
  };
}

export function bySum(ring: number, add: 'reveal' | 'face'): Explain {
  return (row, standards) => {
    const { curve, known } = row;
    const kind = curve?.rings[ring];
    if (!kind) return null;
    const radius = byRadius(ring)(row, standards)?.formula;
    return add === 'reveal'
      ? {
          by: 'radius and reveal',
          from: [length('radius', kind.radius), length('reveal', known.reveal)],
          formula: `${radius}+${known.reveal}`,
        }
      : {
          by: 'inside radius and casing width',
          from: [length('inside radius', kind.inside), length('casing width', known.face)],
          formula: `${radius}+${known.reveal}+${known.face}`,
        };
  };
}

export function byArc(ring: number): Explain {
  return (row) => {
    const { curve } = row;
    if (!curve?.rings[ring]) return null;
    const { span, rise, shape } = curve.head;
    const { angle } = SHAPES[shape].words;
    return {
      by: 'degrees of the arc, as ARCH.HEADARCS gives them',
      from: shapeOf(row),
      how: (say) => (typeof angle === 'string' ? angle : angle(say, span, rise)),
      formula: arcFormula(row, ring, 2),
    };
  };
}

export function byAllowance(ring: number): Explain {
  return ({ own }, { endAllowance, shortestPiece }) => {
    const made = own?.rings[ring]?.made;
    return made
      ? {
          by: made.overlong
            ? 'as much as the rolls hold, at the center'
            : 'degrees of the finished piece, with the allowance at either end',
          from: [
            rest('finished', made.finishedAngle, 'degrees'),
            length('end allowance', endAllowance),
            ...(made.overlong ? [length('shortest piece', shortestPiece)] : []),
          ],
        }
      : null;
  };
}

const ringOf = ({ own, known }: RowFigures, at: number) => {
  const plan = own?.rings[at];
  if (!plan) return null;
  const { ring, blank } = plan;
  return {
    blank: blank.chosen,
    size: [
      length(`${ofRing(at)}inside radius`, ring.inside),
      length('casing width', known.face),
      rest(`${ofRing(at)}blank angle`, ring.blankAngle, 'degrees'),
    ],
  };
};

export function bySegments(ring: number): Explain {
  return (row, { margin, grain }) => {
    const found = ringOf(row, ring);
    if (!found) return null;
    const wanted = row.inputs?.segmentsWanted ?? null;
    return {
      by:
        wanted === null
          ? 'the cheapest in wood and joints of the fewest segments (ARCH.SEGMENTS) and up to two more'
          : 'the segments wanted',
      from: [
        ...found.size,
        length('widest board', row.inputs?.wood.widest),
        length('margin', margin),
        rest('steepest grain at a joint', grain, 'degrees'),
        ...(wanted === null ? [] : [rest('segments wanted', wanted, 'count')]),
      ],
    };
  };
}

export function byBlank(ring: number, name: 'BLANKWIDTH' | 'BLANKLENGTH'): Explain {
  return (row, { margin }) => {
    const found = ringOf(row, ring);
    if (!found) return null;
    return byCall(name, [...found.size, rest('segments', found.blank.segments, 'count'), length('margin', margin)]);
  };
}

export function byBoard(ring: number): Explain {
  return (row) => {
    const found = ringOf(row, ring);
    return (
      found && {
        by: 'the narrowest board on sale that holds the segment',
        from: [length('blank width', found.blank.width)],
      }
    );
  };
}

/** The guide on one side of a ring's own radius. */
export function byGuides(ring: number, side: 'inside' | 'outside'): Explain {
  return ({ own, known }, { margin, clearance }) => {
    const plan = own?.rings[ring];
    if (!plan) return null;
    const from = [
      length(`${ofRing(ring)}inside radius`, plan.ring.inside),
      length('casing width', known.face),
      length('margin', margin),
      length('clearance', clearance),
    ];
    return byCall('GUIDES', from, [1, side === 'inside' ? 1 : 2]);
  };
}

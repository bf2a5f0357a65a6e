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
}

/** Null: the opening has no such figure, or lacks what it rests on. */
export type Explain = (row: RowFigures, standards: Standards) => Explained | null;

export const rest = (name: string, value: RestsOn['value'] | undefined, measure: FigureMeasure): RestsOn => ({
  ...{ name, value: value ?? null, measure },
});
export const length = (name: string, value: number | null | undefined) => rest(name, value, 'length');

const WHICH = { crown: '', haunch: 'haunch ' } as const;
type Which = keyof typeof WHICH;

export const byInputs: Explain = () => ({ by: 'what the row gives, against what each input must be', from: [] });

const shapeOf = ({ known, curve }: RowFigures) => [
  rest('head', known.head, 'text'),
  length('span', known.span),
  length('rise', known.rise ?? curve?.head.rise),
];

/** The curve's length at an offset from the opening's edge. */
export function byHeadLength(offset: (reveal: number, face: number) => number): Explain {
  return (row) => {
    const { curve, known } = row;
    if (curve === null || known.reveal === null || known.face === null) return null;
    // The reach of a straight head over its legs is the shop's, which the function doesn't know.
    if (known.head === 'straight')
      return {
        by: 'span with reveals and casing, by how the ends are cut',
        from: [
          length('span', known.span),
          length('reveal', known.reveal),
          length('casing width', known.face),
          rest('ends', known.ends, 'text'),
        ],
      };
    return {
      by: 'ARCH.HEADLENGTH',
      from: [
        ...shapeOf(row),
        length('offset from the opening’s edge', offset(known.reveal, known.face)),
        rest('ends', known.ends, 'text'),
        length('haunch', known.haunch),
      ],
    };
  };
}

export const byTape: Explain = ({ curve }) =>
  curve && { by: 'the long point as on a tape', from: [length('long point', curve.length)] };

export function byMiter(by: string): Explain {
  return (row) => {
    const { curve, known } = row;
    if (curve === null || curve.miter === null) return null;
    return {
      by,
      from: [
        ...shapeOf(row),
        length('casing width', known.face),
        length('reveal', known.reveal),
        rest('ends', known.ends, 'text'),
        length('haunch', known.haunch),
      ],
    };
  };
}

export function byRadius(which: Which): Explain {
  return (row) => {
    if (!row.curve?.[which]) return null;
    if (which === 'haunch') return { by: 'the arc at the springing, as ARCH.HEADARCS gives it', from: shapeOf(row) };
    return {
      by: 'ARCH.HEADRADIUS',
      from: [...shapeOf(row), rest('arcs', row.known.arcs, 'count'), length('haunch', row.known.haunch)],
    };
  };
}

export function bySum(which: Which, add: 'reveal' | 'face'): Explain {
  return ({ curve, known }) => {
    const ring = curve?.[which];
    if (!ring) return null;
    return add === 'reveal'
      ? { by: 'radius and reveal', from: [length('radius', ring.radius), length('reveal', known.reveal)] }
      : {
          by: 'inside radius and casing width',
          from: [length('inside radius', ring.inside), length('casing width', known.face)],
        };
  };
}

export function byArc(which: Which): Explain {
  return (row) =>
    row.curve?.[which] ? { by: 'degrees of the arc, as ARCH.HEADARCS gives them', from: shapeOf(row) } : null;
}

export function byAllowance(which: Which): Explain {
  return ({ own }, { endAllowance, shortestPiece }) => {
    const made = own?.[which]?.made;
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

const ringOf = ({ own, known }: RowFigures, which: Which) => {
  const plan = own?.[which];
  if (!plan) return null;
  const { ring, blank } = plan;
  return {
    plan,
    blank: blank.chosen,
    size: [
      length(`${WHICH[which]}inside radius`, ring.inside),
      length('casing width', known.face),
      rest(`${WHICH[which]}blank angle`, ring.blankAngle, 'degrees'),
    ],
  };
};

export function bySegments(which: Which): Explain {
  return (row, { margin, grain }) => {
    const found = ringOf(row, which);
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

export function byBlank(which: Which, by: 'ARCH.BLANKWIDTH' | 'ARCH.BLANKLENGTH'): Explain {
  return (row, { margin }) => {
    const found = ringOf(row, which);
    if (!found) return null;
    return {
      by,
      from: [...found.size, rest('segments', found.blank.segments, 'count'), length('margin', margin)],
    };
  };
}

export function byBoard(which: Which): Explain {
  return (row) => {
    const found = ringOf(row, which);
    return (
      found && {
        by: 'the narrowest board on sale that holds the segment',
        from: [length('blank width', found.blank.width)],
      }
    );
  };
}

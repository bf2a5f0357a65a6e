import type { Standards } from '../standards';
import { perFootPerMinute } from '../unit';
import type { RowFigures } from './computeRow';
import { knifeListed } from '../onHand';
import { headsOf } from './ownCost';
import { cutsAtEdge, type RingPlan } from './ownFigures';

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
const length = (name: string, value: number | null | undefined) => rest(name, value, 'length');

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

export const byMiter: Explain = (row) => {
  const { curve, known } = row;
  if (curve === null || curve.miter === null) return null;
  return {
    by: 'ARCH.HEADMITER',
    from: [
      ...shapeOf(row),
      length('casing width', known.face),
      length('reveal', known.reveal),
      rest('ends', known.ends, 'text'),
      length('haunch', known.haunch),
    ],
  };
};

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
  return ({ curve }, { endAllowance }) => {
    const ring = curve?.[which];
    return ring
      ? {
          by: 'degrees of the finished piece, with the allowance at either end',
          from: [rest('finished', ring.finishedAngle, 'degrees'), length('end allowance', endAllowance)],
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

const eachRing = ({ own }: RowFigures, of: (plan: RingPlan, name: string) => readonly RestsOn[]): RestsOn[] =>
  (own?.rings ?? []).flatMap((plan) => [...of(plan, plan === own?.haunch ? 'haunch' : 'crown')]);

export const byBlanks: Explain = (row) =>
  row.own && {
    by: 'segments of every ring, each of blank width × blank length',
    from: eachRing(row, ({ blank: { chosen } }, name) => [
      rest(`${name}: segments`, chosen.segments, 'count'),
      length(`${name}: blank width`, chosen.width),
      length(`${name}: blank length`, chosen.length),
    ]),
  };

export const byCuts: Explain = (row, standards) => {
  const { own, inputs } = row;
  if (own === null || inputs === null) return null;
  const feed = rest('feed, ft/min', standards.feed / perFootPerMinute(standards.unit), 'number');
  const machine = [rest('rpm', standards.rpm, 'number'), rest('knives that mark', standards.knives, 'count'), feed];
  // The fewest fall where the outside edge is the longest against the center.
  const tightest = own.rings.find(({ ring }) => {
    const cuts = cutsAtEdge(ring, inputs.face, standards);
    return cuts.ok && cuts.value === own.cutsOutside;
  });
  return {
    by: 'ARCH.CUTSPERINCH',
    from: tightest
      ? [
          ...machine,
          length('radius of the molding’s center', tightest.ring.inside + inputs.face / 2),
          length('radius of its outside edge', tightest.ring.outside),
        ]
      : machine,
  };
};

export const byGrade: Explain = ({ own }) =>
  own && {
    by: 'the grade that these cuts meet: 15 Economy, 20 Custom',
    from: [rest('cuts per inch', own.cutsOutside, 'cuts')],
  };

export const byPasses: Explain = ({ own, inputs }, { onHand, profileDepth, deepestCut }) => {
  if (own === null || inputs === null) return null;
  const { passes, depth } = knifeListed(inputs, onHand);
  if (passes !== null && passes !== undefined)
    return { by: 'as the list of knives says', from: [rest('passes', passes, 'count')] };
  return {
    by: 'depth of the profile by the deepest cut, rounded up',
    from: [length('depth of the profile', depth ?? profileDepth), length('deepest cut', deepestCut)],
  };
};

export const byRunning: Explain = (row, standards) => {
  const { own, inputs } = row;
  if (own === null || inputs === null) return null;
  return {
    by: 'ARCH.RUNTIME of every blank and straight piece',
    from: [
      rest('heads', headsOf(inputs), 'count'),
      ...eachRing(row, ({ ring, runLength }, name) => [
        rest(`${name}: rings of one head`, ring.count, 'count'),
        length(`${name}: length run`, runLength),
      ]),
      ...(own.straight
        ? [
            length('straight molding of one head', own.straight.length),
            rest(
              'feed of straight molding, ft/min',
              standards.straightFeed / perFootPerMinute(standards.unit),
              'number',
            ),
          ]
        : []),
      rest('feed, ft/min', standards.feed / perFootPerMinute(standards.unit), 'number'),
      rest('passes', own.passes, 'count'),
      rest('minutes of handling a piece', standards.handling, 'minutes'),
    ],
  };
};

export const byBoardFeet: Explain = (row) => {
  const { own, inputs } = row;
  if (own === null || inputs === null) return null;
  return {
    by: 'ARCH.BOARDFEET of every segment and of straight stock',
    from: [
      rest('heads', headsOf(inputs), 'count'),
      ...eachRing(row, ({ ring, blank: { chosen } }, name) => [
        rest(`${name}: rings of one head`, ring.count, 'count'),
        rest(`${name}: board feet of a ring`, chosen.boardFeet, 'boardFeet'),
      ]),
      ...(own.straight ? [rest('straight stock of one head', own.straight.boardFeet, 'boardFeet')] : []),
    ],
  };
};

export const byStock: Explain = ({ own, known }) =>
  own && {
    by: 'the thinnest stock of the species that is thick enough',
    from: [rest('species', known.species, 'text'), length('thickness', known.thickness)],
  };

export const byWood: Explain = (row) => {
  const { own, inputs } = row;
  if (own === null || inputs === null) return null;
  return {
    by: 'board feet at the price of the boards they are sawn from',
    from: [
      ...eachRing(row, (plan, name) => [
        rest(`${name}: board feet`, plan.blank.chosen.boardFeet * plan.ring.count * headsOf(inputs), 'boardFeet'),
        rest(`${name}: price a board foot`, plan.blank.chosen.price, 'money'),
      ]),
      ...(own.straight
        ? [
            rest('straight: board feet', own.straight.boardFeet * headsOf(inputs), 'boardFeet'),
            rest('straight: price a board foot', own.ripPrice, 'money'),
          ]
        : []),
    ],
  };
};

export const byLabor: Explain = ({ ownCost }, { shopRate, benchRate }) =>
  ownCost && {
    by: 'minutes of each kind of work at its rate',
    from: [
      ...Object.entries(ownCost.minutes).flatMap(([kind, minutes]) =>
        minutes > 0 ? [rest(kind, minutes, 'minutes')] : [],
      ),
      rest('machine rate an hour', shopRate, 'money'),
      rest('bench rate an hour', benchRate, 'money'),
    ],
  };

export const byKnife: Explain = ({ own, known }) =>
  own && {
    by: 'a knife for each profile, width and thickness',
    from: [
      length('casing width', known.face),
      length('thickness', known.thickness),
      rest('profile', known.profile, 'text'),
    ],
  };

export const bySetups: Explain = (row) =>
  row.own && {
    by: 'a set-up for each knife and inside radius, one for straight molding',
    from: [
      rest('knife', row.own.knife, 'text'),
      ...eachRing(row, ({ ring }, name) => [length(`${name}: inside radius`, ring.inside)]),
    ],
  };

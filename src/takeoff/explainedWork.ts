import { knifeListed } from '../onHand';
import type { Standards } from '../standards';
import { bare, feetPerMinute, type FeetPerMinute } from '../unit';
import type { RowFigures } from './computeRow';
import { byCall, length, rest, RINGS, type Explain, type RestsOn } from './explained';
import { LABOR, LABOR_KINDS } from './labor';
import { headsOf } from './ownCost';
import { longestPiece } from './straightPieces';
import { cutsAtEdge, type RingPlan } from './ownFigures';

/** How the figures of wood, machine and work came about; those of curve and blanks are in `explained.ts`. */

const eachRing = ({ own }: RowFigures, of: (plan: RingPlan, name: string) => readonly RestsOn[]): RestsOn[] =>
  (own?.rings ?? []).flatMap((plan, at) => [...of(plan, RINGS[at]!)]);

export const byBlanks: Explain = (row) =>
  row.own && {
    by: 'segments of every ring, each of blank width × blank length',
    from: eachRing(row, ({ blank: { chosen } }, name) => [
      rest(`${name}: segments`, chosen.segments, 'count'),
      length(`${name}: blank width`, chosen.width),
      length(`${name}: blank length`, chosen.length),
    ]),
  };

export const bySplices: Explain = (row, standards) =>
  row.own && {
    by: 'one for each arc or straight piece that is made in halves, two in a full circle',
    from: [
      ...eachRing(row, ({ made, ring }, name) => [
        rest(`${name}: arcs`, ring.arcs.length, 'count'),
        rest(`${name}: pieces of each`, made.parts, 'count'),
      ]),
      ...(row.own.straight?.pieces ?? []).flatMap(({ parts, count, length: long }, at) => [
        length(`straight ${at + 1}: length of a piece`, long),
        rest(`straight ${at + 1}: pieces`, count, 'count'),
        rest(`straight ${at + 1}: pieces of each`, parts, 'count'),
      ]),
      length('largest piece, across', standards.largestAcross),
      length('largest piece, high', standards.largestHigh),
      rest('largest piece, turn', standards.largestTurn, 'degrees'),
      ...(row.own.straight && row.inputs
        ? [length('longest straight piece, by the boards', longestPiece(row.inputs, standards))]
        : []),
    ],
  };

export const byCenterCuts: Explain = (row, standards) =>
  row.own && byCall('CUTSPERINCH', machine(standards, standards.feed));

/** A feed as the functions of the machine take it. */
const fed = (name: string, at: FeetPerMinute) => rest(`${name}, ft/min`, bare(at), 'number');

/** What the knife cuts go by: the spindle, its knives, and a feed in ft/min. */
function machine({ rpm, knives, unit }: Standards, feed: number): RestsOn[] {
  return [
    rest('rpm', rpm, 'number'),
    rest('knives that mark', knives, 'count'),
    fed('feed', feetPerMinute(feed, unit)),
  ];
}

export const byCuts: Explain = (row, standards) => {
  const { own, inputs } = row;
  if (own === null || inputs === null) return null;
  // Straight molding alone runs at a feed of its own.
  const by = machine(standards, own.rings.length > 0 ? standards.feed : standards.straightFeed);
  // The fewest fall where the outside edge is the longest against the center.
  const tightest = own.rings.find(({ ring }) => {
    const cuts = cutsAtEdge(ring, inputs.face, standards);
    return cuts.ok && cuts.value === own.cutsOutside;
  });
  const edges = tightest
    ? [
        length('radius of the molding’s center', tightest.ring.inside + inputs.face / 2),
        length('radius of its outside edge', tightest.ring.outside),
      ]
    : [];
  return byCall('CUTSPERINCH', [...by, ...edges]);
};

export const byGrade: Explain = ({ own }) =>
  own && {
    by: 'the grade that these cuts meet: 15 Economy, 20 Custom',
    from: [rest('fewest cuts per inch', own.cutsFewest, 'cuts')],
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
            fed('feed of straight molding', feetPerMinute(standards.straightFeed, standards.unit)),
          ]
        : []),
      fed('feed', feetPerMinute(standards.feed, standards.unit)),
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
      ...LABOR_KINDS.flatMap((kind) =>
        ownCost.minutes[kind] > 0 ? [rest(LABOR[kind].toLowerCase(), ownCost.minutes[kind], 'minutes')] : [],
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

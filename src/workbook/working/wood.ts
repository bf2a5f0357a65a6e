import { inGroup, plain, working, type WorkingColumns } from './column';
import type { StraightPart } from '../../takeoff/curve';
import type { Inputs } from '../../takeoff/inputs';
import { carriedOf, splicesOf, type OwnFigures } from '../../takeoff/ownFigures';
import { legLong as longEdgeOfLeg } from '../../takeoff/straightPieces';
import {
  ARCS,
  boardFeet,
  CLOSED_HEADS,
  EDGE,
  HALF_SPAN,
  headIs,
  HIGH_SIDED_HEADS,
  narrowestBoard,
  ROUGH_QUARTERS,
  SPECIES_IN_STOCK,
  THICK_ENOUGH,
  WIDEST_BOARD,
} from './formulas';
import { HIGH_LEG_OF_QUARTER_ELLIPSE } from './highLeg';
import { all, its, type WoodStep } from './keys';
import { overRings, ringFeet, splicesOfHead } from './ringGroups';
import { STRAIGHT_CARRIED, STRAIGHT_COUNT, STRAIGHT_LENGTH, STRAIGHT_SPLICES } from './straight';
import { piecesOf } from './shared';

const CLOSED = headIs(...CLOSED_HEADS);
const HIGH_SIDED = headIs(...HIGH_SIDED_HEADS);
/** Height above the spring line where an arc's edge meets its leg; `half` is half the span of the whole arc. */
const legTop = (half: string, offset: string) =>
  `${its.rise}-(${half}^2+${its.rise}^2)/(2*${its.rise})+(${half}-${its.rise})*SQRT((${half}+${its.rise})^2+4*${its.rise}*${offset})/(2*${its.rise})`;
/** The same for a slope that rises over `run`. */
const slopeTop = (run: string, sign: '-' | '+' = '-') =>
  `${EDGE}*(SQRT((${run})^2+${its.rise}^2)${sign}${its.rise})/(${run})`;
/** How far a leg's farther upper corner stands above the spring line. */
const LEG_ABOVE_SPRING =
  `IF(${its.head}="straight",IF(${its.stops}="over legs",${its.reveal},${EDGE}),IF(${its.stops}<>"legs",0,` +
  `IF(${its.head}="segmental",MAX(${legTop(HALF_SPAN, its.reveal)},${legTop(HALF_SPAN, EDGE)}),` +
  `IF(${its.head}="half segmental",${legTop(its.span, EDGE)},` +
  `IF(${its.head}="gable",${slopeTop(HALF_SPAN)},IF(${its.head}="shed",${slopeTop(its.span)},` +
  `IF(${its.head}="clipped corners",${slopeTop(`IF(${its.haunch}="",${its.rise},${its.haunch})`)},0)))))))`;
/** The high side's leg, where the head is mitered to it. */
const HIGH_RADIUS = `IF(${its.head}="quarter round",${its.span},(${its.span}^2+${its.rise}^2)/(2*${its.rise}))`;
const HIGH_LEG_ABOVE_SPRING =
  `IF(${its.head}="shed",${its.rise}+${slopeTop(its.span, '+')},IF(${its.head}="quarter ellipse",${HIGH_LEG_OF_QUARTER_ELLIPSE},` +
  `SQRT(${HIGH_RADIUS}*(${HIGH_RADIUS}+2*${EDGE}))-IF(${its.head}="quarter round",0,${HIGH_RADIUS}-${its.rise})))`;
/** The right leg has its own length where one is given. */
const RIGHT_LEG = `IF(${its.otherLeg}="",${its.leg},${its.otherLeg})`;
const legLong = (leg: string, above: string) => `IF(N(${leg})>0,${leg}+${above},0)`;
const HAS_FLAT = `IF(${its.head}="radius corners",${its.rise}<${its.span}/2,FALSE)`;
/** Along a clipped corner's level run. */
const CLIPPED_RUN = `IF(${its.haunch}="",${its.rise},${its.haunch})`;
/** Joints between the pieces of one head. */
const HEAD_JOINTS =
  `IF(${its.head}="three-centered",2,IF(${its.head}="four-centered",3,IF(${headIs('pointed', 'gable')},1,` +
  `IF(${its.head}="clipped corners",2,IF(${its.head}="octagon",8,IF(${its.head}="radius corners",IF(${HAS_FLAT},2,1),` +
  `IF(${its.head}="elliptical",${ARCS}-1,IF(${its.head}="full ellipse",2*(${ARCS}-1),` +
  `IF(${its.head}="quarter ellipse",(${ARCS}-1)/2,0)))))))))`;

const longEdge = (part: StraightPart | undefined) => (part === undefined ? 0 : Math.max(part.inside, part.outside));
const legOf = ({ leg, otherLeg }: Inputs, { curve }: OwnFigures, side: 'left' | 'right') =>
  longEdgeOfLeg(curve, side, leg, otherLeg);

export const WOOD_COLUMNS: WorkingColumns<WoodStep | 'stock' | 'splices' | 'board feet'> = inGroup('Wood', {
  stockThickness: working('Stock thickness', 'length', {
    value: (row) => row.known.wood?.thickness ?? 0,
    formula: () =>
      `IF(OR(${its.species}="",NOT(ISNUMBER(${its.thickness}))),0,IF(${SPECIES_IN_STOCK},${THICK_ENOUGH},0))`,
  }),
  stock: plain(
    'stock',
    `INDEX(Stock_species,MATCH(${its.species},Stock_species,0))&" "&ROUND(${its.stockThickness},4)`,
  ),
  quarters: working('Quarters', 'count', {
    value: (row) => row.known.wood?.quarters ?? 0,
    formula: () => `IF(${its.stockThickness}=0,0,${ROUGH_QUARTERS})`,
  }),
  widest: working('Widest board', 'length', {
    value: (row) => row.known.wood?.widest ?? 0,
    formula: () => `IF(${its.stockThickness}=0,0,${WIDEST_BOARD})`,
  }),
  ripped: working('Board for straight stock', 'length', {
    value: (row) => row.own?.ripWidth,
    formula: narrowestBoard(`(${its.face}+2*Shop_margin)`),
  }),
  flatLong: working('Level piece, long edge', 'length', {
    value: (row) => row.own && longEdge(row.known.head === 'clipped corners' ? row.own.curve.straights[1] : undefined),
    formula:
      `IF(${its.head}="clipped corners",${its.span}-2*${CLIPPED_RUN}+` +
      `2*${EDGE}*(SQRT(${CLIPPED_RUN}^2+${its.rise}^2)-${CLIPPED_RUN})/${its.rise},0)`,
  }),
  headLong: working('Straight of the head, long edge', 'length', {
    value: (row) => row.own && longEdge(row.own.curve.straights[0]),
    formula:
      `IF(${headIs('straight', 'shed')},${its['long point']},IF(${its.head}="gable",${its['long point']}/2,IF(${its.head}="octagon",${its['long point']}/8,` +
      `IF(${its.head}="clipped corners",(${its['long point']}-${its.flatLong})/2,IF(${HAS_FLAT},${its.span}-2*${its.rise},0)))))`,
  }),
  leftLegLong: working('Left leg, long edge', 'length', {
    value: (row) => row.own && row.inputs && legOf(row.inputs, row.own, 'left'),
    // What goes all round has no legs.
    formula: `IF(${CLOSED},0,${legLong(its.leg, LEG_ABOVE_SPRING)})`,
  }),
  rightLegLong: working('Right leg, long edge', 'length', {
    value: (row) => row.own && row.inputs && legOf(row.inputs, row.own, 'right'),
    // A high side has a leg only where the head is mitered to it.
    formula:
      `IF(${CLOSED},0,IF(${HIGH_SIDED},IF(${its.stops}="legs",${legLong(RIGHT_LEG, HIGH_LEG_ABOVE_SPRING)},0),` +
      `${legLong(RIGHT_LEG, LEG_ABOVE_SPRING)}))`,
  }),
  straightLength: working('Straight, one opening', 'length', {
    value: (row) => row.own && (row.own.straight?.length ?? 0),
    formula: STRAIGHT_LENGTH,
  }),
  straightPieces: working('Straight pieces', 'count', {
    value: (row) => row.own && (row.own.straight?.count ?? 0) * piecesOf(row),
    formula: `${its.counted}*${STRAIGHT_COUNT}`,
  }),
  straightSplices: working('Splices of straight pieces', 'count', {
    value: (row) => row.own && splicesOf({ rings: [], straight: row.own.straight }),
    formula: STRAIGHT_SPLICES,
  }),
  straightCarried: working('Straight pieces on carriers', 'count', {
    value: (row) => row.own && carriedOf(row.own) * piecesOf(row),
    formula: `${its.counted}*${STRAIGHT_CARRIED}`,
  }),
  straightSetup: working('Straight set-up', 'text', {
    width: 28,
    value: (row) => row.own?.straight?.setup,
    formula: `IF(${its.straightPieces}=0,"",${its.knife}&", straight")`,
  }),
  headJoints: working('Joints between arcs', 'count', {
    value: (row) => row.own && piecesOf(row) * row.own.curve.pieceJoints,
    formula: `${its.counted}*${HEAD_JOINTS}`,
  }),
  splices: plain('splices', `(${overRings(splicesOfHead)}+${its.straightSplices})`),
  straightPart: working('Part of the straight set-up', 'number', {
    value: (row, { setups }) =>
      row.own &&
      (row.own.straight
        ? (row.own.straight.count * piecesOf(row)) / (setups.get(row.own.straight.setup.toLowerCase()) ?? 1)
        : 0),
    formula: `IF(${its.straightPieces}=0,0,${its.straightPieces}/SUMIFS(${all.straightPieces},${all.straightSetup},${its.straightSetup}))`,
  }),
  guideParts: working('Parts of guide sets', 'number', {
    value: (row, { sets, setups }) =>
      row.own &&
      row.own.rings.reduce(
        (sum, plan) =>
          sum + (plan.ring.count * piecesOf(row)) / (setups.get(sets(row.inputs!, plan).name.toLowerCase()) ?? 1),
        0,
      ),
    formula: overRings((at) => at('guidePart')),
  }),
  straightFeet: working('Straight stock', 'boardFeet', {
    value: (row) => row.own && (row.own.straight ? row.own.straight.boardFeet * piecesOf(row) : 0),
    formula: `IF(${its.counted}*${its.straightLength}=0,0,${boardFeet(`(${its.face}+2*Shop_margin)`, `(${its.counted}*${its.straightLength})`, '1')})`,
  }),
  testFeet: working('One test piece', 'boardFeet', {
    value: (row) => row.own?.testBoardFeet,
    formula: `IF(Shop_test_piece=0,0,${boardFeet(`(${its.face}+2*Shop_margin)`, 'Shop_test_piece', '1')})`,
  }),
  'board feet': plain('board feet', `${overRings(ringFeet)}+${its.straightFeet}`),
});

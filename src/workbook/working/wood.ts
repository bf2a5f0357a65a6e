import { inGroup, plain, working, type WorkingColumns } from './column';
import type { StraightPart } from '../../takeoff/curve';
import type { Inputs } from '../../takeoff/inputs';
import { carriedOf, splicesOf, type OwnFigures } from '../../takeoff/ownFigures';
import { legLong as longEdgeOfLeg, longestPiece } from '../../takeoff/straightPieces';
import {
  boardFeet,
  CLOSED_HEADS,
  headIs,
  HIGH_SIDED_HEADS,
  longestBoardAt,
  narrowestBoard,
  ROUGH_QUARTERS,
  SPECIES_IN_STOCK,
  THICK_ENOUGH,
  WIDEST_BOARD,
} from './formulas';
import { perHead } from './heads';
import { all, its, type WoodStep } from './keys';
import { overRings, ringFeet, splicesOfHead } from './ringGroups';
import { STRAIGHT_CARRIED, STRAIGHT_COUNT, STRAIGHT_LENGTH, STRAIGHT_SPLICES } from './straight';
import { piecesOf } from './shared';

const CLOSED = headIs(...CLOSED_HEADS);
const HIGH_SIDED = headIs(...HIGH_SIDED_HEADS);
/** How far a leg's farther upper corner stands above the spring line, and that of the high side's leg. */
const LEG_ABOVE_SPRING = `IF(AND(${its.head}<>"straight",${its.stops}<>"legs"),0,${perHead(({ leg }) => leg.top, '0')})`;
const HIGH_LEG_ABOVE_SPRING = perHead(({ highLegTop }) => highLegTop, '0');
/** The right leg has its own length where one is given. */
const RIGHT_LEG = `IF(${its.otherLeg}="",${its.leg},${its.otherLeg})`;
const legLong = (leg: string, above: string) => `IF(N(${leg})>0,${leg}+${above},0)`;
/** Joints between the pieces of one head. */
const HEAD_JOINTS = perHead(({ joints }) => joints, '0');

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
  longestPiece: working('Longest straight piece', 'length', {
    value: (row, { standards }) => row.own && row.inputs && longestPiece(row.inputs, standards),
    formula: `MIN(Shop_largest_across,${longestBoardAt(`(${its.face}+2*Shop_margin)`)}-2*Shop_end_trim)`,
  }),
  flatLong: working('Level piece, long edge', 'length', {
    value: (row) => row.own && longEdge(row.known.head === 'clipped corners' ? row.own.curve.straights[1] : undefined),
    formula: perHead(({ straights }) => straights.level, '0'),
  }),
  headLong: working('Straight of the head, long edge', 'length', {
    value: (row) => row.own && longEdge(row.own.curve.straights[0]),
    formula: perHead(({ straights }) => straights.long, '0'),
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

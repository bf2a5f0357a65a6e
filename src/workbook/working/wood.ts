import { figure, inGroup, working, type WorkingColumn } from './column';
import {
  ARCS,
  boardFeet,
  CLOSED_HEADS,
  EDGE,
  HALF_SPAN,
  headIs,
  HIGH_SIDED_HEADS,
  narrowestBoard,
  PIECED_HEADS,
  ROUGH_QUARTERS,
  SPECIES_IN_STOCK,
  THICK_ENOUGH,
  WIDEST_BOARD,
} from './formulas';
import { HIGH_LEG_OF_QUARTER_ELLIPSE } from './highLeg';
import { overRings, ringFeet } from './ringGroups';
import { piecesOf } from './shared';

const CLOSED = headIs(...CLOSED_HEADS);
const HIGH_SIDED = headIs(...HIGH_SIDED_HEADS);
/** Height above the spring line where an arc's edge meets its leg; `half` is half the span of the whole arc. */
const legTop = (half: string, offset: string) =>
  `{rise}-(${half}^2+{rise}^2)/(2*{rise})+(${half}-{rise})*SQRT((${half}+{rise})^2+4*{rise}*${offset})/(2*{rise})`;
/** The same for a slope that rises over `run`. */
const slopeTop = (run: string, sign: '-' | '+' = '-') => `${EDGE}*(SQRT((${run})^2+{rise}^2)${sign}{rise})/(${run})`;
/** How far a leg's farther upper corner stands above the spring line. */
const LEG_ABOVE_SPRING =
  `IF({head}="straight",IF({stops}="over legs",{reveal},${EDGE}),IF({stops}<>"legs",0,` +
  `IF({head}="segmental",MAX(${legTop(HALF_SPAN, '{reveal}')},${legTop(HALF_SPAN, EDGE)}),` +
  `IF({head}="half segmental",${legTop('{span}', EDGE)},` +
  `IF({head}="gable",${slopeTop(HALF_SPAN)},IF({head}="shed",${slopeTop('{span}')},` +
  `IF({head}="clipped corners",${slopeTop('IF({haunch}="",{rise},{haunch})')},0)))))))`;
/** The high side's leg, where the head is mitered to it. */
const HIGH_RADIUS = 'IF({head}="quarter round",{span},({span}^2+{rise}^2)/(2*{rise}))';
const HIGH_LEG_ABOVE_SPRING =
  `IF({head}="shed",{rise}+${slopeTop('{span}', '+')},IF({head}="quarter ellipse",${HIGH_LEG_OF_QUARTER_ELLIPSE},` +
  `SQRT(${HIGH_RADIUS}*(${HIGH_RADIUS}+2*${EDGE}))-IF({head}="quarter round",0,${HIGH_RADIUS}-{rise})))`;
/** The right leg has its own length where one is given. */
const RIGHT_LEG = 'IF({otherLeg}="",{leg},{otherLeg})';
const legLength = (leg: string, above: string) => `IF(N(${leg})>0,${leg}+${above}+2*Shop_end_allowance,0)`;
/** What goes all round has no legs; a high side has one only where the head is mitered to it. */
const LEG_LENGTHS =
  `IF(${CLOSED},0,${legLength('{leg}', LEG_ABOVE_SPRING)}+IF(${HIGH_SIDED},` +
  `IF({stops}="legs",${legLength(RIGHT_LEG, HIGH_LEG_ABOVE_SPRING)},0),${legLength(RIGHT_LEG, LEG_ABOVE_SPRING)}))`;
const LEG_COUNT = `IF(${CLOSED},0,(N({leg})>0)+IF(AND(${HIGH_SIDED},{stops}<>"legs"),0,N(${RIGHT_LEG})>0))`;
/** Straight pieces of a head itself, and their length along their longer edges. */
const HAS_FLAT = 'IF({head}="radius corners",{rise}<{span}/2,FALSE)';
const HEAD_STRAIGHTS =
  `IF(${headIs('straight', 'shed')},1,IF({head}="gable",2,IF({head}="clipped corners",3,` +
  `IF({head}="octagon",8,IF(${HAS_FLAT},1,0)))))`;
const HEAD_STRAIGHT_LENGTH = `IF(${headIs(...PIECED_HEADS)},{length},IF(${HAS_FLAT},{span}-2*{rise},0))`;
/** Joints between the pieces of one head. */
const HEAD_JOINTS =
  `IF({head}="three-centered",2,IF({head}="four-centered",3,IF(${headIs('pointed', 'gable')},1,` +
  `IF({head}="clipped corners",2,IF({head}="octagon",8,IF({head}="radius corners",IF(${HAS_FLAT},2,1),` +
  `IF({head}="elliptical",${ARCS}-1,IF({head}="full ellipse",2*(${ARCS}-1),` +
  `IF({head}="quarter ellipse",(${ARCS}-1)/2,0)))))))))`;

export const WOOD_COLUMNS: readonly WorkingColumn[] = inGroup('Wood', [
  working('stockThickness', 'Stock thickness', 'length', {
    value: (row) => row.known.wood?.thickness ?? 0,
    formula: () => `IF(OR({species}="",NOT(ISNUMBER({thickness}))),0,IF(${SPECIES_IN_STOCK},${THICK_ENOUGH},0))`,
  }),
  figure('stock', 'Wood', 'text', {
    value: (row) => row.own?.stock,
    // The species as the stock list spells it.
    formula: 'INDEX(Stock_species,MATCH({species},Stock_species,0))&" "&ROUND({stockThickness},4)',
  }),
  working('quarters', 'Quarters', 'count', {
    value: (row) => row.known.wood?.quarters ?? 0,
    formula: () => `IF({stockThickness}=0,0,${ROUGH_QUARTERS})`,
  }),
  working('widest', 'Widest board', 'length', {
    value: (row) => row.known.wood?.widest ?? 0,
    formula: () => `IF({stockThickness}=0,0,${WIDEST_BOARD})`,
  }),
  working('ripped', 'Board for straight stock', 'length', {
    value: (row) => row.own?.ripWidth,
    formula: narrowestBoard('({face}+2*Shop_margin)'),
  }),
  working('straightLength', 'Straight, one opening', 'length', {
    value: (row) => row.own && (row.own.straight?.length ?? 0),
    formula: `${HEAD_STRAIGHT_LENGTH}+${HEAD_STRAIGHTS}*2*Shop_end_allowance+${LEG_LENGTHS}`,
  }),
  working('straightPieces', 'Straight pieces', 'count', {
    value: (row) => row.own && (row.own.straight?.count ?? 0) * piecesOf(row),
    formula: `{counted}*(${HEAD_STRAIGHTS}+${LEG_COUNT})`,
  }),
  working('straightSetup', 'Straight set-up', 'text', {
    width: 28,
    value: (row) => row.own?.straight?.setup,
    formula: 'IF({straightPieces}=0,"",{knife}&", straight")',
  }),
  working('headJoints', 'Joints between arcs', 'count', {
    value: (row) => row.own && piecesOf(row) * row.own.curve.pieceJoints,
    formula: `{counted}*${HEAD_JOINTS}`,
  }),
  working('straightPart', 'Part of the straight set-up', 'number', {
    value: (row, { setups }) =>
      row.own &&
      (row.own.straight
        ? (row.own.straight.count * piecesOf(row)) / (setups.get(row.own.straight.setup.toLowerCase()) ?? 1)
        : 0),
    formula:
      'IF({straightPieces}=0,0,{straightPieces}/SUMIFS({straightPieces:all},{straightSetup:all},{straightSetup}))',
  }),
  working('guideParts', 'Parts of guide sets', 'number', {
    value: (row, { sets, setups }) =>
      row.own &&
      row.own.rings.reduce(
        (sum, plan) =>
          sum + (plan.ring.count * piecesOf(row)) / (setups.get(sets(row.inputs!, plan).name.toLowerCase()) ?? 1),
        0,
      ),
    formula: overRings((at) => at('guidePart')),
  }),
  working('straightFeet', 'Straight stock', 'boardFeet', {
    value: (row) => row.own && (row.own.straight ? row.own.straight.boardFeet * piecesOf(row) : 0),
    formula: `IF({counted}*{straightLength}=0,0,${boardFeet('({face}+2*Shop_margin)', '({counted}*{straightLength})', '1')})`,
  }),
  working('testFeet', 'One test piece', 'boardFeet', {
    value: (row) => row.own?.testBoardFeet,
    formula: `IF(Shop_test_piece=0,0,${boardFeet('({face}+2*Shop_margin)', 'Shop_test_piece', '1')})`,
  }),
  figure('board feet', 'Board feet', 'boardFeet', {
    value: (row) => row.ownCost?.boardFeet,
    formula: `${overRings(ringFeet)}+{straightFeet}`,
  }),
]);

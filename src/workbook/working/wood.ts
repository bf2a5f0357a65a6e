import { figure, inGroup, working, type WorkingColumn } from './column';
import {
  boardFeet,
  CROWN_FEET,
  HALF_SPAN,
  HAUNCH_FEET,
  MULTI_CENTERED,
  narrowestBoard,
  overRings,
  ROUGH_QUARTERS,
  SPECIES_IN_STOCK,
  THICK_ENOUGH,
  WIDEST_BOARD,
} from './formulas';
import { piecesOf } from './shared';

const MITERED = 'OR({ends}="legs",{ends}="mitered")';
const EDGE = '({reveal}+{face})';
/** Height above the spring line where an arc's edge meets its leg. */
const legTop = (offset: string) =>
  `{rise}-ARCH.RADIUS({span},{rise})+(${HALF_SPAN}-{rise})*SQRT((${HALF_SPAN}+{rise})^2+4*{rise}*${offset})/(2*{rise})`;
/** How far a leg's farther upper corner stands above the spring line. */
const LEG_ABOVE_SPRING =
  `IF({head}="straight",IF({ends}="over legs",{reveal},${EDGE}),` +
  `IF(AND({head}="segmental",${MITERED}),MAX(${legTop('{reveal}')},${legTop(EDGE)}),0))`;
/** The right leg has its own length where one is given. */
const RIGHT_LEG = 'IF({otherLeg}="",{leg},{otherLeg})';
const legLength = (leg: string, above: string) => `IF(N(${leg})>0,${leg}+${above}+2*Shop_end_allowance,0)`;
/** A full circle has no legs; a quarter round's high side has one only where the head is mitered to it. */
const LEG_LENGTHS =
  `IF({head}="round",0,${legLength('{leg}', LEG_ABOVE_SPRING)}+IF({head}="quarter round",` +
  `IF(${MITERED},${legLength(RIGHT_LEG, `SQRT({span}*({span}+2*${EDGE}))`)},0),${legLength(RIGHT_LEG, LEG_ABOVE_SPRING)}))`;
const LEG_COUNT = `IF({head}="round",0,(N({leg})>0)+IF(AND({head}="quarter round",NOT(${MITERED})),0,N(${RIGHT_LEG})>0))`;

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
    formula: `IF({head}="straight",{length}+2*Shop_end_allowance,0)+${LEG_LENGTHS}`,
  }),
  working('straightPieces', 'Straight pieces', 'count', {
    value: (row) => row.own && (row.own.straight?.count ?? 0) * piecesOf(row),
    formula: `{counted}*(IF({head}="straight",1,0)+${LEG_COUNT})`,
  }),
  working('straightSetup', 'Straight set-up', 'text', {
    width: 28,
    value: (row) => row.own?.straight?.setup,
    formula: 'IF({straightPieces}=0,"",{knife}&", straight")',
  }),
  working('headJoints', 'Joints between arcs', 'count', {
    value: (row) => row.own && piecesOf(row) * row.own.curve.pieceJoints,
    formula: `{counted}*IF(${MULTI_CENTERED},2,IF({head}="pointed",1,0))`,
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
    formula: overRings('{guidePart}', '{haunchGuidePart}'),
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
    formula: `${overRings(CROWN_FEET, HAUNCH_FEET)}+{straightFeet}`,
  }),
]);

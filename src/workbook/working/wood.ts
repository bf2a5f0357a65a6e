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

/** How far a leg's long point stands above the spring line. */
const LEG_ABOVE_SPRING =
  'IF({ends}<>"legs",0,IF({head}="straight",{reveal}+{face},IF({head}="segmental",MAX(0,{rise}-ARCH.RADIUS({span},{rise})' +
  `+(${HALF_SPAN}-{rise})*SQRT((${HALF_SPAN}+{rise})^2+4*{rise}*({reveal}+{face}))/(2*{rise})),0)))`;

const legLength = (leg: string) => `IF(N(${leg})>0,${leg}+${LEG_ABOVE_SPRING}+2*Shop_end_allowance,0)`;

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
    formula:
      'IF({head}="straight",{length}+2*Shop_end_allowance,0)' +
      `+IF({otherLeg}="",2*${legLength('{leg}')},${legLength('{leg}')}+${legLength('{otherLeg}')})`,
  }),
  working('straightPieces', 'Straight pieces', 'count', {
    value: (row) => row.own && (row.own.straight?.count ?? 0) * piecesOf(row),
    formula: '{counted}*(IF({head}="straight",1,0)+IF({otherLeg}="",2*({leg}>0),({leg}>0)+(N({otherLeg})>0)))',
  }),
  working('straightSetup', 'Straight set-up', 'text', {
    width: 28,
    value: (row) => row.own?.straight?.setup,
    formula: 'IF({straightPieces}=0,"",{knife}&", straight")',
  }),
  working('headJoints', 'Joints between arcs', 'count', {
    value: (row) =>
      row.own && piecesOf(row) * Math.max(0, row.own.rings.reduce((sum, { ring }) => sum + ring.count, 0) - 1),
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
    value: (row, { setups }) =>
      row.own &&
      row.own.rings.reduce(
        (sum, { guide, ring }) => sum + (ring.count * piecesOf(row)) / (setups.get(guide.toLowerCase()) ?? 1),
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

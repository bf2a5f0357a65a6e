import { figure, inGroup, working, type TakeoffColumn } from './column';
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

/** How far a leg's long point stands above the spring line. */
const LEG_ABOVE_SPRING =
  'IF({ends}<>"legs",0,IF({head}="straight",{reveal}+{face},IF({head}="segmental",MAX(0,{rise}-ARCH.RADIUS({span},{rise})' +
  `+(${HALF_SPAN}-{rise})*SQRT((${HALF_SPAN}+{rise})^2+4*{rise}*({reveal}+{face}))/(2*{rise})),0)))`;

/** Straight pieces, and the share of the test pieces. */
const STRAIGHT_STOCK = '({counted}*{straightLength}+Shop_test_piece*({guideSetups}+{straightSetups}))';

export const WOOD_COLUMNS: readonly TakeoffColumn[] = inGroup('Wood', [
  working('stockThickness', 'Stock thickness', 'length', {
    value: (row) => row.known.wood?.thickness ?? 0,
    formula: () => `IF(OR({species}="",NOT(ISNUMBER({thickness}))),0,IF(${SPECIES_IN_STOCK},${THICK_ENOUGH},0))`,
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
      `+IF({leg}>0,2*({leg}+${LEG_ABOVE_SPRING}+2*Shop_end_allowance),0)`,
  }),
  working('straightPieces', 'Straight pieces', 'count', {
    value: (row) => row.cost?.straightPieces,
    formula: '{counted}*(IF({head}="straight",1,0)+IF({leg}>0,2,0))',
  }),
  working('straightSetup', 'Straight set-up', 'text', {
    width: 28,
    value: (row) => row.own?.straight?.setup,
    formula: 'IF({straightPieces}=0,"",{knife}&", straight")',
  }),
  working('joints', 'Joints', 'number', {
    value: (row) => row.cost?.joints,
    formula:
      overRings('{run}*({segments}-IF({blankAngle}=360,0,1))', '{haunchRun}*({haunchSegments}-1)') +
      `+{counted}*IF(${MULTI_CENTERED},2,IF({head}="pointed",1,0))`,
  }),
  working('guideSetups', 'Guide set-ups borne', 'number', {
    value: (row) => row.cost?.guideSetups,
    formula: overRings('{pieces}/{setupPieces}', '{haunchPieces}/{haunchSetupPieces}'),
  }),
  working('straightSetups', 'Straight set-ups borne', 'number', {
    value: (row) => row.cost?.straightSetups,
    formula:
      'IF({straightPieces}=0,0,{straightPieces}/SUMIFS({straightPieces:all},{straightSetup:all},{straightSetup}))',
  }),
  working('straightFeet', 'Straight and test pieces', 'boardFeet', {
    value: (row) => row.cost?.straightFeet,
    formula: `IF(${STRAIGHT_STOCK}=0,0,${boardFeet('({face}+2*Shop_margin)', STRAIGHT_STOCK, '1')})`,
  }),
  figure('boardFeet', 'Board feet', 'boardFeet', {
    value: (row) => row.cost?.boardFeet,
    formula: `${overRings(CROWN_FEET, HAUNCH_FEET)}+{straightFeet}`,
    total: true,
  }),
]);

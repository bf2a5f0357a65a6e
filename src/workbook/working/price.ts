import { inGroup, figure, working, type WorkingColumn } from './column';
import { CROWN_FEET, HAUNCH_FEET, overRings, priceAt } from './formulas';
import { owned } from './onHand';

const STRAIGHT = '{counted}*{straightLength}';

export const PRICE_COLUMNS: readonly WorkingColumn[] = inGroup('Money', [
  figure('wood', 'Wood, before waste', 'money', {
    value: (row) => row.ownCost?.wood,
    formula:
      overRings(`${CROWN_FEET}*${priceAt('{boardWidth}')}`, `${HAUNCH_FEET}*${priceAt('{haunchBoardWidth}')}`) +
      `+IF({straightFeet}=0,0,{straightFeet}*${priceAt('{ripped}')})`,
  }),
  working('laborMinutes', 'Labor minutes', 'minutes', {
    value: (row) => row.ownCost?.laborMinutes,
    formula:
      overRings('{pieces}*{pieceMinutes}', '{haunchPieces}*{haunchPieceMinutes}') +
      '+{headJoints}*Shop_joint_minutes+{straightMinutes}' +
      `+${STRAIGHT}*Shop_sand_minutes/Shop_long_unit`,
  }),
  figure('labor', 'Labor', 'money', {
    value: (row) => row.ownCost?.labor,
    formula: '{laborMinutes}/60*Shop_shop_rate',
  }),
]);

const setup = (part: string, toMake: string) =>
  `${part}*((Shop_setup_minutes+IF(${toMake},Shop_guide_minutes,0))/60*Shop_shop_rate+IF(${toMake},Shop_guide_material,0))`;
const guided = (part: string, radius: string) => setup(part, `${owned('guides', radius)}=0`);

/** What each opening bears of the things several need together; the takeoff looks these up by number. */
export const SHARE_COLUMNS: readonly WorkingColumn[] = inGroup('Shared', [
  figure('shareMoney', 'Share, money', 'money', {
    value: (row) => row.share?.money ?? 0,
    formula: () =>
      'IF({counted}=0,0,' +
      `IF(${owned('knife')}=0,Shop_knife_grinding,0)*{counted}/SUMIFS({counted:all},{knife:all},{knife})` +
      `+${overRings(guided('{guidePart}', '{insideRadius}'), guided('{haunchGuidePart}', '{haunchInsideRadius}'))}` +
      '+{straightPart}*Shop_setup_minutes/60*Shop_shop_rate' +
      `+Shop_spare_pieces*(${overRings('{guidePart}*{pieceMinutes}', '{haunchGuidePart}*{haunchPieceMinutes}')})/60*Shop_shop_rate)`,
  }),
  figure('shareWood', 'Share, wood', 'money', {
    value: (row) => row.share?.wood ?? 0,
    formula: () =>
      'IF({counted}=0,0,' +
      '({guideParts}+{straightPart})*IF(Shop_test_piece=0,0,{testFeet}*' +
      `${priceAt('{ripped}')})+Shop_spare_pieces*(` +
      overRings(
        `{guidePart}*{pieceFeet}*${priceAt('{boardWidth}')}`,
        `{haunchGuidePart}*{haunchPieceFeet}*${priceAt('{haunchBoardWidth}')}`,
      ) +
      '))',
  }),
]);

import { inGroup, figure, working, type WorkingColumn } from './column';
import { priceAt } from './formulas';
import { benchMinutes } from '../../takeoff/labor';
import { guidesOwned, KNIVES_OWNED, ofKnife } from './onHand';
import { overRings, ringFeet, RUN_MINUTES, splicesOfHead } from './ringGroups';

const STRAIGHT = '{counted}*{straightLength}';

export const PRICE_COLUMNS: readonly WorkingColumn[] = inGroup('Money', [
  figure('wood', 'Wood, before waste', 'money', {
    value: (row) => row.ownCost?.wood,
    formula:
      overRings((at) => `${ringFeet(at)}*${priceAt(at('boardWidth'))}`) +
      `+IF({straightFeet}=0,0,{straightFeet}*${priceAt('{ripped}')})`,
  }),
  working('benchMinutes', 'Bench minutes', 'minutes', {
    value: (row) => row.ownCost && benchMinutes(row.ownCost.minutes),
    formula:
      overRings((at) => `${at('pieces')}*${at('pieceBench')}`) +
      '+{headJoints}*Shop_joint_minutes' +
      `+{counted}*${overRings(splicesOfHead)}*Shop_splice_minutes` +
      `+${STRAIGHT}*(Shop_trim_minutes+Shop_sand_minutes)/Shop_long_unit` +
      '+{straightPieces}*(2*Shop_end_cut_minutes+Shop_pack_minutes)',
  }),
  figure('labor', 'Labor', 'money', {
    value: (row) => row.ownCost?.labor,
    formula: `(${RUN_MINUTES})/60*Shop_shop_rate+{benchMinutes}/60*Shop_bench_rate`,
  }),
]);

/** A part of one guide set: changing to it, and making it where the shop has none. */
const guided = (part: string, radius: string) =>
  `${part}*(Shop_guide_change/60*Shop_shop_rate+IF(${guidesOwned(radius)}=0,Shop_guide_minutes/60*Shop_bench_rate+Shop_guide_material,0))`;
/** A part of a spare piece: the work on it. */
const spare = (part: string, run: string, bench: string) =>
  `${part}*(${run}*Shop_shop_rate+${bench}*Shop_bench_rate)/60`;

/** What each opening bears of the things several need together; the takeoff looks these up by number. */
export const SHARE_COLUMNS: readonly WorkingColumn[] = inGroup('Shared', [
  figure('shareMoney', 'Share, money', 'money', {
    value: (row) => row.share?.money ?? 0,
    formula: () =>
      'IF({counted}=0,0,' +
      `(IF(${KNIVES_OWNED}>0,0,${ofKnife('charge', 'Shop_knife_grinding')})+Shop_knife_change/60*Shop_shop_rate)` +
      '*{counted}/SUMIFS({counted:all},{knife:all},{knife})' +
      `+${overRings((at) => guided(at('guidePart'), at('guideRadius')))}` +
      '+{straightPart}*Shop_guide_change/60*Shop_shop_rate' +
      '+Shop_spare_pieces*' +
      overRings((at) => spare(at('guidePart'), at('pieceRun'), at('pieceBench'))) +
      ')',
  }),
  figure('shareWood', 'Share, wood', 'money', {
    value: (row) => row.share?.wood ?? 0,
    formula: () =>
      'IF({counted}=0,0,' +
      '({guideParts}+{straightPart})*IF(Shop_test_piece=0,0,{testFeet}*' +
      `${priceAt('{ripped}')})+Shop_spare_pieces*` +
      overRings((at) => `${at('guidePart')}*${at('pieceFeet')}*${priceAt(at('boardWidth'))}`) +
      ')',
  }),
]);

import { inGroup, plain, working, type WorkingColumns } from './column';
import { priceAt } from './formulas';
import { benchMinutes } from '../../takeoff/labor';
import { all, its, type PriceStep, type ShareKey } from './keys';
import { guidesOwned, KNIVES_OWNED, ofKnife } from './onHand';
import { overRings, ringFeet, RUN_MINUTES } from './ringGroups';

const STRAIGHT = `${its.counted}*${its.straightLength}`;

export const PRICE_COLUMNS: WorkingColumns<PriceStep | 'wood' | 'labor'> = inGroup('Money', {
  wood: plain(
    'wood',
    overRings((at) => `${ringFeet(at)}*${priceAt(at('board width'))}`) +
      `+IF(${its.straightFeet}=0,0,${its.straightFeet}*${priceAt(its.ripped)})`,
  ),
  benchMinutes: working('Bench minutes', 'minutes', {
    value: (row) => row.ownCost && benchMinutes(row.ownCost.minutes),
    formula:
      overRings((at) => `${at('pieces')}*${at('pieceBench')}`) +
      `+${its.headJoints}*Shop_joint_minutes` +
      `+${its.counted}*${its.splices}*Shop_splice_minutes` +
      `+${its.straightCarried}*Shop_carrier_minutes` +
      `+${STRAIGHT}*(Shop_trim_minutes+Shop_sand_minutes)/Shop_long_unit` +
      `+${its.straightPieces}*(2*Shop_end_cut_minutes+Shop_pack_minutes)`,
  }),
  labor: plain('labor', `(${RUN_MINUTES})/60*Shop_shop_rate+${its.benchMinutes}/60*Shop_bench_rate`),
});

/** A part of one guide set: changing to it, and making it where the shop has none. */
const guided = (part: string, radius: string) =>
  `${part}*(Shop_guide_change/60*Shop_shop_rate+IF(${guidesOwned(radius)}=0,Shop_guide_minutes/60*Shop_bench_rate+Shop_guide_material,0))`;
/** A part of a spare piece: the work on it. */
const spare = (part: string, run: string, bench: string) =>
  `${part}*(${run}*Shop_shop_rate+${bench}*Shop_bench_rate)/60`;

/** What each opening bears of the things several need together; the takeoff looks these up by number. */
export const SHARE_COLUMNS: WorkingColumns<ShareKey> = inGroup('Shared', {
  no: working('No.', 'row', { value: ({ no }) => no, formula: () => null }),
  shareMoney: working('Share, money', 'money', {
    value: (row) => row.share?.money ?? 0,
    formula: () =>
      `IF(${its.counted}=0,0,` +
      `(IF(${KNIVES_OWNED}>0,0,${ofKnife('charge', 'Shop_knife_grinding')})+Shop_knife_change/60*Shop_shop_rate)` +
      `*${its.counted}/SUMIFS(${all.counted},${all.knife},${its.knife})` +
      `+${overRings((at) => guided(at('guidePart'), at('guideRadius')))}` +
      `+${its.straightPart}*Shop_guide_change/60*Shop_shop_rate` +
      '+Shop_spare_pieces*' +
      overRings((at) => spare(at('guidePart'), at('pieceRun'), at('pieceBench'))) +
      ')',
  }),
  shareWood: working('Share, wood', 'money', {
    value: (row) => row.share?.wood ?? 0,
    formula: () =>
      `IF(${its.counted}=0,0,` +
      `(${its.guideParts}+${its.straightPart})*IF(Shop_test_piece=0,0,${its.testFeet}*` +
      `${priceAt(its.ripped)})+Shop_spare_pieces*` +
      overRings((at) => `${at('guidePart')}*${at('pieceFeet')}*${priceAt(at('board width'))}`) +
      ')',
  }),
});

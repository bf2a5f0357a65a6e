import { inGroup, plain, working, type WorkingColumns } from './column';
import { priceAt } from './formulas';
import { benchMinutes, type BenchKind } from '../../takeoff/labor';
import type { SHARED, SharedCharge, SharedKind } from '../../takeoff/shares';
import { all, its, type PriceStep, type ShareKey } from './keys';
import { guidesOwned, KNIVES_OWNED, ofKnife } from './onHand';
import { isShort, overRings, ringFeet, RUN_MINUTES, type InGroup } from './ringGroups';

/** Minutes of one kind of work: for each foot (metric: meter) of outside length, or by a formula of their own. */
type Minutes = { readonly long: string } | { readonly by: string };

interface BenchWork {
  /** On one ring. */
  readonly ring: ((at: InGroup) => Minutes) | null;
  /** On an opening's straight pieces, and where its pieces meet. */
  readonly beside: Minutes | null;
}

const endsOf = (at: InGroup, others: number) => `IF(${at('madeAngle')}=360,0,${others})`;

/** The work at the bench, each kind as in `takeoff/labor.ts`: one without its formulas doesn't compile. */
const BENCH: Readonly<Record<BenchKind, BenchWork>> = {
  gluing: {
    ring: (at) => ({ by: `(${at('segments')}-${endsOf(at, 1)})*Shop_joint_minutes` }),
    beside: { by: `${its.headJoints}*Shop_joint_minutes` },
  },
  sawing: { ring: () => ({ long: 'Shop_saw_minutes' }), beside: null },
  planing: { ring: () => ({ long: 'Shop_plane_minutes' }), beside: null },
  trimming: { ring: () => ({ long: 'Shop_trim_minutes' }), beside: { long: 'Shop_trim_minutes' } },
  endCuts: {
    ring: (at) => ({ by: `${endsOf(at, 2)}*Shop_end_cut_minutes` }),
    beside: { by: `${its.straightPieces}*2*Shop_end_cut_minutes` },
  },
  sanding: { ring: () => ({ long: 'Shop_sand_minutes' }), beside: { long: 'Shop_sand_minutes' } },
  packing: { ring: () => ({ by: 'Shop_pack_minutes' }), beside: { by: `${its.straightPieces}*Shop_pack_minutes` } },
  fitting: {
    ring: (at) => ({ by: `IF(AND(Shop_short_pieces="carrier",${isShort(at)}),Shop_carrier_minutes,0)` }),
    beside: {
      by: `${its.counted}*${its.splices}*Shop_splice_minutes+${its.straightCarried}*Shop_carrier_minutes`,
    },
  },
};

/** All of these together, of pieces that are so long along their outside edge. */
function minutesFor(outside: string, of: (work: BenchWork) => Minutes | null): string {
  const all = Object.values(BENCH).flatMap((work) => of(work) ?? []);
  const long = all.flatMap((minutes) => ('long' in minutes ? [minutes.long] : []));
  const others = all.flatMap((minutes) => ('by' in minutes ? [minutes.by] : []));
  return [`${outside}*(${long.join('+')})/Shop_long_unit`, ...others].join('+');
}

/** Bench minutes of one ring. */
export const pieceBench = (at: InGroup): string =>
  minutesFor(`RADIANS(${at('madeAngle')})*${at('outside radius')}`, ({ ring }) => ring && ring(at));
const BESIDE_RINGS = minutesFor(`${its.counted}*${its.straightLength}`, ({ beside }) => beside);

export const PRICE_COLUMNS: WorkingColumns<PriceStep | 'wood' | 'labor'> = inGroup('Money', {
  wood: plain(
    'wood',
    overRings((at) => `${ringFeet(at)}*${priceAt(at('board width'))}`) +
      `+IF(${its.straightFeet}=0,0,${its.straightFeet}*${priceAt(its.ripped)})`,
  ),
  benchMinutes: working('Bench minutes', 'minutes', {
    value: (row) => row.ownCost && benchMinutes(row.ownCost.minutes),
    formula: `${overRings((at) => `${at('pieces')}*${at('pieceBench')}`)}+${BESIDE_RINGS}`,
  }),
  labor: plain('labor', `(${RUN_MINUTES})/60*Shop_shop_rate+${its.benchMinutes}/60*Shop_bench_rate`),
});

/** What a charge that openings share comes to for one knife, and for one set-up: with guides, and straight. */
type ChargeFormulas<Charge> = (Charge extends { ofKnife: unknown } ? { readonly knife: string } : unknown) &
  (Charge extends { ofSetup: unknown }
    ? { readonly guided: (at: InGroup) => string; readonly straight: string }
    : unknown);

/** Each charge of `takeoff/shares.ts`: one without its formulas doesn't compile. */
const CHARGES: { readonly [Kind in SharedKind]: ChargeFormulas<(typeof SHARED)[Kind]> } = {
  knives: { knife: `IF(${KNIVES_OWNED}>0,0,${ofKnife('charge', 'Shop_knife_grinding')})` },
  guides: {
    guided: (at) =>
      `IF(${guidesOwned(at('guideRadius'))}=0,Shop_guide_minutes/60*Shop_bench_rate+Shop_guide_material,0)`,
    straight: '0',
  },
  settingUp: {
    knife: 'Shop_knife_change/60*Shop_shop_rate',
    guided: () => 'Shop_guide_change/60*Shop_shop_rate',
    straight: 'Shop_guide_change/60*Shop_shop_rate',
  },
  spares: {
    guided: (at) => `Shop_spare_pieces*(${at('pieceRun')}*Shop_shop_rate+${at('pieceBench')}*Shop_bench_rate)/60`,
    straight: '0',
  },
};
const charged = (of: (charge: Partial<ChargeFormulas<Required<SharedCharge>>>) => string | undefined) =>
  `(${Object.values(CHARGES)
    .flatMap((charge) => of(charge) ?? [])
    .join('+')})`;

/** What each opening bears of the things several need together; the takeoff looks these up by number. */
export const SHARE_COLUMNS: WorkingColumns<ShareKey> = inGroup('Shared', {
  no: working('No.', 'row', { value: ({ no }) => no, formula: () => null }),
  shareMoney: working('Share, money', 'money', {
    value: (row) => row.share?.money ?? 0,
    formula: () =>
      `IF(${its.counted}=0,0,` +
      `${charged(({ knife }) => knife)}*${its.counted}/SUMIFS(${all.counted},${all.knife},${its.knife})` +
      `+${overRings((at) => `${at('guidePart')}*${charged(({ guided }) => guided?.(at))}`)}` +
      `+${its.straightPart}*${charged(({ straight }) => straight)})`,
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

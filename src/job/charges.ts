import { addUp, roundTo, toCents } from '../rounding';
import type { Unit } from '../unit';
import type { Job } from './fields';

export type ChargeKind = 'setups' | 'finish' | 'discount' | 'minimum' | 'delivery' | 'tax';

/** One line below the openings. */
export interface Charge {
  readonly kind: ChargeKind;
  readonly text: string;
  /** In whole cents; a discount is below 0. */
  readonly amount: number;
}

/** What the charges are figured from. */
export interface Goods {
  /** Amounts of the openings and other lines, in whole cents. */
  readonly amounts: readonly number[];
  /** What knives, guides and set-ups sell for where they stand apart, unrounded; 0 where the prices hold them. */
  readonly setups: number;
  /** Molding along its outside edge, feet or meters, unrounded. */
  readonly length: number;
}

export interface Sums {
  readonly subtotal: number;
  readonly charges: readonly Charge[];
  readonly total: number;
}

/**
 * The charges of a job in the order they are printed, and the total: the sum of what is shown.
 *
 * Set-ups and finish are added to the lines; the discount is a share of these, rounded to cents; what is still missing to the
 * minimum charge is added; then delivery; then tax, a share of everything or of everything but delivery, rounded to cents. The
 * length that is finished is rounded to a tenth first, as it is printed. Example: lines of 100.00 and 50.50, a discount of 5%,
 * delivery 20.00 and tax of 6.25% on everything: 150.50 − 7.53 + 20.00 = 162.97, tax 10.19, total 173.16.
 */
export function sumsOf(goods: Goods, job: Job, unit: Unit): Sums {
  const subtotal = addUp(goods.amounts);
  const charges: Charge[] = [];
  const add = (kind: ChargeKind, text: string, amount: number) => {
    if (amount !== 0) charges.push({ kind, text, amount });
  };
  const soFar = () => addUp([subtotal, ...charges.map(({ amount }) => amount)]);

  add('setups', SETUPS_TEXT, toCents(goods.setups));
  const length = shownLength(goods.length);
  add('finish', finishText(job, unit, length.toFixed(1)), toCents(length * job.finishRate));
  add('discount', `Discount ${percentText(job.discount)}`, -toCents(soFar() * job.discount));
  const short = addUp([job.minimum, -soFar()]);
  add('minimum', minimumText(job), job.minimum > 0 ? Math.max(0, short) : 0);
  const taxedBeforeDelivery = soFar();
  add('delivery', DELIVERY_TEXT, job.deliveryCharge);
  const taxed = job.taxOn === 'everything' ? soFar() : taxedBeforeDelivery;
  add('tax', taxText(job), toCents(taxed * job.taxRate));
  return { subtotal, charges, total: soFar() };
}

/** As the finish is charged and printed: to a tenth of a foot or meter. */
export function shownLength(length: number): number {
  return roundTo(1, length);
}

export const SETUPS_TEXT = 'Knives, guides and set-ups charge';
export const DELIVERY_TEXT = 'Delivery charge';

export function finishText({ finishRate, finishWords }: Job, unit: Unit, length: string): string {
  const long = unit === 'in' ? ['ft', 'foot'] : ['m', 'meter'];
  return `${finishWords || 'Priming or finish'}, ${length} ${long[0]} at ${finishRate.toFixed(2)} a ${long[1]}`;
}

export function minimumText({ minimum }: Job): string {
  return `Minimum charge ${minimum.toFixed(2)}, what is short of it`;
}

/** Says whether delivery is taxed where there is any: a customer's own check of it needs to know. */
export function taxText({ taxRate, taxOn, deliveryCharge }: Job): string {
  const of = taxOn === 'everything' ? (deliveryCharge > 0 ? ', delivery included' : '') : ', not on delivery';
  return `Tax ${percentText(taxRate)}${of}`;
}

/** 0.0625 → 6.25%. */
export function percentText(share: number): string {
  return `${roundTo(4, share * 100)}%`;
}

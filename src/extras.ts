import type { SettingKey } from './standards';

/*
 * What goes with an opening and is bought or turned by the piece: counted, and sold at the shop's price list. The price of each
 * stands in the Standards; 0 there means that the shop has not priced it yet.
 */

export const EXTRA_KINDS = ['keystone', 'plinth block', 'rosette'] as const;
export type ExtraKind = (typeof EXTRA_KINDS)[number];

/** The setting that holds the price of one. */
export const EXTRA_PRICE = {
  keystone: 'keystonePrice',
  'plinth block': 'plinthBlockPrice',
  rosette: 'rosettePrice',
} as const satisfies Record<ExtraKind, SettingKey>;

/** So many of a kind go with each opening. */
export interface Extra {
  readonly kind: ExtraKind;
  readonly each: number;
  /** How many the list gives, where the count was changed by hand in the workbook: to 0, where they are left out. */
  readonly listed?: number;
}

/** `1 keystone`, `4 rosettes`. */
export function countOf(kind: ExtraKind, count: number): string {
  return `${count} ${kind}${count === 1 ? '' : 's'}`;
}

/** `1 keystone, 2 plinth blocks`, whatever the order they were given in; null where there are none. */
export function extrasText(extras: readonly Extra[] | undefined): string | null {
  const said = EXTRA_KINDS.flatMap((kind) => {
    const one = extras?.find((extra) => extra.kind === kind);
    return one === undefined || one.each === 0 ? [] : [countOf(kind, one.each)];
  });
  return said.length === 0 ? null : said.join(', ');
}

/** What `extrasText` wrote; nothing for any other text. */
export function readExtrasText(text: string): Extra[] {
  return text.split(', ').flatMap((one): Extra[] => {
    const [, count, name] = /^(\d+) (.+)$/.exec(one) ?? [];
    const kind = EXTRA_KINDS.find((each) => countOf(each, Number(count)) === `${count} ${name}`);
    return kind === undefined ? [] : [{ kind, each: Number(count) }];
  });
}

/** What has no price in the shop's list, in a sentence. */
export function notPricedYet(kind: ExtraKind): string {
  return `The ${kind} is not priced yet: its price is among the extras of the Standards.`;
}

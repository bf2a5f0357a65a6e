import type { Explained, FigureMeasure } from './explained';
import { rest } from './explained';
import { headsOf } from './ownCost';
import { sellingFactor } from './price';
import { guideSetsOf } from './guideSets';
import { piecesBySetup, SHARED_CHARGES } from './shares';
import type { OpeningTakeoff, Takeoff } from './takeoff';

/** A figure of an opening that hangs on the others of the job, or on the plan of the boards. */
export interface MoneyFigure {
  readonly name: string;
  readonly heading: string;
  readonly measure: FigureMeasure;
  readonly value: (row: OpeningTakeoff) => number | null | undefined;
  readonly explain: (row: OpeningTakeoff, taken: Takeoff) => Explained | null;
}

/** What an opening costs and is sold for, from what it bears to its price. Each rests on those before. */
export const MONEY_FIGURES = [
  {
    name: 'share',
    heading: 'Share of knives, guides and set-ups',
    measure: 'money',
    value: ({ cost }) => cost?.share,
    explain: shared,
  },
  {
    name: 'shared wood',
    heading: 'Share of spare and test pieces’ wood',
    measure: 'money',
    value: ({ share }) => share?.wood,
    explain: shared,
  },
  {
    name: 'wood factor',
    heading: 'Wood factor',
    measure: 'number',
    value: factorOf,
    explain: ({ cost, own }) =>
      cost &&
      own && {
        by: cost.planned
          ? 'boards bought by all wood of the rows, or what is held on the Stock sheet'
          : 'not planned yet: 1 and the allowance for waste',
        from: [rest('wood', own.stock, 'text')],
      },
  },
  {
    name: 'material',
    heading: 'Material',
    measure: 'money',
    value: ({ cost }) => cost?.material,
    explain: (row) =>
      row.cost && {
        by: '(wood + shared wood) × wood factor',
        from: [
          rest('wood', row.cost.wood, 'money'),
          rest('shared wood', row.share?.wood, 'money'),
          rest('wood factor', factorOf(row), 'number'),
        ],
      },
  },
  {
    name: 'cost',
    heading: 'Cost',
    measure: 'money',
    value: ({ cost }) => cost?.cost,
    explain: ({ cost }) =>
      cost && {
        by: 'material + labor + share',
        from: [
          rest('material', cost.material, 'money'),
          rest('labor', cost.labor, 'money'),
          rest('share', cost.share, 'money'),
        ],
      },
  },
  {
    name: 'unit price',
    heading: 'Unit price',
    measure: 'money',
    value: ({ cost }) => cost?.unitPrice,
    explain: ({ cost, inputs, opening }, { standards }) =>
      cost &&
      inputs &&
      (opening.priceAgreed !== null
        ? { by: 'the price agreed', from: [rest('price agreed', opening.priceAgreed, 'money')] }
        : {
            by: 'cost of one × selling factor, in whole cents, and no less than the smallest price',
            from: [
              rest('cost', cost.cost, 'money'),
              rest('quantity', inputs.quantity, 'count'),
              rest(`selling factor (${standards.pricing})`, sellingFactor(standards), 'number'),
              rest('smallest price of one', standards.pieceMinimum, 'money'),
            ],
          }),
  },
  {
    name: 'price',
    heading: 'Price',
    measure: 'money',
    value: ({ cost }) => cost?.price,
    explain: ({ cost, inputs }) =>
      cost &&
      inputs && {
        by: 'unit price × quantity',
        from: [rest('unit price', cost.unitPrice, 'money'), rest('quantity', inputs.quantity, 'count')],
      },
  },
] as const satisfies readonly MoneyFigure[];

export type MoneyFigureName = (typeof MONEY_FIGURES)[number]['name'];

/** A figure of an opening's money by its name. */
export function moneyFigure(name: MoneyFigureName): MoneyFigure {
  return MONEY_FIGURES.find((figure) => figure.name === name)!;
}

/** The factor that the wood of an opening is priced with; null where it has none or isn't priced. */
export function factorOf({ cost, share }: OpeningTakeoff): number | null {
  const wood = (cost?.wood ?? 0) + (share?.wood ?? 0);
  return cost && wood > 0 ? cost.material / wood : null;
}

/** What it shares: how many of the heads that a knife cuts, and of the pieces through each set-up, are its own. */
function shared(row: OpeningTakeoff, { openings, standards }: Takeoff): Explained | null {
  const { inputs, own, share } = row;
  if (inputs === null || own === null || share === null) return null;
  const sharers = openings.flatMap(({ no, inputs: its, own: figures, share: part }) =>
    its && figures && part ? [{ no, inputs: its, own: figures }] : [],
  );
  const heads = sharers.reduce(
    (sum, { inputs: its, own: { knife } }) =>
      sum + (knife.toLowerCase() === own.knife.toLowerCase() ? headsOf(its) : 0),
    0,
  );
  const sets = guideSetsOf(sharers, standards);
  const all = piecesBySetup(sharers, sets);
  const mine = piecesBySetup([{ no: row.no, inputs, own }], sets);
  return {
    by: 'ARCH.SHARES of all openings: its part of each knife and set-up',
    from: [
      ...SHARED_CHARGES.map(([kind, { name }]) => rest(name.toLowerCase(), share[kind], 'money')),
      rest('wood of spare and test pieces', share.wood, 'money'),
      rest(`heads through the knife ${own.knife}`, `${headsOf(inputs)} of ${heads}`, 'text'),
      ...[...mine].map(([name, pieces]) =>
        rest(`pieces through ${name}`, `${pieces} of ${all.get(name) ?? pieces}`, 'text'),
      ),
    ],
  };
}

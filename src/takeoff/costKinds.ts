import { LABOR_KINDS, moneyForKind, type LaborKind } from './labor';
import type { Takeoff } from './takeoff';

/** One kind of cost of a job. */
export interface CostKind {
  readonly name: string;
  /** Of all openings that are priced. */
  readonly money: number;
}

export const WORK: Readonly<Record<LaborKind, string>> = {
  gluing: 'Gluing up',
  sawing: 'Sawing rings',
  planing: 'Planing blanks',
  running: 'Running and handling',
  trimming: 'Trimming to width',
  endCuts: 'Cutting ends',
  sanding: 'Sanding by hand',
  packing: 'Packing pieces',
  fitting: 'Splices and carriers',
};

/** What the cost of a job is made of, and last what its prices are above it: together they are what it sells for. */
export function costKinds({ openings, standards, totals }: Takeoff): CostKind[] {
  const rows = openings.flatMap(({ cost, share }) => (cost && share ? [{ cost, share }] : []));
  const sum = (of: (row: (typeof rows)[number]) => number) => rows.reduce((total, row) => total + of(row), 0);
  const kinds: CostKind[] = [
    { name: 'Boards', money: sum(({ cost }) => cost.material) },
    ...LABOR_KINDS.map((kind) => ({
      name: WORK[kind],
      money: moneyForKind(
        kind,
        sum(({ cost }) => cost.minutes[kind]),
        standards,
      ),
    })),
    { name: 'New knives', money: sum(({ share }) => share.knives) },
    { name: 'Guides made', money: sum(({ share }) => share.guides) },
    { name: 'Changing knives and guides', money: sum(({ share }) => share.settingUp) },
    { name: 'Work on spare pieces', money: sum(({ share }) => share.spares) },
  ];
  const cost = kinds.reduce((total, { money }) => total + money, 0);
  return [...kinds, { name: 'Above cost', money: totals.price - cost }];
}

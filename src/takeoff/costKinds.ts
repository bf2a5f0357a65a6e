import { LABOR, LABOR_KINDS, moneyForKind } from './labor';
import { SHARED_CHARGES } from './shares';
import type { Takeoff } from './takeoff';

/** One kind of cost of a job. */
export interface CostKind {
  readonly name: string;
  /** Of all openings that are priced. */
  readonly money: number;
}

/** What the cost of a job is made of, and last what its prices are above it: together they are what it sells for. */
export function costKinds({ openings, standards, totals }: Takeoff): CostKind[] {
  const rows = openings.flatMap(({ cost, share }) => (cost && share ? [{ cost, share }] : []));
  const sum = (of: (row: (typeof rows)[number]) => number) => rows.reduce((total, row) => total + of(row), 0);
  const kinds: CostKind[] = [
    { name: 'Boards', money: sum(({ cost }) => cost.material) },
    ...LABOR_KINDS.map((kind) => ({
      name: LABOR[kind],
      money: moneyForKind(
        kind,
        sum(({ cost }) => cost.minutes[kind]),
        standards,
      ),
    })),
    ...SHARED_CHARGES.map(([kind, { name }]) => ({ name, money: sum(({ share }) => share[kind]) })),
  ];
  const cost = kinds.reduce((total, { money }) => total + money, 0);
  return [...kinds, { name: 'Above cost', money: totals.price - cost }];
}

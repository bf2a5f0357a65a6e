import { ok, refuse, type Result } from '../result';
import type { Table } from '../schedule/opening';
import { factorOf } from '../takeoff/moneyFigures';
import { planTakeoff } from '../takeoff/planned';
import { ROW_FIELDS, type Row } from '../takeoff/row';
import type { SegmentSavings } from '../takeoff/segmentChange';
import { segmentSavings, type OnStep } from '../takeoff/segmentSavings';
import { takeoff, withFactors, type Takeoff } from '../takeoff/takeoff';
import { factorsIn, heldFactors } from './planBlock';
import { readStandards } from './readStandards';
import type { Sheet } from './sheet';
import { standardsRangesIn } from './standardsSheet';
import { openingsOfTakeoff } from './takeoff/openings';
import { hasOurColumns, readTakeoff } from './takeoff/read';
import { TAKEOFF_HEAD_ROWS } from './takeoff/places';
import { planSheets } from './workbook';

/** The sheets of a workbook, as they stand, that a plan is made from. Plain data, so that a worker can be handed it. */
export interface PlanInputs {
  readonly takeoff: Table;
  readonly standards: Table;
  /** The plan there is; null: its sheet is gone. */
  readonly stock: Table | null;
  readonly plain: boolean;
  /** With the sheets Tickets and Purchase. */
  readonly tickets?: boolean;
  /** With the boards drawn on Stock: for whoever shows them, no open workbook holds them. */
  readonly pictures?: boolean;
  /** Where other numbers of segments cost less is looked for, too, and said on Stock: many plans, which take their time. */
  readonly savings?: boolean;
}

export interface RenewedPlan {
  /** Stock and Setups, made anew, and the sheets of the bench where they are asked for. */
  readonly sheets: readonly Sheet[];
  /** What the new plan moved, a sentence for each wood. */
  readonly said: readonly string[];
  /** Where they were asked for. */
  readonly savings: SegmentSavings | null;
}

/** Plans boards, set-ups and wood factors again from the rows and settings as they now stand; factors that are held stay. */
export function renewPlan(inputs: PlanInputs, onStep?: OnStep): Result<RenewedPlan> {
  const { takeoff: table, standards: shop, stock, plain, tickets = false, pictures = false } = inputs;
  const standards = readStandards(shop);
  if (!standards.ok) return standards;
  const { unit } = standards.value;
  const rows = readTakeoff(table, null, unit);
  const openings = openingsOfTakeoff(table, unit);
  if (rows === null || openings === null || !hasOurColumns(table))
    return refuse(
      'The columns of the Takeoff have been moved: fill the workbook again, then boards and set-ups follow.',
    );
  const cells = rows.map((row) => Object.fromEntries(ROW_FIELDS.map((key) => [key, row.inputs[key]])) as Row);
  const held = heldFactors(stock);
  const { taken, boards } = planTakeoff(takeoff(openings, standards.value, { cells }), {}, held);
  const rowsOnSheet = Math.max(TAKEOFF_HEAD_ROWS, ...rows.map(({ sheetRow }) => sheetRow)) - TAKEOFF_HEAD_ROWS;
  const savings = inputs.savings === true ? segmentSavings(taken, {}, onStep) : null;
  return ok({
    savings,
    sheets: planSheets(taken, boards, {
      ...{ plain, held, made: standardsRangesIn(shop) ?? undefined, rowsOnSheet, tickets, pictures, savings },
    }),
    said: movedBy(withFactors(taken, factorsIn(stock)), taken, factorsIn(stock)),
  });
}

/** What the factors of a new plan moved: "Wood factor of Poplar 0.8125 1.08 → 1.11: $23.00 more over 19 openings." */
function movedBy(before: Takeoff, after: Takeoff, old: (wood: string) => number | null): string[] {
  const woods = new Map<string, { count: number; cents: number; factor: number | null }>();
  for (const [at, row] of after.openings.entries()) {
    const { own, cost } = row;
    const was = before.openings[at]?.cost;
    if (own === null || cost === null || !was || was.price === cost.price) continue;
    const wood = woods.get(own.stock) ?? { count: 0, cents: 0, factor: factorOf(row) };
    wood.count += 1;
    wood.cents += Math.round(cost.price * 100) - Math.round(was.price * 100);
    woods.set(own.stock, wood);
  }
  const waste = 1 + after.standards.waste;
  return [...woods].map(([wood, { count, cents, factor }]) => {
    const money = `$${(Math.abs(cents) / 100).toFixed(2)} ${cents < 0 ? 'less' : 'more'}`;
    const openings = `${count} ${count === 1 ? 'opening' : 'openings'}`;
    const factors = [old(wood) ?? waste, factor ?? waste];
    const digits = new Set(factors.map((each) => each.toFixed(2))).size > 1 ? 2 : 4;
    return `Wood factor of ${wood} ${factors.map((each) => each.toFixed(digits)).join(' → ')}: ${money} over ${openings}.`;
  });
}

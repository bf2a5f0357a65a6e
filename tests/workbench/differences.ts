import type { Sheet } from '../../src/workbook/sheet';
import { addressOf } from '../../src/workbook/address';
import type { Host } from '../../taskpane/host';
import type { Opening } from '../../src/schedule/opening';
import type { Standards } from '../../src/standards';
import { planBoards } from '../../src/takeoff/boards';
import { factorsOf } from '../../src/takeoff/factors';
import { partsOf } from '../../src/takeoff/parts';
import type { WoodFactors } from '../../src/takeoff/price';
import { takeoff } from '../../src/takeoff/takeoff';
import { TAKEOFF_COLUMNS } from '../../src/workbook/takeoff/columns';
import { takeoffSource } from '../../src/workbook/takeoff/sheet';
import { held } from '../../src/workbook/workbook';
import { sameValue } from '../figures';

/** Each computed cell of `sheets` that a host shows otherwise, with both values; the first 20. */
export async function differences(
  host: Pick<Host, 'readSheet'>,
  sheets: readonly Sheet[],
  within: number,
): Promise<string[]> {
  const found: string[] = [];
  for (const sheet of sheets) {
    const read = await host.readSheet(sheet.name);
    if (!read.ok || !read.value) return [`${sheet.name} can't be read`];
    for (const [row, cells] of sheet.rows.entries()) {
      for (const [column, cell] of cells.entries()) {
        if (cell?.formula === undefined) continue;
        // An empty text and an empty cell look alike.
        const expected = cell.value === '' ? null : cell.value;
        const shown = read.value.rows[row]?.[column] ?? null;
        if (sameValue(shown, expected, within)) continue;
        const at = `${sheet.name}!${addressOf({ row, column })}`;
        found.push(`${at} (${sheet.columnKeys?.[column] ?? ''}) shows ${String(shown)} for ${String(expected)}`);
      }
    }
  }
  return found.slice(0, 20);
}

const FACTORS = new WeakMap<readonly Opening[], WeakMap<Standards, WoodFactors>>();

/** The wood factors that a workbook of these openings was filled with: an edit doesn't renew them. Planned once for a list. */
export function plannedFactors(openings: readonly Opening[], standards: Standards): WoodFactors {
  const known = FACTORS.get(openings) ?? new WeakMap<Standards, WoodFactors>();
  FACTORS.set(openings, known);
  const before = takeoff(openings, standards);
  const factors = known.get(standards) ?? factorsOf(before, planBoards(partsOf(before), standards));
  known.set(standards, factors);
  return factors;
}

/**
 * The Takeoff sheet as it must stand after edits and before the boards are planned again: fresh figures, priced by the wood
 * factors of the plan that was made from other openings or settings. What tells the age of the plan is left out.
 */
export function liveTakeoff(
  openings: readonly Opening[],
  standards: Standards,
  planned: readonly Opening[],
  plannedBy: Standards = standards,
): Sheet {
  const sheet = held(
    takeoffSource(takeoff(openings, standards, { factors: plannedFactors(planned, plannedBy) }), null),
  );
  const plan = TAKEOFF_COLUMNS.findIndex(({ key }) => key === 'plan');
  const rows = sheet.rows.map((row) =>
    row.map((cell, at) => (at === plan || cell?.formula?.startsWith('Plan_state') === true ? null : cell)),
  );
  return { ...sheet, rows };
}

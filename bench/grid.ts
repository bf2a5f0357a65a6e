/**
 * One input of the Takeoff changed in the workbench's grid, without a page around it: how long until all that follows is
 * calculated, the first time, when the grid has yet to read every formula, and later (the middle of five).
 * `npm run bench -- grid [OPENINGS…]`.
 */
import { valueOf } from '../tests/value';
import { random } from '../tests/random';
import { randomOpenings, scheduleOf } from '../tests/takeoff/openings';
import type { Result } from '../src/result';
import { defaultStandards } from '../src/standards';
import { takeoff } from '../src/takeoff/takeoff';
import { workbookSheets } from '../src/workbook/workbook';
import { ARCH_FUNCTIONS } from '../taskpane/workbench/arch-functions';
import { startHeadless } from '../taskpane/workbench/headless';
import { WorkbenchHost } from '../taskpane/workbench/workbench-host';

const SPAN_OF_THE_FIRST = 'F6';

async function measure(count: number): Promise<void> {
  const openings = randomOpenings(count, random(1));
  const sheets = workbookSheets(scheduleOf(openings), takeoff(openings, defaultStandards()));
  const engine = startHeadless(ARCH_FUNCTIONS);
  const host = new WorkbenchHost(engine);
  const timed = async (change: () => Promise<Result<void>>) => {
    const began = performance.now();
    valueOf(await change());
    await engine.settled();
    return performance.now() - began;
  };
  const spanChanged = (span: number) => timed(() => host.writeCells('Takeoff', SPAN_OF_THE_FIRST, [[span]], true));
  const filled = await timed(() => host.writeSheets(sheets, { replace: [] }));
  const first = await spanChanged(41);
  const later: number[] = [];
  for (const span of [42, 43, 44, 45, 46]) later.push(await spanChanged(span));
  const middle = later.sort((one, other) => one - other)[2]!;
  const seconds = (ms: number) => `${(ms / 1000).toFixed(1)} s`.padStart(8);
  console.log(
    `${String(count).padStart(6)} openings: filled in${seconds(filled)}, ` +
      `one span changed in${seconds(first)} at first, then in${seconds(middle)}`,
  );
  engine.univer.dispose();
}

export async function run(args: readonly string[]): Promise<void> {
  for (const count of args.length > 0 ? args.map(Number) : [27, 100, 300, 1000]) await measure(count);
}

import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { defaultStandards } from '../../src/standards';
import { TAKEOFF_COLUMNS } from '../../src/workbook/takeoff/columns';
import { TAKEOFF_HEAD_ROWS } from '../../src/workbook/takeoff/places';
import { readBook } from '../../src/workbook/readBook';
import { takeoffWithEdits } from '../../src/workbook/withEdits';
import { workbookSheets } from '../../src/workbook/workbook';
import { takeoffBefore } from '../../taskpane/pane/deeds/fill';
import { coreWith } from '../../taskpane/pane/loadCore';
import { reduce } from '../../taskpane/pane/reducer';
import { initialState } from '../../taskpane/pane/state';
import { createStore } from '../../taskpane/pane/store';
import { ARCH_FUNCTIONS } from '../../taskpane/workbench/archFunctions';
import type { Engine } from '../../taskpane/workbench/engine';
import { startHeadless } from '../../taskpane/workbench/headless';
import { openBook } from '../../taskpane/workbench/openBook';
import { namesOf } from '../../taskpane/workbench/readGrid';
import { WorkbenchHost } from '../../taskpane/workbench/workbenchHost';
import { firstVersionsList } from '../workbook/firstVersionsList';
import { scheduleOf } from '../takeoff/openings';
import { valueOf } from '../value';
import { differences } from './differences';

const STANDARDS = defaultStandards();
let engine: Engine;
let host: WorkbenchHost;
beforeAll(async () => {
  engine = startHeadless(ARCH_FUNCTIONS);
  host = new WorkbenchHost(engine);
  const file = new Uint8Array(readFileSync(new URL('../workbook/firstVersion.xlsx', import.meta.url)));
  valueOf(await openBook(engine, valueOf(readBook(file)), async () => undefined));
  await engine.settled();
}, 60_000);
afterAll(() => engine.univer.dispose());

test('a workbook of the first version, opened and changed by hand, is taken over by filling it again', async () => {
  const headings = valueOf(await host.readSheet('Takeoff'))!.rows;
  const heads = headings.findIndex((row) => row[0] === 'Source row');
  const span = String.fromCharCode(65 + headings[heads]!.indexOf('Span'));
  const row = headings.findIndex((cells, at) => at > heads && cells[0] === 3) + 1;
  valueOf(await host.writeCells('Takeoff', `${span}${row}`, [[42]], true));
  await engine.settled();

  const options = { example: () => Promise.reject(new Error('none')) };
  const bench = { host, core: coreWith(null), store: createStore(reduce, initialState(STANDARDS)), options };
  const before = valueOf(await takeoffBefore(bench));
  const schedule = scheduleOf(firstVersionsList());
  const { taken, boards, said } = takeoffWithEdits({ schedule, standards: STANDARDS, before });
  expect(said).toEqual(['A2: kept span 42 from the workbook; the list says 40.']);
  const sheets = workbookSheets(schedule, taken, { boards });
  const old = namesOf(engine).map(({ name }) => name);
  valueOf(await host.writeSheets(sheets, { replace: sheets.map(({ name }) => name) }));
  await engine.settled();

  const table = valueOf(await host.readSheet('Takeoff'))!;
  expect(table.rows[TAKEOFF_HEAD_ROWS - 1]!.slice(0, TAKEOFF_COLUMNS.length)).toEqual(
    TAKEOFF_COLUMNS.map(({ heading }) => heading),
  );
  expect(await differences(host, sheets, 1e-9)).toEqual([]);
  // Nothing that rests on the first version's settings stands for other cells now.
  const wanted = sheets.flatMap(({ names = [] }) => names).map(({ name }) => name);
  const now = namesOf(engine).map(({ name }) => name);
  expect(now.sort()).toEqual([...wanted].sort());
  expect(old.filter((name) => !wanted.includes(name)).length).toBeGreaterThan(0);

  await engine.api.undo();
  await engine.settled();
  expect(
    namesOf(engine)
      .map(({ name }) => name)
      .sort(),
  ).toEqual([...old].sort());
  expect(valueOf(await host.readSheet('Takeoff'))!.rows[heads]![0]).toBe('Source row');
}, 30_000);

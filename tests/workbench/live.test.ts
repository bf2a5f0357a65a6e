import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { workbookSheets } from '../../src/workbook/workbook';
import { notSetSentence } from '../../src/notSet';
import {
  cellName,
  defaultStandards,
  SETTINGS,
  withSettings,
  type Setting,
  type SettingKey,
  type Standards,
} from '../../src/standards';
import { takeoff } from '../../src/takeoff/takeoff';
import { ARCH_FUNCTIONS } from '../../taskpane/workbench/archFunctions';
import type { Engine } from '../../taskpane/workbench/engine';
import { startHeadless } from '../../taskpane/workbench/headless';
import { WorkbenchHost } from '../../taskpane/workbench/workbenchHost';
import { otherValue } from '../otherValue';
import { random } from '../random';
import { randomOpenings, scheduleOf } from '../takeoff/openings';
import { valueOf } from '../value';
import { differences, liveTakeoff } from './differences';

const OPENINGS = randomOpenings(16, random(3));
const FIRST = defaultStandards();
const SHEETS = workbookSheets(scheduleOf(OPENINGS), takeoff(OPENINGS, FIRST));

let engine: Engine;
let host: WorkbenchHost;
beforeAll(async () => {
  engine = startHeadless(ARCH_FUNCTIONS);
  host = new WorkbenchHost(engine);
  valueOf(await host.writeSheets(SHEETS, { replace: [] }));
  await engine.settled();
}, 60_000);
afterAll(() => engine.univer.dispose());

/** Where the grid's takeoff differs from a fresh one. */
function differing(standards: Standards): Promise<string[]> {
  return differences(host, [liveTakeoff(OPENINGS, standards, OPENINGS, FIRST)], 1e-9);
}

/** The cell of the Standards sheet that holds a setting. */
function cellOf(key: string): string {
  const named = SHEETS.flatMap((sheet) => sheet.names ?? []);
  return named
    .find(({ name }) => name === cellName(key))!
    .ref.split('!')[1]!
    .replace(/^\$C\$/, 'B'); // beside the value in use stands the one that is typed
}

describe('the takeoff in the grid', () => {
  it('shows what the core computes', async () => {
    expect(await differing(FIRST)).toEqual([]);
  });

  const saysNotSet = async () => {
    const sheet = valueOf(await host.readSheet('Takeoff'))!;
    return sheet.rows[0]!.find((cell) => String(cell).startsWith('Not set yet')) ?? '';
  };

  it('says which settings of the machine nobody has set', async () => {
    expect(await saysNotSet()).toBe(notSetSentence(FIRST));
  });

  const live = (SETTINGS as readonly Setting[]).filter(({ key }) => key !== 'unit');
  let standards = FIRST;
  // One change on top of another, as in a day's work: each is told apart by the figures it moves.
  it.each(live.map((setting) => [setting.label, setting] as const))(
    'recalculates to what a fresh takeoff gives when %s is changed',
    async (_label, setting) => {
      const other = otherValue(setting);
      standards = valueOf(withSettings(standards, { [setting.key as SettingKey]: other }));
      valueOf(await host.writeCells('Standards', cellOf(setting.key), [[other]], true));
      await engine.settled();
      expect(await differing(standards)).toEqual([]);
      expect(await saysNotSet()).toBe(notSetSentence(standards));
    },
  );

  it('is silent once the machine is set', async () => expect(await saysNotSet()).toBe(''));
});

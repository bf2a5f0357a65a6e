import { describe, expect, it } from 'vitest';
import { notSetSentence } from '../src/notSet';
import {
  defaultStandards,
  isNotSet,
  SETTINGS,
  settingsNotSet,
  withNotSet,
  withSettings,
  type Setting,
  type SettingKey,
  type Standards,
} from '../src/standards';
import { readStandardsJson, standardsJson } from '../src/standardsJson';
import type { CellValue, Table } from '../src/schedule/opening';
import { readStandards } from '../src/workbook/readStandards';
import { standardsSheet } from '../src/workbook/standardsSheet';
import { valueOf } from './value';

const OF_MACHINE = (SETTINGS as readonly Setting[]).flatMap((each) => (each.ofMachine ? [each.key as SettingKey] : []));

function ownMachine(): Standards {
  const standards = defaultStandards();
  return valueOf(withSettings(standards, Object.fromEntries(OF_MACHINE.map((key) => [key, standards[key]]))));
}

function tableOf(standards: Standards): Table {
  const rows = standardsSheet(standards).rows.map((row) => row.map((cell): CellValue => cell?.value ?? null));
  return { name: 'Standards', firstRow: 1, rows };
}

describe('settings that belong to one machine', () => {
  it('start as not set, all of them and no other', () => {
    expect(OF_MACHINE).toEqual([
      ...['rpm', 'knives', 'cuttingCircle', 'shortestPiece', 'smallestRadius', 'widestFace', 'deepestCut', 'bedLine'],
    ]);
    expect(settingsNotSet(defaultStandards('mm')).map(({ key }) => key)).toEqual(OF_MACHINE);
  });

  it('are named with the neutral figures that stand in', () => {
    expect(notSetSentence(defaultStandards())).toBe(
      'Not set yet in Standards, neutral figures are used: spindle speed 6000 rev/min, knives that mark 1, cutting circle 4 in, ' +
        'shortest piece 12 in, smallest radius 8 in, widest face 8 in, deepest cut in one pass 0.25 in, bed lines from the center line 6 in.',
    );
  });

  it('are set by their own figure, be it the same', () => {
    const one = valueOf(withSettings(defaultStandards(), { rpm: 6000 }));
    expect(isNotSet(one, 'rpm')).toBe(false);
    expect(isNotSet(one, 'knives')).toBe(true);
    expect(notSetSentence(ownMachine())).toBe('');
    expect(isNotSet({ ...defaultStandards(), rpm: 7200 }, 'rpm')).toBe(false);
  });

  it('are not set again once cleared', () => {
    const cleared = withNotSet(valueOf(withSettings(defaultStandards(), { rpm: 7200 })), 'rpm');
    expect(cleared).toEqual(defaultStandards());
    expect(withNotSet(defaultStandards(), 'reveal')).toEqual(defaultStandards());
  });

  it.each([
    ['nothing set', defaultStandards('mm')],
    ['one set', valueOf(withSettings(defaultStandards(), { bedLine: 6 }))],
    ['all set', ownMachine()],
  ])('stay as they are through a file and through the sheet: %s', (_which, standards) => {
    expect(valueOf(readStandardsJson(standardsJson(standards), 'shop.json'))).toEqual(standards);
    expect(valueOf(readStandards(tableOf(standards)))).toEqual(standards);
  });

  it('stand as blank cells on the sheet, with the figure in use and a word beside them', () => {
    const [cells] = tableOf(defaultStandards()).rows.filter((row) => row[0] === 'Spindle speed');
    expect(cells!.slice(1, 4)).toEqual([null, 6000, 'rev/min, not set yet']);
    const [set] = tableOf(ownMachine()).rows.filter((row) => row[0] === 'Spindle speed');
    expect(set!.slice(1, 4)).toEqual([6000, 6000, 'rev/min']);
  });
});

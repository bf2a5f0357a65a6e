import {
  defaultStandards,
  readSetting,
  withNotSet,
  withSettings,
  type NumberSetting,
  type Setting,
  type SettingKey,
  type Standards,
} from '../../../src/standards';
import { ok, refuse, type Result } from '../../../src/result';
import { readLength } from '../../../src/schedule/readLength';
import type { Unit } from '../../../src/unit';
import { withPoint } from '../format';
import { asTyped } from '../../../src/schedule/asTyped';
import { fail, tell, work, type Bench } from './bench';
import { readAgain, readFile } from './chooseList';
import { download } from './download';

const KEY = 'archwright.standards';

/**
 * The shop's standards of this workbook: its Standards sheet where it has one, else what was kept in its settings. Where
 * they are others than before, the list is read again by them. Gives false where that fails, which is told.
 */
export async function loadShop(bench: Bench): Promise<boolean> {
  const { store } = bench;
  if (store.get().shopAhead) return true;
  const read = await shopOf(bench);
  if (!read.ok) {
    fail(bench, read.message);
    return false;
  }
  const { standards, known } = read.value;
  const same = JSON.stringify(standards) === JSON.stringify(store.get().standards);
  store.send({ type: 'settings read', standards, firstUse: !known });
  return same || readAgain(bench);
}

async function shopOf(bench: Bench): Promise<Result<{ readonly standards: Standards; readonly known: boolean }>> {
  const sheet = await bench.host.readSheet('Standards');
  if (!sheet.ok) return sheet;
  if (sheet.value && sheet.value.rows.length > 0) {
    const { readStandards } = await import('../../../src/workbook/readStandards');
    const read = readStandards(sheet.value);
    return read.ok ? ok({ standards: read.value, known: true }) : read;
  }
  const kept = await bench.host.readSetting(KEY);
  if (!kept.ok) return kept;
  if (kept.value === null) return ok({ standards: bench.store.get().standards, known: false });
  const { readStandardsJson } = await import('../../../src/standardsJson');
  const read = readStandardsJson(kept.value, 'The settings kept in this workbook');
  return read.ok ? ok({ standards: read.value, known: true }) : read;
}

/** One setting as typed; kept in the workbook, and on its Standards sheet where there is one. */
export async function setSetting(bench: Bench, setting: Setting, typed: string): Promise<Result<void>> {
  const { standards } = bench.store.get();
  if (setting.ofMachine && typed.trim() === '') return clearSetting(bench, setting);
  const value = readTyped(setting, withPoint(typed, bench.options.locale), standards.unit);
  if (!value.ok) return value;
  const next = withSettings(standards, { [setting.key]: value.value } as Partial<Record<SettingKey, unknown>>);
  if (!next.ok) return next;
  const { shopAhead } = bench.store.get();
  // A sheet in another unit, or of another shop's figures, is written anew as a whole.
  const written = shopAhead ? ok(undefined) : await putOnSheet(bench, setting, value.value);
  if (!written.ok) return written;
  await takeShop(bench, next.value, shopAhead);
  return ok(undefined);
}

/** One machine's setting, not set again. */
async function clearSetting(bench: Bench, setting: Setting): Promise<Result<void>> {
  const { standards, shopAhead } = bench.store.get();
  const written = shopAhead ? ok(undefined) : await putOnSheet(bench, setting, null);
  if (written.ok) await takeShop(bench, withNotSet(standards, setting.key as SettingKey), shopAhead);
  return written;
}

/** A length may be typed as on a tape, a share as a percentage. */
function readTyped(setting: Setting, typed: string, unit: Unit): Result<string | number> {
  if (setting.measure === 'choice' || setting.measure === 'text') return readSetting(setting, typed, unit);
  const number = readNumber(setting, typed.trim(), unit);
  return number.ok ? readSetting(setting, number.value, unit) : number;
}

function readNumber(setting: NumberSetting, typed: string, unit: Unit): Result<number> {
  if (setting.measure === 'length') {
    return asTyped(readLength(typed, { name: setting.label, column: null, unit, zero: true }));
  }
  const percent = setting.measure === 'percent';
  const figure = Number(typed.replace(/%$/, ''));
  if (typed === '' || !Number.isFinite(figure))
    return refuse(`${setting.label} must be a number; you typed "${typed}".`);
  return ok(percent ? Number((figure / 100).toPrecision(12)) : figure);
}

/** Where the workbook has a Standards sheet, its figure goes along. */
async function putOnSheet(bench: Bench, setting: Setting, value: string | number | null): Promise<Result<void>> {
  const sheet = await bench.host.readSheet('Standards');
  if (!sheet.ok) return sheet;
  const at = sheet.value?.rows.findIndex((row) => row[0] === setting.label) ?? -1;
  if (!sheet.value || at < 0) return ok(undefined);
  return bench.host.writeCells('Standards', `B${sheet.value.firstRow + at}`, [[value]], true);
}

/** Other standards: kept with the workbook, and the list is read again by them. */
async function takeShop(bench: Bench, standards: Standards, ahead: boolean): Promise<void> {
  bench.store.send({ type: 'standards set', standards, ahead });
  const { standardsJson } = await import('../../../src/standardsJson');
  const kept = await bench.host.saveSetting(KEY, standardsJson(standards));
  if (!kept.ok) fail(bench, kept.message);
  await readAgain(bench);
}

/** Inches or millimeters: each has its own round figures, so every setting starts from the other unit's defaults. */
export function changeUnit(bench: Bench, unit: Unit): Promise<void> {
  return work(bench, 'Changing the unit', () => takeWhole(bench, defaultStandards(unit)));
}

/** Every setting at once: the Standards sheet, where there is one, has them after the next filling. */
async function takeWhole(bench: Bench, standards: Standards): Promise<void> {
  const sheets = await bench.host.sheetNames();
  if (!sheets.ok) return fail(bench, sheets.message);
  const filled = sheets.value.includes('Standards');
  await takeShop(bench, standards, filled);
  if (bench.store.get().notice === null) {
    tell(bench, `These settings hold now.${filled ? ' Fill the workbook again to use them there.' : ''}`);
  }
}

export function loadShopFile(bench: Bench, file: File): Promise<void> {
  return work(bench, `Reading ${file.name}`, async () => {
    const read = await readShopFile(bench, file);
    if (!read.ok) return fail(bench, read.message);
    await takeWhole(bench, read.value);
  });
}

async function readShopFile(bench: Bench, file: File): Promise<Result<Standards>> {
  if (/\.json$/i.test(file.name)) {
    const { readStandardsJson } = await import('../../../src/standardsJson');
    return readStandardsJson(await file.text(), file.name);
  }
  const tables = await readFile(bench, file);
  if (!tables.ok) return tables;
  const table = tables.value.find(({ name }) => name === 'Standards') ?? tables.value[0];
  if (!table) return refuse(`${file.name} is empty.`);
  const { readStandards } = await import('../../../src/workbook/readStandards');
  return readStandards(table);
}

export async function saveShopFile(bench: Bench): Promise<void> {
  const { standardsJson } = await import('../../../src/standardsJson');
  const content = standardsJson(bench.store.get().standards);
  download(bench, [{ name: 'shop-standards.json', content, type: 'application/json' }]);
}

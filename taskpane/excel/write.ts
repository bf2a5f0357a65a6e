import type { Result } from '../../src/result';
import type { Sheet } from '../../src/workbook/sheet';
import type { WriteOptions } from '../host';
import { sheetInTheWay } from '../refusals';
import { clearUp, copyAside, doneName, isDone, lock, markDone, putBack, sheetNames, type Before } from './backup';
import { blocksOf, LARGEST_REQUEST } from './cells';
import { dress } from './dress';
import { freeze, loadFrozen } from './frozen';
import { inExcel, Refused } from './session';
import { sentenceFor } from './words';

const DOING = 'Writing the sheets';

/**
 * Writes sheets in few round trips: two look, one makes room, then as many as 5 MB requests need (usually one) carry cells
 * and looks together. A sheet that is replaced stays the same sheet, so that the user's own formulas keep pointing at it. On
 * a failure or a stop everything is put back.
 */
export async function writeSheets(sheets: readonly Sheet[], options: WriteOptions): Promise<Result<void>> {
  return inExcel(DOING, async (context) => {
    const before = await look(context, sheets, options);
    try {
      await makeRoom(context, sheets, before);
      await fill(context, sheets, options);
      await settle(context, sheets, before);
    } catch (thrown) {
      throw new Refused(await undo(context, before, thrown));
    }
    if (before.replaced.length === 0) return;
    // The sheets stand. A copy that can't be deleted now is hidden, and goes with the next filling.
    clearUp(
      context,
      before.replaced.map(({ name }) => doneName(name)),
    );
    await context.sync().catch(() => undefined);
  });
}

/** Finds what is there; refuses before anything is touched. */
async function look(context: Excel.RequestContext, sheets: readonly Sheet[], options: WriteOptions): Promise<Before> {
  const present = await sheetNames(context);
  for (const { name } of sheets) {
    const alike = present.find((each) => each !== name && each.toLowerCase() === name.toLowerCase());
    // To Excel they are one name, and which of the two a formula means could not be told.
    if (alike !== undefined)
      throw new Refused(
        `Rename the sheet "${alike}": "${name}" is to be written, and Excel takes the two for one name.`,
      );
  }
  clearUp(context, present);
  const there = sheets
    .filter(({ name }) => present.includes(name))
    .map(({ name }) => {
      const sheet = context.workbook.worksheets.getItem(name);
      const used = sheet.getUsedRangeOrNullObject(true);
      used.load('address');
      sheet.protection.load('protected');
      return { name, used, protection: sheet.protection, frozen: loadFrozen(sheet) };
    });
  const names = sheets
    .flatMap((sheet) => sheet.names ?? [])
    .map(({ name }) => {
      const item = context.workbook.names.getItemOrNullObject(name);
      item.load('formula');
      return { name, item };
    });
  await context.sync();
  const inTheWay = there.find(({ name, used }) => !used.isNullObject && !options.replace.includes(name));
  if (inTheWay) {
    throw new Refused(sheetInTheWay(inTheWay.name));
  }
  return {
    sheets: present.filter((name) => !isDone(name)),
    replaced: there.map(({ name, protection, frozen }) => ({ name, locked: protection.protected, frozen: frozen() })),
    added: sheets.map(({ name }) => name).filter((name) => !present.includes(name)),
    names: names.map(({ name, item }) => ({ name, formula: item.isNullObject ? null : String(item.formula) })),
  };
}

/** Copies what will be replaced, adds what is new, and defines the names that the formulas use. */
async function makeRoom(context: Excel.RequestContext, sheets: readonly Sheet[], before: Before): Promise<void> {
  const { worksheets, names } = context.workbook;
  for (const { name, locked } of before.replaced) if (locked) worksheets.getItem(name).protection.unprotect();
  copyAside(context, before.replaced);
  for (const { name } of before.replaced) worksheets.getItem(name).getRange().clear();
  for (const name of before.added) worksheets.add(name);
  for (const { name, ref } of sheets.flatMap((sheet) => sheet.names ?? [])) {
    const had = before.names.find((each) => each.name === name)?.formula;
    if (had === null || had === undefined) names.add(name, '=' + ref);
    else names.getItem(name).formula = '=' + ref;
  }
  await context.sync();
}

/** Cells and looks. Excel calculates once for each request, not once for each cell. */
async function fill(context: Excel.RequestContext, sheets: readonly Sheet[], options: WriteOptions): Promise<void> {
  const rows = sheets.reduce((sum, sheet) => sum + sheet.rows.length, 0);
  let written = 0;
  let size = 0;
  const flush = async () => {
    await context.sync();
    options.onProgress?.(written, rows);
    stopIfAsked(options);
    size = 0;
    quiet(context);
  };
  stopIfAsked(options);
  quiet(context);
  for (const sheet of sheets) {
    const target = context.workbook.worksheets.getItem(sheet.name);
    for (const block of blocksOf(sheet)) {
      if (size > 0 && size + block.size > LARGEST_REQUEST) await flush();
      const { length: height } = block.entries;
      target.getRangeByIndexes(block.row, 0, height, block.entries[0]!.length).formulas = block.entries;
      written += height;
      size += block.size;
    }
    dress(target, sheet);
  }
  await flush();
}

function quiet(context: Excel.RequestContext): void {
  context.application.suspendApiCalculationUntilNextSync();
  context.application.suspendScreenUpdatingUntilNextSync();
}

function stopIfAsked({ signal }: WriteOptions): void {
  if (signal?.aborted) throw new Refused('Stopped.');
}

/**
 * Everything is written: freezes panes, protects what is to be protected, and opens at the last sheet. Panes come last
 * because no copy of a sheet brings them back should the add-in be closed while it fills.
 */
async function settle(context: Excel.RequestContext, sheets: readonly Sheet[], before: Before): Promise<void> {
  const { worksheets } = context.workbook;
  for (const { name, frozenRows, frozenColumns, locked } of sheets) {
    const sheet = worksheets.getItem(name);
    freeze(sheet, { rows: frozenRows, columns: frozenColumns });
    if (locked) lock(sheet);
  }
  const last = sheets.at(-1);
  if (last) {
    const target = worksheets.getItem(last.name);
    target.activate();
    target.getRange(last.home).select();
  }
  markDone(context, before.replaced);
  await context.sync();
}

/** Puts everything back; the sentence says if even that failed. */
async function undo(context: Excel.RequestContext, before: Before, thrown: unknown): Promise<string> {
  const why = thrown instanceof Refused ? thrown.message : sentenceFor(DOING, thrown);
  try {
    await putBack(context, before);
    return `${why} The workbook is as it was.`;
  } catch (failed) {
    const again = sentenceFor('Putting the workbook back failed as well', failed);
    return before.replaced.length === 0
      ? `${why} ${again} The new sheets ${before.added.join(', ')} are incomplete.`
      : `${why} ${again} What stood there before is in hidden sheets, and is put back when the add-in starts again.`;
  }
}

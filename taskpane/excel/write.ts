import { calls } from '../../src/workbook/formulas/calls';
import type { Result } from '../../src/result';
import { rangeAddress } from '../../src/workbook/address';
import { namesLeftOver } from '../../src/workbook/namesLeftOver';
import type { Sheet } from '../../src/workbook/sheet';
import { NO_TRUST_PROMPT } from '../../src/workbook/xlsx/webExtension';
import type { WriteOptions } from '../host';
import { passwordOn, sheetInTheWay } from '../refusals';
import {
  beforeName,
  clear,
  clearUp,
  copyAside,
  doneName,
  isLeftOver,
  lock,
  markDone,
  putBack,
  sheetNames,
  type Before,
  type Replaced,
} from './backup';
import { contentsOf, LARGEST_REQUEST } from './cells';
import { dress } from './dress';
import { freeze, loadFrozen } from './frozen';
import { inExcel, Refused } from './session';
import { sentenceFor } from './words';

const DOING = 'Writing the sheets';

/**
 * Writes sheets in few round trips: two look, one lifts locks where there are any, one makes room, then each sheet is one
 * batch of cells, looks and print set-up (more where 5 MB don't hold it), and one settles. A sheet that is replaced stays the
 * same sheet, so that the user's own formulas keep pointing at it. On a failure or a stop everything is put back.
 */
export async function writeSheets(sheets: readonly Sheet[], options: WriteOptions): Promise<Result<void>> {
  return inExcel(DOING, async (context) => {
    const before = await look(context, sheets, options);
    await liftLocks(context, before.replaced);
    try {
      await makeRoom(context, sheets, before);
      await fill(context, sheets, options);
      await settle(context, sheets, before, options.quiet ?? false);
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
  for (const { name } of sheets) refuseName(name, present);
  clearUp(context, present);
  const ours = sheets.flatMap((sheet) => sheet.names ?? []).map(({ name }) => name);
  const there = sheets
    .filter(({ name }) => present.includes(name))
    .map(({ name }) => {
      const sheet = context.workbook.worksheets.getItem(name);
      const used = sheet.getUsedRangeOrNullObject(true);
      used.load({ address: true });
      sheet.protection.load({ protected: true, options: true });
      sheet.names.load('items/name,items/formula');
      return { name, used, sheet, frozen: loadFrozen(sheet) };
    });
  const names = ours.map((name) => {
    const item = context.workbook.names.getItemOrNullObject(name);
    item.load({ formula: true });
    return { name, item };
  });
  const all = context.workbook.names;
  all.load('items/name,items/formula');
  await context.sync();
  const inTheWay = there.find(({ name, used }) => !used.isNullObject && !options.replace.includes(name));
  if (inTheWay) throw new Refused(sheetInTheWay(inTheWay.name));
  return {
    sheets: present.filter((name) => !isLeftOver(name)),
    replaced: there.map(({ name, sheet, frozen }) => ({
      name,
      locked: sheet.protection.protected ? sheet.protection.options : null,
      frozen: frozen(),
      ownNames: sheet.names.items
        .filter((item) => ours.includes(item.name))
        .map((item) => ({ name: item.name, formula: String(item.formula) })),
    })),
    added: sheets.map(({ name }) => name).filter((name) => !present.includes(name)),
    names: names.map(({ name, item }) => ({ name, formula: item.isNullObject ? null : String(item.formula) })),
    left: namesLeftOver(
      all.items.map(({ name, formula }) => ({ name, ref: String(formula) })),
      sheets,
    ).map(({ name }) => name),
  };
}

function refuseName(name: string, present: readonly string[]): void {
  const alike = present.find((each) => each !== name && each.toLowerCase() === name.toLowerCase());
  // To Excel they are one name, and which of the two a formula means could not be told.
  if (alike !== undefined) {
    throw new Refused(`Rename the sheet "${alike}": "${name}" is to be written, and Excel takes the two for one name.`);
  }
  if (present.includes(beforeName(name))) {
    throw new Refused(
      `A filling of "${name}" was broken off, or goes on on another computer: the top of this pane asks what is to become ` +
        'of it. Nothing was written.',
    );
  }
}

/** Once for the whole filling. A password is met here, before anything is changed. */
async function liftLocks(context: Excel.RequestContext, replaced: readonly Replaced[]): Promise<void> {
  const locked = replaced
    .filter((sheet) => sheet.locked !== null)
    .map((sheet) => ({ ...sheet, protection: context.workbook.worksheets.getItem(sheet.name).protection }));
  if (locked.length === 0) return;
  for (const { protection } of locked) protection.unprotect();
  try {
    await context.sync();
  } catch (thrown) {
    for (const { protection } of locked) protection.load({ protected: true });
    await context.sync();
    // They are unlocked one after another: the first that is still locked is the one that refused.
    const refusing = locked.find(({ protection }) => protection.protected);
    for (const { protection, locked: options } of locked) if (!protection.protected) protection.protect(options!);
    await context.sync();
    throw refusing ? new Refused(passwordOn(refusing.name)) : thrown;
  }
}

/** Copies what will be replaced, adds what is new, and defines the names that the formulas use. */
async function makeRoom(context: Excel.RequestContext, sheets: readonly Sheet[], before: Before): Promise<void> {
  const { worksheets, names } = context.workbook;
  quiet(context);
  copyAside(context, before.replaced);
  for (const { name, ownNames } of before.replaced) {
    const sheet = worksheets.getItem(name);
    clear(sheet);
    // A name of the sheet alone would stand before the workbook's of the same name in the sheet's formulas.
    for (const own of ownNames) sheet.names.getItem(own.name).delete();
  }
  for (const name of before.added) worksheets.add(name);
  for (const { name, ref } of sheets.flatMap((sheet) => sheet.names ?? [])) {
    const had = before.names.find((each) => each.name === name)?.formula;
    if (had === null || had === undefined) names.add(name, '=' + ref);
    else if (had !== '=' + ref) names.getItem(name).formula = '=' + ref;
  }
  await context.sync();
}

/** A batch for each sheet. Excel calculates once for each request, not once for each cell. */
async function fill(context: Excel.RequestContext, sheets: readonly Sheet[], options: WriteOptions): Promise<void> {
  const rows = sheets.reduce((sum, sheet) => sum + sheet.rows.length, 0);
  let written = 0;
  stopIfAsked(options);
  for (const sheet of sheets) {
    let size = 0;
    const send = async () => {
      await context.sync();
      options.onProgress?.(written, rows);
      stopIfAsked(options);
      size = 0;
      quiet(context);
    };
    const sendIfFull = async (more: number) => {
      if (size > 0 && size + more > LARGEST_REQUEST) await send();
      size += more;
    };
    quiet(context);
    const target = context.workbook.worksheets.getItem(sheet.name);
    const { blocks, copies } = contentsOf(sheet);
    for (const block of blocks) {
      await sendIfFull(block.size);
      const { length: height } = block.entries;
      target.getRangeByIndexes(block.row, 0, height, block.entries[0]!.length).formulas = block.entries;
      written += height;
    }
    for (const { first, last } of copies) {
      const from = rangeAddress({ first, last: { row: first.row, column: last.column } });
      const to = rangeAddress({ first: { row: first.row + 1, column: first.column }, last });
      target.getRange(to).copyFrom(from, 'Formulas');
    }
    for (const step of dress(target, sheet)) await sendIfFull(step);
    freeze(target, { rows: sheet.frozenRows, columns: sheet.frozenColumns });
    await send();
  }
}

function quiet(context: Excel.RequestContext): void {
  context.application.suspendApiCalculationUntilNextSync();
  context.application.suspendScreenUpdatingUntilNextSync();
}

function stopIfAsked({ signal }: WriteOptions): void {
  if (signal?.aborted) throw new Refused('Stopped.');
}

/** Everything is written: protects what is to be protected, opens at the last sheet, and the copies are no longer needed. */
async function settle(
  context: Excel.RequestContext,
  sheets: readonly Sheet[],
  before: Before,
  quiet: boolean,
): Promise<void> {
  const { worksheets, settings } = context.workbook;
  for (const { name, locked } of sheets) if (locked) lock(worksheets.getItem(name));
  const last = sheets.at(-1);
  if (last && !quiet) {
    const target = worksheets.getItem(last.name);
    target.activate();
    target.getRange(last.home).select();
  }
  markDone(context, before.replaced);
  for (const name of before.left) context.workbook.names.getItem(name).delete();
  // The last action: an earlier one that fails leaves the workbook's settings as they were.
  if (callsOurFunctions(sheets)) settings.add(NO_TRUST_PROMPT, true);
  await context.sync();
}

function callsOurFunctions(sheets: readonly Sheet[]): boolean {
  return sheets.some(({ rows }) => rows.some((row) => row.some((cell) => calls(cell?.formula ?? '').length > 0)));
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
      : `${why} ${again} What stood there before is in hidden sheets: the top of this pane asks whether to put it back.`;
  }
}

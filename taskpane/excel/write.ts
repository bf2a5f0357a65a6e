import { ok, refuse, type Result } from '../../src/result';
import type { Sheet } from '../../src/workbook/sheet';
import type { WriteOptions } from '../host';
import { blocksOf, LARGEST_REQUEST } from './cells';
import { dress } from './dress';
import { defineNames, type NamesBefore } from './names';
import { inExcel, Refused } from './session';
import { sentenceFor } from './words';

const DOING = 'Writing the sheets';
/** Copies of the sheets about to be replaced, hidden, until the new ones stand. */
const BACKUP = '~before ';

interface Before {
  /** Sheets that are replaced, and those that are new. */
  readonly replaced: readonly string[];
  readonly added: readonly string[];
  names: NamesBefore;
}

/**
 * Writes sheets in few round trips: one looks, one makes room, then as many as 5 MB requests need (usually one) carry cells
 * and looks together. A sheet that is replaced stays the same sheet, so that the user's own formulas keep pointing at it. On
 * a failure or a stop everything is put back.
 */
export async function writeSheets(sheets: readonly Sheet[], options: WriteOptions): Promise<Result<void>> {
  return inExcel(DOING, async (context) => {
    const before = await look(context, sheets, options);
    try {
      await makeRoom(context, sheets, before);
      await fill(context, sheets, options);
      stopIfAsked(options);
    } catch (thrown) {
      throw new Refused(await putBack(context, before, thrown));
    }
    await settle(context, sheets, before);
  });
}

/** Finds what is there; refuses before anything is touched. */
async function look(context: Excel.RequestContext, sheets: readonly Sheet[], options: WriteOptions): Promise<Before> {
  const found = sheets.map(({ name }) => {
    const sheet = context.workbook.worksheets.getItemOrNullObject(name);
    const used = sheet.getUsedRangeOrNullObject(true);
    sheet.load('name');
    sheet.protection.load('protected');
    used.load('address');
    return { name, sheet, used };
  });
  await context.sync();
  const present = found.filter(({ sheet }) => !sheet.isNullObject);
  for (const { name, used } of present) {
    if (used.isNullObject || options.replace.includes(name as Sheet['name'])) continue;
    throw new Refused(`The sheet "${name}" already holds something. Rename it, or say that it may be replaced.`);
  }
  for (const { sheet } of present) {
    if (sheet.protection.protected) sheet.protection.unprotect();
  }
  await context.sync();
  return {
    replaced: present.map(({ name }) => name),
    added: found.filter(({ sheet }) => sheet.isNullObject).map(({ name }) => name),
    names: [],
  };
}

/** Copies what will be replaced, adds what is new, and defines the names that the formulas use. */
async function makeRoom(context: Excel.RequestContext, sheets: readonly Sheet[], before: Before): Promise<void> {
  const { worksheets } = context.workbook;
  for (const name of before.replaced) {
    const sheet = worksheets.getItem(name);
    const copy = sheet.copy('End');
    copy.name = backupName(name);
    copy.visibility = 'VeryHidden';
    sheet.freezePanes.unfreeze();
    sheet.getRange().clear();
  }
  for (const name of before.added) worksheets.add(name);
  await context.sync();
  before.names = await defineNames(context, sheets);
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

/** After success: protect, open at the last sheet, throw the copies away. */
async function settle(context: Excel.RequestContext, sheets: readonly Sheet[], before: Before): Promise<void> {
  const { worksheets } = context.workbook;
  for (const name of before.replaced) worksheets.getItem(backupName(name)).delete();
  for (const sheet of sheets) {
    const target = worksheets.getItem(sheet.name);
    // No password: it keeps formulas from being typed over by mistake, and anyone may take it off.
    if (sheet.locked)
      target.protection.protect({
        allowFormatCells: true,
        allowFormatColumns: true,
        allowFormatRows: true,
        allowAutoFilter: true,
        allowSort: true,
      });
  }
  const last = sheets.at(-1);
  if (last) {
    const target = worksheets.getItem(last.name);
    target.activate();
    target.getRange(last.home).select();
  }
  await context.sync();
}

/** After a failure: the workbook as it was; the sentence says if even that failed, and where the copies are. */
async function putBack(context: Excel.RequestContext, before: Before, thrown: unknown): Promise<string> {
  const why = thrown instanceof Refused ? thrown.message : sentenceFor(DOING, thrown);
  const undone = await attempt(async () => {
    const { worksheets, names } = context.workbook;
    const copies = before.replaced.map((name) => ({ name, copy: worksheets.getItemOrNullObject(backupName(name)) }));
    const added = before.added.map((name) => worksheets.getItemOrNullObject(name));
    await context.sync();
    for (const { name, formula } of before.names) {
      const item = names.getItem(name);
      if (formula === null) item.delete();
      else item.formula = formula;
    }
    for (const { name, copy } of copies) {
      if (copy.isNullObject) continue; // nothing had been touched yet
      const whole = worksheets.getItem(name).getRange();
      whole.clear();
      whole.copyFrom(copy.getRange(), 'All');
      copy.visibility = 'Hidden';
      copy.delete();
    }
    for (const sheet of added) if (!sheet.isNullObject) sheet.delete();
    await context.sync();
  });
  if (undone.ok) return `${why} The workbook is as it was.`;
  const kept = before.replaced.map((name) => `"${backupName(name)}"`).join(', ');
  const where = kept === '' ? '' : ` What stood there before is kept in the hidden sheets ${kept}.`;
  return `${why} Putting the workbook back failed as well.${where}`;
}

async function attempt(action: () => Promise<void>): Promise<Result<void>> {
  try {
    await action();
    return ok(undefined);
  } catch (thrown) {
    return refuse(String(thrown));
  }
}

function backupName(name: string): string {
  return BACKUP + name;
}

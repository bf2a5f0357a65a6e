import type { Result } from '../../src/result';
import { NOTE, noteOf, readNote, thisComputer, type BrokenOff } from './broken';
import { freeze, type Frozen } from './frozen';
import { inExcel } from './session';

/**
 * Before a sheet is replaced its cells are copied into a hidden one, `~copying Takeoff`, which is renamed `~before Takeoff` once it
 * is whole. When the new sheets stand, the copy is renamed `~done Takeoff` and deleted. So a copy found later says what
 * happened: `~before` that the filling was broken off (the add-in was closed meanwhile) or goes on elsewhere; the others are
 * not needed.
 */
const COPYING = '~copying ';
const BEFORE = '~before ';
const DONE = '~done ';

/** A sheet that is written over, and what its copy does not keep of it. */
export interface Replaced {
  readonly name: string;
  /** How it is locked; null: it is not. */
  readonly locked: Excel.WorksheetProtectionOptions | null;
  readonly frozen: Frozen;
  /** Names of the sheet alone that double one of the workbook's. */
  readonly ownNames: readonly { readonly name: string; readonly formula: string }[];
}

/** What was there before the first change. */
export interface Before {
  readonly sheets: readonly string[];
  readonly replaced: readonly Replaced[];
  readonly added: readonly string[];
  /** Names to be set, each with its formula; null where there was none. */
  readonly names: readonly { readonly name: string; readonly formula: string | null }[];
  /** Names that stand for nothing once all is written. */
  readonly left: readonly string[];
}

/**
 * The cells are copied, not the sheet: a copied sheet brings a twin of each name along, and formulas would look at the twin
 * from then on.
 */
export function copyAside(context: Excel.RequestContext, replaced: readonly Replaced[]): void {
  const { worksheets, settings } = context.workbook;
  if (replaced.length > 0) settings.add(NOTE, noteOf({ whose: thisComputer(), when: new Date().toISOString() }));
  for (const { name } of replaced) {
    const copy = worksheets.add(COPYING + name);
    copy.visibility = 'VeryHidden';
    copy.getRange().copyFrom(worksheets.getItem(name).getRange(), 'All');
    copy.name = BEFORE + name;
  }
}

export function markDone(context: Excel.RequestContext, replaced: readonly Replaced[]): void {
  for (const { name } of replaced) context.workbook.worksheets.getItem(BEFORE + name).name = doneName(name);
  if (replaced.length > 0) context.workbook.settings.getItem(NOTE).delete();
}

export function beforeName(name: string): string {
  return BEFORE + name;
}

export function doneName(name: string): string {
  return DONE + name;
}

/** A copy that is not needed: one of a filling that came to its end, or one that is not whole. */
export function isLeftOver(name: string): boolean {
  return name.startsWith(DONE) || name.startsWith(COPYING);
}

/** Deletes those of the sheets that are copies not needed, at the next sync. */
export function clearUp(context: Excel.RequestContext, present: readonly string[]): void {
  for (const name of present.filter(isLeftOver)) remove(context, name);
}

/** No password: it keeps formulas from being typed over by mistake, and anyone may take it off. */
export function lock(sheet: Excel.Worksheet): void {
  sheet.protection.protect({
    allowFormatCells: true,
    allowFormatColumns: true,
    allowFormatRows: true,
    allowAutoFilter: true,
    allowSort: true,
  });
}

/** Whatever was done to a sheet's rows, columns and cells is undone: it is like a new one, and formulas still point at it. */
export function clear(sheet: Excel.Worksheet): void {
  sheet.autoFilter.remove(); // and with it what it hides
  const all = sheet.getRange();
  all.clear();
  all.dataValidation.clear();
  all.conditionalFormats.clearAll();
  // Clearing shows nothing that was hidden.
  all.rowHidden = false;
  all.columnHidden = false;
}

/** After a failure: every sheet and name as it was. */
export async function putBack(context: Excel.RequestContext, before: Before): Promise<void> {
  const { workbook } = context;
  const present = await sheetNames(context);
  const replaced = before.replaced.filter(({ name }) => present.includes(name)); // else the user has deleted it meanwhile
  const locks = replaced.map(({ name }) => {
    const { protection } = workbook.worksheets.getItem(name);
    protection.load({ protected: true });
    return protection;
  });
  const items = before.names.map(({ name, formula }) => {
    const item = workbook.names.getItemOrNullObject(name);
    item.load({ formula: true });
    return { formula, item };
  });
  const note = workbook.settings.getItemOrNullObject(NOTE);
  note.load({ value: true });
  const own = replaced.map(({ name }) => {
    const { names } = workbook.worksheets.getItem(name);
    names.load('items/name');
    return names;
  });
  await context.sync();
  for (const protection of locks) if (protection.protected) protection.unprotect();
  restoreCopies(context, present);
  for (const [at, { name, locked, frozen, ownNames }] of replaced.entries()) {
    const sheet = workbook.worksheets.getItem(name);
    freeze(sheet, frozen);
    for (const { name: twin, formula } of ownNames) {
      if (!own[at]!.items.some((item) => item.name === twin)) sheet.names.add(twin, formula);
    }
    if (locked !== null) sheet.protection.protect(locked);
  }
  for (const name of present) if (before.added.includes(name) || name.startsWith(COPYING)) remove(context, name);
  for (const { formula, item } of items) {
    if (item.isNullObject) continue;
    if (formula === null) item.delete();
    else if (item.formula !== formula) item.formula = formula;
  }
  if (!note.isNullObject) note.delete();
  await context.sync();
}

/** The sheets whose copies stand in the workbook, with whose filling it was. Looks only. */
export function lookForBroken(): Promise<BrokenOff> {
  return inExcel('Looking for a filling that was broken off', async (context) => {
    const present = context.workbook.worksheets;
    present.load('items/name');
    const note = context.workbook.settings.getItemOrNullObject(NOTE);
    note.load({ value: true });
    await context.sync();
    const names = present.items.map(({ name }) => name);
    const sheets = names.filter((name) => names.includes(BEFORE + name));
    return { sheets, filling: note.isNullObject ? null : readNote(note.value) };
  });
}

/** What a broken-off filling left: put back, or left as it stands and its copies dropped. Gives the sheets put back. */
export function settleBroken(restore: boolean): Promise<Result<readonly string[]>> {
  return inExcel(restore ? 'Putting the sheets back' : 'Dropping the copies', async (context) => {
    const present = await sheetNames(context);
    const note = context.workbook.settings.getItemOrNullObject(NOTE);
    note.load({ value: true });
    const copied = present.filter((name) => present.includes(BEFORE + name));
    const locks = copied.map((name) => {
      const { protection } = context.workbook.worksheets.getItem(name);
      protection.load({ protected: true });
      return protection;
    });
    await context.sync();
    if (restore) for (const protection of locks) if (protection.protected) protection.unprotect();
    const restored = restore
      ? restoreCopies(
          context,
          present.filter((name) => !isLeftOver(name)),
        )
      : [];
    if (!restore) for (const name of present) if (name.startsWith(BEFORE)) remove(context, name);
    clearUp(context, present);
    if (!note.isNullObject) note.delete();
    await context.sync();
    return restored;
  });
}

function restoreCopies(context: Excel.RequestContext, present: readonly string[]): string[] {
  const restored: string[] = [];
  for (const copy of present) {
    const prefix = [BEFORE, DONE].find((each) => copy.startsWith(each));
    if (prefix === undefined) continue;
    const name = copy.slice(prefix.length);
    if (!present.includes(name)) continue; // the user has deleted the sheet itself; the copy is theirs to look at
    const sheet = context.workbook.worksheets.getItem(name);
    // The same sheet is filled again, so that formulas that point at it keep doing so.
    clear(sheet);
    sheet.getRange().copyFrom(context.workbook.worksheets.getItem(copy).getRange(), 'All');
    remove(context, copy);
    restored.push(name);
  }
  return restored;
}

/** Excel deletes no sheet that is very hidden. */
function remove(context: Excel.RequestContext, name: string): void {
  const sheet = context.workbook.worksheets.getItem(name);
  sheet.visibility = 'Hidden';
  sheet.delete();
}

export async function sheetNames(context: Excel.RequestContext): Promise<string[]> {
  const { worksheets } = context.workbook;
  worksheets.load('items/name');
  await context.sync();
  return worksheets.items.map(({ name }) => name);
}

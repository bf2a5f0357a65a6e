import type { Result } from '../../src/result';
import { freeze, type Frozen } from './frozen';
import { inExcel } from './session';

/**
 * Before a sheet is replaced it is copied into a hidden one, `~before Takeoff`. When the new sheets stand, the copy is
 * renamed `~done Takeoff` and deleted. So a copy found later says what happened: `~before` that the filling was broken off
 * (the add-in was closed meanwhile), `~done` that only the clearing up was.
 */
const BEFORE = '~before ';
const DONE = '~done ';

/** A sheet that is written over, and what its copy does not keep of it. */
export interface Replaced {
  readonly name: string;
  readonly locked: boolean;
  readonly frozen: Frozen;
}

/** What was there before the first change. */
export interface Before {
  readonly sheets: readonly string[];
  readonly replaced: readonly Replaced[];
  readonly added: readonly string[];
  /** Names to be set, each with its formula; null where there was none. */
  readonly names: readonly { readonly name: string; readonly formula: string | null }[];
}

export function copyAside(context: Excel.RequestContext, replaced: readonly Replaced[]): void {
  for (const { name } of replaced) {
    const copy = context.workbook.worksheets.getItem(name).copy('End');
    copy.name = BEFORE + name;
    copy.visibility = 'VeryHidden';
  }
}

export function markDone(context: Excel.RequestContext, replaced: readonly Replaced[]): void {
  for (const { name } of replaced) context.workbook.worksheets.getItem(BEFORE + name).name = doneName(name);
}

export function doneName(name: string): string {
  return DONE + name;
}

export function isDone(name: string): boolean {
  return name.startsWith(DONE);
}

/** Deletes those of the sheets that are copies no longer needed, at the next sync. */
export function clearUp(context: Excel.RequestContext, present: readonly string[]): void {
  for (const name of present.filter(isDone)) remove(context, name);
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

/** After a failure: every sheet and name as it was. */
export async function putBack(context: Excel.RequestContext, before: Before): Promise<void> {
  const present = await sheetNames(context);
  restoreCopies(context, present);
  for (const { name, locked, frozen } of before.replaced) {
    if (!present.includes(name)) continue; // the user has deleted it meanwhile
    const sheet = context.workbook.worksheets.getItem(name);
    freeze(sheet, frozen);
    if (!locked) continue;
    sheet.protection.unprotect(); // it may not have come to that, and Excel locks no sheet twice
    lock(sheet);
  }
  const ours = (name: string) =>
    before.added.includes(name) || before.replaced.some((replaced) => name.startsWith(`${replaced.name} (`));
  // A copy that failed before it was named stands as "Takeoff (2)".
  for (const name of present) if (!before.sheets.includes(name) && ours(name)) remove(context, name);
  const items = before.names.map(({ name, formula }) => {
    const item = context.workbook.names.getItemOrNullObject(name);
    item.load('formula');
    return { formula, item };
  });
  await context.sync();
  for (const { formula, item } of items) {
    if (item.isNullObject) continue;
    if (formula === null) item.delete();
    else if (item.formula !== formula) item.formula = formula;
  }
  await context.sync();
}

/** When the add-in starts: puts back what a broken-off filling left. Gives the sheets it put back. */
export function recover(): Promise<Result<readonly string[]>> {
  return inExcel('Looking for a filling that was broken off', async (context) => {
    const present = await sheetNames(context);
    clearUp(context, present);
    const restored = restoreCopies(
      context,
      present.filter((name) => !isDone(name)),
    );
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
    sheet.protection.unprotect(); // in case the filling was broken off after it had locked the sheet
    // The same sheet is filled again, so that formulas that point at it keep doing so.
    sheet.getRange().clear();
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

import { isFormula } from '../../src/formulaText';
import { addressOf, readAddress, type CellPosition } from '../../src/workbook/address';
import { ok, refuse, type Result } from '../../src/result';
import type { CellBlock, Host } from '../host';
import { cellInTheWay, NO_RECTANGLE, noSheet, passwordOn } from '../refusals';
import { readInBlocks } from './blocks';
import { blocksOf, bytesOf, constantEntry, LARGEST_REQUEST, type Entry } from './cells';
import { isFilled, readCellAt, readSelection, readSheet } from './read';
import { inExcel, Refused } from './session';
import { codeOf } from './words';

/** Excel behind the port, through Office.js. `afterFailure` is called when sheets could not be written. */
export function excelHost(afterFailure: () => unknown = () => undefined): Host {
  return {
    name: 'Excel',
    readSelection: () => inExcel('Reading the selected cells', readSelection),
    sheetNames: () =>
      inExcel('Reading the sheets', async (context) => {
        const { worksheets } = context.workbook;
        worksheets.load('items/name,items/visibility');
        await context.sync();
        return worksheets.items.filter(({ visibility }) => visibility === 'Visible').map(({ name }) => name);
      }),
    isFilled: (name) => inExcel(`Looking at "${name}"`, (context) => isFilled(context, name)),
    readSheet: (name) => inExcel(`Reading "${name}"`, (context) => readSheet(context, name, 'values')),
    readFormulas: (name) => inExcel(`Reading "${name}"`, (context) => readSheet(context, name, 'formulas')),
    writeSheets: async (sheets, options) => {
      // The largest part of this host, and not wanted before something is filled.
      const { writeSheets } = await import('./write');
      const written = await writeSheets(sheets, options);
      if (!written.ok) afterFailure();
      return written;
    },
    writeCells: (sheet, address, rows, replace) => write(sheet, [{ address, rows }], replace),
    overwrite: (sheet, blocks) => write(sheet, blocks, true),
    show: (sheet, address) =>
      inExcel(`Going to "${sheet}"`, async (context) => {
        const target = await existing(context, sheet);
        target.activate();
        target.getRange(address).select();
        await context.sync();
      }),
    cellAt: () => inExcel('Reading the cell', readCellAt),
    onSelect: (listener) => subscribe((context) => context.workbook.onSelectionChanged.add(async () => listener())),
    onEdit: (listener) =>
      subscribe((context) =>
        context.workbook.worksheets.onChanged.add(async ({ worksheetId }) => {
          const name = await inExcel('Reading the sheet', async (visit) => {
            const sheet = visit.workbook.worksheets.getItemOrNullObject(worksheetId);
            sheet.load('name');
            await visit.sync();
            return sheet.isNullObject ? null : sheet.name;
          });
          if (name.ok && name.value !== null) listener(name.value);
        }),
      ),
    readSetting: (key) =>
      inExcel('Reading what was kept with the workbook', async (context) => {
        const setting = context.workbook.settings.getItemOrNullObject(key);
        setting.load('value');
        await context.sync();
        return setting.isNullObject ? null : String(setting.value);
      }),
    saveSetting: (key, value) =>
      inExcel('Keeping a note with the workbook', async (context) => {
        context.workbook.settings.add(key, value);
        await context.sync();
      }),
  };
}

/** Where a rectangle of entries goes; row and column from 0. */
interface Piece extends CellPosition {
  readonly entries: Entry[][];
}

/** About how many bytes a rectangle takes in a request beside its entries. */
const AROUND_ENTRIES = 500;

/** A lock without a password, as our own sheets have, is lifted for what the user has asked to be written over. */
async function write(sheet: string, blocks: readonly CellBlock[], replace: boolean): Promise<Result<void>> {
  const pieces: Piece[] = [];
  for (const { address, rows } of blocks) {
    const at = readAddress(address);
    if (!at.ok) return at;
    const width = rows[0]?.length ?? 0;
    if (width === 0 || rows.some((row) => row.length !== width)) {
      return refuse(NO_RECTANGLE);
    }
    const entries = rows.map((line) => line.map((value) => (isFormula(value) ? value : constantEntry(value))));
    for (const block of blocksOf(entries)) {
      pieces.push({ row: at.value.row + block.row, column: at.value.column, entries: block.entries });
    }
  }
  const written = await inExcel(`Writing to "${sheet}"`, async (context) => {
    const target = context.workbook.worksheets.getItemOrNullObject(sheet);
    target.load({ name: true });
    await context.sync();
    if (target.isNullObject) throw new Refused(noSheet(sheet));
    if (!replace) for (const piece of pieces) await refuseFilled(context, target, piece);
    const { protection } = target;
    protection.load({ protected: true, options: true });
    await context.sync();
    const lock = replace && protection.protected ? protection.options : null;
    if (lock) protection.unprotect();
    try {
      let size = 0;
      for (const { row, column, entries } of pieces) {
        const more = AROUND_ENTRIES + bytesOf(entries);
        if (size > 0 && size + more > LARGEST_REQUEST) {
          await context.sync();
          size = 0;
        }
        target.getRangeByIndexes(row, column, entries.length, entries[0]!.length).formulas = entries;
        size += more;
      }
      await context.sync();
    } catch (thrown) {
      if (lock === null) throw thrown;
      protection.load({ protected: true });
      await context.sync();
      // Lifting the lock comes first: where it is still there, that is what was refused.
      if (protection.protected && codeOf(thrown) !== 'InvalidOperationInCellEditMode') {
        throw new Refused(passwordOn(sheet));
      }
      throw thrown;
    } finally {
      if (lock) await lockAgain(context, protection, lock);
    }
  });
  return written.ok ? ok(undefined) : written;
}

async function lockAgain(
  context: Excel.RequestContext,
  protection: Excel.WorksheetProtection,
  options: Excel.WorksheetProtectionOptions,
): Promise<void> {
  protection.load({ protected: true });
  await context.sync();
  if (protection.protected) return;
  protection.protect(options);
  await context.sync();
}

async function refuseFilled(context: Excel.RequestContext, sheet: Excel.Worksheet, piece: Piece): Promise<void> {
  const where = { ...piece, rows: piece.entries.length, columns: piece.entries[0]!.length };
  const { formulas } = await readInBlocks(context, sheet, where, ['formulas']);
  const filled = firstFilled(formulas);
  if (filled === null) return;
  const at = addressOf({ row: where.row + filled.row, column: where.column + filled.column });
  throw new Refused(cellInTheWay(sheet.name, at));
}

function firstFilled(formulas: readonly (readonly unknown[])[]): CellPosition | null {
  for (const [row, line] of formulas.entries()) {
    const column = line.findIndex((formula) => formula !== '');
    if (column >= 0) return { row, column };
  }
  return null;
}

async function existing(context: Excel.RequestContext, sheet: string): Promise<Excel.Worksheet> {
  const target = context.workbook.worksheets.getItemOrNullObject(sheet);
  target.load('name');
  await context.sync();
  if (target.isNullObject) throw new Refused(noSheet(sheet));
  return target;
}

/** Adds an event handler; the way to stop works also when called before Excel has answered. */
function subscribe(add: (context: Excel.RequestContext) => OfficeExtension.EventHandlerResult<never>): () => void {
  const adding = inExcel('Listening to the workbook', async (context) => {
    const handler = add(context);
    await context.sync();
    return handler;
  });
  return () => {
    void adding.then(async (added) => {
      if (!added.ok) return;
      const handler = added.value;
      await Excel.run(handler.context as Excel.RequestContext, async (context) => {
        handler.remove();
        await context.sync();
      }).catch(() => undefined); // what can't be taken off goes when the pane is closed
    });
  };
}

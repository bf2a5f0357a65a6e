import { addressOf, readAddress, type CellPosition } from '../../src/workbook/address';
import { ok, refuse, type Result } from '../../src/result';
import type { Host } from '../host';
import { cellInTheWay, NO_RECTANGLE, noSheet } from '../refusals';
import { constantEntry } from './cells';
import { readCellAt, readSelection, readSheet } from './read';
import { inExcel, Refused } from './session';
import { writeSheets } from './write';

/** Excel behind the port, through Office.js. */
export function excelHost(): Host {
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
    readSheet: (name) => inExcel(`Reading "${name}"`, (context) => readSheet(context, name, 'values')),
    readFormulas: (name) => inExcel(`Reading "${name}"`, (context) => readSheet(context, name, 'formulas')),
    writeSheets,
    writeCells,
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

/** A lock without a password, as our own sheets have, is lifted for what the user has asked to be written over. */
async function writeCells(
  sheet: string,
  address: string,
  rows: readonly (readonly (string | number | boolean | null)[])[],
  replace: boolean,
): Promise<Result<void>> {
  const at = readAddress(address);
  if (!at.ok) return at;
  const width = rows[0]?.length ?? 0;
  if (width === 0 || rows.some((row) => row.length !== width)) {
    return refuse(NO_RECTANGLE);
  }
  const { row, column } = at.value;
  const written = await inExcel(`Writing to "${sheet}"`, async (context) => {
    const target = await existing(context, sheet);
    const range = target.getRangeByIndexes(row, column, rows.length, width);
    range.load({ formulas: true });
    const { protection } = target;
    protection.load({ protected: true, options: true });
    await context.sync();
    const filled = replace ? null : firstFilled(range.formulas);
    if (filled) {
      const at = addressOf({ row: row + filled.row, column: column + filled.column });
      throw new Refused(cellInTheWay(sheet, at));
    }
    const locked = replace && protection.protected;
    if (locked) protection.unprotect();
    range.formulas = rows.map((line) =>
      line.map((value) => (typeof value === 'string' && value.startsWith('=') ? value : constantEntry(value))),
    );
    try {
      await context.sync();
    } finally {
      if (locked) {
        protection.protect(protection.options);
        await context.sync();
      }
    }
  });
  return written.ok ? ok(undefined) : written;
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

import type { Table } from '../../../src/schedule/opening';
import { fail, tell, work, type Bench } from './bench';
import type { QuoteChoices } from '../../../src/quote/headings';
import type { QuoteKey } from '../../../src/quote/meanings';
import { readAnyFile, readListedSheet, readText } from './chooseList';
import { lookForSheets, takeoffBefore } from './fill';
import { loadShop } from './shop';

export function checkSelection(bench: Bench): Promise<void> {
  return work(bench, 'Checking the quote in the selected cells', async () => {
    const table = await bench.host.readSelection();
    return table.ok ? check(bench, table.value) : fail(bench, table.message);
  });
}

export function checkSheet(bench: Bench, name: string): Promise<void> {
  return work(bench, `Checking the quote on sheet ${name}`, async () => {
    const table = await readListedSheet(bench, name);
    return table.ok ? check(bench, table.value) : fail(bench, table.message);
  });
}

export function checkFile(bench: Bench, file: File): Promise<void> {
  return work(bench, `Checking ${file.name}`, async (signal) => {
    const tables = await readAnyFile(bench, file, 'quote', signal);
    if (!tables.ok) return fail(bench, tables.message);
    const { chooseQuoteTable } = await import('../../../src/check/quote');
    const table = chooseQuoteTable(tables.value);
    return table ? check(bench, table) : fail(bench, `${file.name} has no rows.`);
  });
}

/** Rows pasted with their headings. */
export function checkText(bench: Bench, text: string): Promise<void> {
  return work(bench, 'Checking the pasted quote', async () => {
    const tables = await readText(bench, text);
    if (!tables.ok) return fail(bench, tables.message);
    const [table] = tables.value;
    return table ? check(bench, table) : fail(bench, 'The pasted text has no rows.');
  });
}

/** A column of the quote holds something else than we understood; null: what we understand. */
export function chooseQuoteMeaning(bench: Bench, column: number, key: QuoteKey | null): Promise<void> {
  return work(bench, 'Reading the quote again', async () => {
    const { quoteTable, quoteChoices } = bench.store.get();
    if (!quoteTable) return;
    const { [column]: _before, ...others } = quoteChoices;
    await check(bench, quoteTable, key === null ? others : { ...others, [column]: key });
  });
}

/** The quote against the takeoff of the chosen list, with what was changed by hand in the workbook. */
async function check(bench: Bench, table: Table, choices: QuoteChoices = {}): Promise<void> {
  const { store } = bench;
  if (!(await loadShop(bench))) return;
  const { schedule, standards } = store.get();
  if (!schedule) return fail(bench, 'Choose the list of openings first; a quote is checked against it.');
  const [{ checkTable }, { takeoffWithEdits }] = await Promise.all([
    import('../../../src/check/quote'),
    import('../../../src/workbook/withEdits'),
  ]);
  const before = await takeoffBefore(bench);
  if (!before.ok) return fail(bench, before.message);
  const { taken } = takeoffWithEdits({ schedule, standards, before: before.value });
  // Where no quote can be read, its columns can still be set by hand.
  store.send({ type: 'quote read', table, choices });
  const check = checkTable(table, taken, { choices });
  if (!check.ok) return fail(bench, check.message);
  store.send({ type: 'quote checked', check: check.value });
}

/**
 * Writes the Check sheet, whose formulas compare with the Takeoff's cells. Gives true where one stands already and has to
 * be asked about.
 */
export async function writeCheck(bench: Bench, replace: boolean): Promise<boolean> {
  const { quote, plain } = bench.store.get();
  if (!quote) return false;
  const held = await lookForSheets(bench);
  if (!held.ok) {
    fail(bench, held.message);
    return false;
  }
  if (!held.value.includes('Takeoff')) {
    fail(bench, 'Fill the workbook first: the Check sheet compares with the cells of its Takeoff.');
    return false;
  }
  if (held.value.includes('Check') && !replace) return true;
  await work(bench, 'Writing the Check sheet', async () => {
    const { checkSheet: sheetOf } = await import('../../../src/workbook/checkSheet');
    const written = await bench.host.writeSheets([sheetOf(quote, plain)], { replace: ['Check'] });
    if (!written.ok) return fail(bench, written.message);
    tell(bench, 'The Check sheet is written; it follows every change to the takeoff.');
  });
  return false;
}

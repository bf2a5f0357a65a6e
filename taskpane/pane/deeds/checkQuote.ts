import type { Table } from '../../../src/schedule/opening';
import { fail, work, type Bench } from './bench';
import { MOST_BYTES } from './chooseList';

export function checkSelection(bench: Bench): Promise<void | undefined> {
  return work(bench, 'Checking the quote in the selected cells', async () => {
    const table = await bench.host.readSelection();
    return table.ok ? check(bench, table.value) : fail(bench, table.message);
  });
}

export function checkSheet(bench: Bench, name: string): Promise<void | undefined> {
  return work(bench, `Checking the quote on sheet ${name}`, async () => {
    const table = await bench.host.readSheet(name);
    if (!table.ok) return fail(bench, table.message);
    return table.value ? check(bench, table.value) : fail(bench, `Sheet "${name}" is not in this workbook any more.`);
  });
}

export function checkFile(bench: Bench, file: File): Promise<void | undefined> {
  return work(bench, `Checking ${file.name}`, async () => {
    if (file.size > MOST_BYTES) return fail(bench, `${file.name} is too large; files up to 20 MB can be read.`);
    const tables = await bench.core.readTables(file.name, new Uint8Array(await file.arrayBuffer()));
    if (!tables.ok) return fail(bench, tables.message);
    const { chooseQuoteTable } = await import('../../../src/check/quote');
    const table = chooseQuoteTable(tables.value);
    return table ? check(bench, table) : fail(bench, `${file.name} has no rows.`);
  });
}

/** The quote against the takeoff of the chosen list, by the shop's standards. */
async function check({ store, ...others }: Bench, table: Table): Promise<void> {
  const { schedule, standards } = store.get();
  if (!schedule) return fail({ store, ...others }, 'Choose the list of openings first; a quote is checked against it.');
  const [{ checkQuote, readQuote }, { takeoff }] = await Promise.all([
    import('../../../src/check/quote'),
    import('../../../src/takeoff/takeoff'),
  ]);
  const quote = readQuote(table, standards);
  if (!quote.ok) return fail({ store, ...others }, quote.message);
  store.send({ type: 'quote checked', check: checkQuote(quote.value, takeoff(schedule.openings, standards)) });
}

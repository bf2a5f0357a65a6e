import { checkTable, chooseQuoteTable, summaryText } from '../src/check/quote';
import { planTakeoff } from '../src/takeoff/planned';
import { takeoff } from '../src/takeoff/takeoff';
import { workbookSources } from '../src/workbook/workbook';
import { checkJson } from './checkReport';
import { cannotUse, wrongUsage } from './endings';
import { readAllTables, writeWorkbook } from './files';
import type { Command, ExitCode, Io } from './io';
import { readPricedList } from './list';
import { LIST_HELP, LIST_OPTIONS, unfitListOptions } from './listOptions';
import { readOptions, readTableChoice, unfitOut } from './options';
import { Progress } from './progress';
import { lostByHand } from './standing';

const help = `archwright check QUOTE --schedule SCHEDULE [options]    a quote against the takeoff, line by line (.csv, .tsv, .xlsx, .pdf)

  --schedule FILE     the schedule the quote is for, or a takeoff workbook: its openings as they stand, its settings
  --out FILE.xlsx     write the workbook there, with a Check sheet; a takeoff there that was changed by hand is refused
  --replace           write over it all the same
  --plain             native formulas only, so that the workbook calculates where the add-in isn't
  --standards FILE    the shop's settings, as for archwright takeoff; among them the length tolerance and the price band
  --page N, --table N of a quote in a PDF, or of the schedule where only that is one: that of this page, the Nth of the list
${LIST_HELP}  --json              print {lines, sums, notQuoted, causes, counts, quoted, ours, otherLines, charges, total, correctedTotal, atStake, atTop, columnsSetAside, passedOver} instead of the text
`;

async function run(args: readonly string[], io: Io): Promise<ExitCode> {
  const options = readOptions(args, {
    schedule: { type: 'string' },
    out: { type: 'string' },
    replace: { type: 'boolean' },
    plain: { type: 'boolean' },
    standards: { type: 'string' },
    page: { type: 'string' },
    table: { type: 'string' },
    json: { type: 'boolean' },
    ...LIST_OPTIONS,
  });
  if (!options.ok) return wrongUsage(io, 'check', options.message);
  const { values, positionals } = options.value;
  const [path, extra] = positionals;
  const { out, schedule: schedulePath } = values;
  if (path === undefined) return wrongUsage(io, 'check', 'check needs the file of a quote.');
  if (extra !== undefined) return wrongUsage(io, 'check', `check reads one quote at a time; got "${extra}" as well.`);
  if (schedulePath === undefined)
    return wrongUsage(io, 'check', 'check needs --schedule, the schedule the quote is for.');
  const unfit = unfitOut(out, [path, schedulePath]);
  if (unfit) return wrongUsage(io, 'check', unfit.message);
  const unfitList = unfitListOptions(values);
  if (unfitList !== null) return wrongUsage(io, 'check', unfitList);
  const choice = readTableChoice(values);
  if (!choice.ok) return wrongUsage(io, 'check', choice.message);

  const progress = new Progress(io, 3);
  progress.show(0, 'Reading');
  const ofQuote = /\.pdf$/i.test(path);
  const onPage = (page: number, of: number) => progress.show(page / (of + 1), `Reading page ${page} of ${of}`);
  const list = await readPricedList(schedulePath, values, { choice: ofQuote ? {} : choice.value, onPage });
  if (!list.ok) return cannotUse(io, list.message, progress);
  const { schedule, standards } = list.value;
  const lost = values.replace ? null : await lostByHand(out, standards);
  if (lost !== null) return cannotUse(io, lost, progress);
  const tables = await readAllTables(path, 'quote', { choice: choice.value, onPage });
  if (!tables.ok) return cannotUse(io, tables.message, progress);
  const table = chooseQuoteTable(tables.value);
  if (table === null) return cannotUse(io, `"${path}" holds no table.`, progress);

  progress.show(1, 'Checking');
  const { taken, boards } = planTakeoff(takeoff(schedule.openings, standards));
  const checked = checkTable(table, taken);
  if (!checked.ok) return cannotUse(io, checked.message, progress);
  const check = checked.value;
  if (out !== undefined) {
    progress.show(2, 'Writing');
    const sheets = workbookSources(schedule, taken, { plain: values.plain ?? false, check, boards, pictures: true });
    const written = await writeWorkbook(out, sheets);
    if (!written.ok) return cannotUse(io, written.message, progress);
  }
  progress.clear();

  if (values.json) io.out(JSON.stringify(checkJson(check), null, 2) + '\n');
  else io.out(`${summaryText(check)}\n`);
  if (out !== undefined) io.say(`Wrote ${out}.`);
  return 0;
}

export const checkCommand: Command = { summary: 'a quote against the takeoff, line by line', help, run };

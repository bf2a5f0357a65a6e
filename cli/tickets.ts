import { benchPictures } from '../src/drawing/benchPictures';
import { ticketsOf } from '../src/tickets/tickets';
import { planTakeoff } from '../src/takeoff/planned';
import { planSetups } from '../src/takeoff/setups';
import { takeoff } from '../src/takeoff/takeoff';
import { purchaseLines, purchaseSheet, purchaseText } from '../src/workbook/purchaseSheet';
import { setupsSheet } from '../src/workbook/setupsSheet';
import { ticketsSheet } from '../src/workbook/ticketsSheet';
import { asWritten } from '../src/workbook/sheet';
import { cannotUse, wrongUsage } from './endings';
import { writeOut, writeWorkbook } from './files';
import type { Command, ExitCode, Io } from './io';
import { readPricedList } from './list';
import { LIST_HELP, LIST_OPTIONS, unfitListOptions } from './listOptions';
import { readOptions, unfitOut } from './options';
import { Progress } from './progress';
import { lostByHand } from './standing';

const help = `archwright tickets SCHEDULE [options]    what each station of the bench needs: glue-up, saw, run, trim, pack

Prints the boards to buy, in a form to send to a yard. SCHEDULE may be a takeoff workbook: its openings as they stand, its settings.

  --out FILE.xlsx     write the sheets Tickets, Setups (a card for each set-up) and Purchase there, as figures, to be printed
  --replace           also over a takeoff that was changed by hand
  --drawings FILE.html  segments on the boards, and the rings as they are glued: a page to be printed
  --prices            the boards to buy with their prices; left out: without
  --standards FILE    the shop's settings, as for archwright takeoff
${LIST_HELP}  --json              print {tickets, purchase, notMade} instead: exact figures, by No.
`;

async function run(args: readonly string[], io: Io): Promise<ExitCode> {
  const options = readOptions(args, {
    out: { type: 'string' },
    replace: { type: 'boolean' },
    drawings: { type: 'string' },
    prices: { type: 'boolean' },
    standards: { type: 'string' },
    json: { type: 'boolean' },
    ...LIST_OPTIONS,
  });
  if (!options.ok) return wrongUsage(io, 'tickets', options.message);
  const { values, positionals } = options.value;
  const [path, extra] = positionals;
  if (path === undefined) return wrongUsage(io, 'tickets', 'tickets needs the file of a schedule.');
  if (extra !== undefined)
    return wrongUsage(io, 'tickets', `tickets reads one schedule at a time; got "${extra}" as well.`);
  const { out, drawings, prices = false } = values;
  const unfit = unfitOut(out, [path]);
  if (unfit) return wrongUsage(io, 'tickets', unfit.message);
  const unfitList = unfitListOptions(values);
  if (unfitList !== null) return wrongUsage(io, 'tickets', unfitList);
  if (drawings !== undefined && !/\.html$/i.test(drawings))
    return wrongUsage(io, 'tickets', `--drawings must name a file that ends in .html; got "${drawings}".`);

  const progress = new Progress(io, 3);
  progress.show(0, 'Reading');
  const list = await readPricedList(path, values);
  if (!list.ok) return cannotUse(io, list.message, progress);
  const { schedule, standards } = list.value;
  const lost = values.replace ? null : await lostByHand(out, standards);
  if (lost !== null) return cannotUse(io, lost, progress);
  const { unit } = standards;

  progress.show(1, 'Planning the boards');
  const { taken, boards } = planTakeoff(takeoff(schedule.openings, standards));
  const tickets = ticketsOf(taken, boards);
  const lines = purchaseLines(boards, standards);
  if (out !== undefined) {
    progress.show(2, 'Writing');
    const written = await writeWorkbook(out, [
      asWritten(ticketsSheet(tickets, unit, schedule.name)),
      asWritten(setupsSheet(planSetups(taken), taken)),
      asWritten(purchaseSheet(lines, unit, prices)),
    ]);
    if (!written.ok) return cannotUse(io, written.message, progress);
  }
  if (drawings !== undefined) {
    const written = await writeOut(drawings, benchPictures(taken, boards, schedule.name));
    if (!written.ok) return cannotUse(io, written.message, progress);
  }
  progress.clear();
  const notMade = taken.openings
    .filter(({ needs }) => needs.length > 0)
    .map(({ no, opening, needs }) => ({ no, mark: opening.mark, needs }));
  if (values.json) {
    const purchase = lines.map(({ price, cost, ...line }) => (prices ? { ...line, price, cost } : line));
    io.out(JSON.stringify({ tickets, purchase, notMade }, null, 2) + '\n');
  } else {
    io.out(purchaseText(lines, unit, prices));
    for (const { no, mark, needs } of notMade) io.out(`No ticket for No. ${no} ${mark}: ${needs.join(' ')}\n`);
  }
  for (const file of [out, drawings]) if (file !== undefined) io.say(`Wrote ${file}.`);
  return 0;
}

export const ticketsCommand: Command = {
  summary: 'what each station of the bench needs, and the boards to buy',
  help,
  run,
};

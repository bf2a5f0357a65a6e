import { proposalFrom } from '../src/job/offered';
import type { Proposal } from '../src/job/proposal';
import { planTakeoff } from '../src/takeoff/planned';
import { takeoff } from '../src/takeoff/takeoff';
import { proposalDrawings } from '../src/workbook/proposal/drawings';
import { proposalSheet } from '../src/workbook/proposal/sheet';
import { cannotUse, wrongUsage } from './endings';
import { writeWorkbook } from './files';
import type { Command, ExitCode, Io } from './io';
import { readPricedList } from './list';
import { LIST_HELP, LIST_OPTIONS, unfitListOptions } from './listOptions';
import { readOptions, unfitOut } from './options';
import { Progress } from './progress';
import { lostByHand } from './standing';

const help = `archwright proposal SCHEDULE --out FILE.xlsx [options]    what goes to the customer: one sheet, prices and conditions

SCHEDULE may be a takeoff workbook: its openings as they stand, its settings and its job.

The file holds that sheet alone: amounts as figures, sums as formulas, nothing of cost, margin or the shop's settings.

  --out FILE.xlsx     write it there
  --replace           also over a takeoff that was changed by hand
  --job FILE          who it is for and by which rules it is charged: .json ({"customer": "…", "taxRate": 0.0625}), or a workbook
                      whose Standards sheet holds the job; left out: blank, every price as it is
  --standards FILE    the shop's settings, as for archwright takeoff; a workbook's job is taken along
${LIST_HELP}`;

async function run(args: readonly string[], io: Io): Promise<ExitCode> {
  const options = readOptions(args, {
    out: { type: 'string' },
    replace: { type: 'boolean' },
    job: { type: 'string' },
    standards: { type: 'string' },
    ...LIST_OPTIONS,
  });
  if (!options.ok) return wrongUsage(io, 'proposal', options.message);
  const { values, positionals } = options.value;
  const [path, extra] = positionals;
  if (path === undefined) return wrongUsage(io, 'proposal', 'proposal needs the file of a schedule.');
  if (extra !== undefined)
    return wrongUsage(io, 'proposal', `proposal reads one schedule at a time; got "${extra}" as well.`);
  if (values.out === undefined) return wrongUsage(io, 'proposal', 'proposal needs --out, the file to write.');
  const unfit = unfitOut(values.out, [path]);
  if (unfit) return wrongUsage(io, 'proposal', unfit.message);
  const unfitList = unfitListOptions(values);
  if (unfitList !== null) return wrongUsage(io, 'proposal', unfitList);

  const progress = new Progress(io, 3);
  progress.show(0, 'Reading');
  const list = await readPricedList(path, values);
  if (!list.ok) return cannotUse(io, list.message, progress);
  const { schedule, standards, job } = list.value;
  const lost = values.replace ? null : await lostByHand(values.out, standards);
  if (lost !== null) return cannotUse(io, lost, progress);

  progress.show(1, 'Computing');
  const { taken } = planTakeoff(takeoff(schedule.openings, standards));
  const proposal = proposalFrom(taken, job);
  progress.show(2, 'Writing');
  const written = await writeWorkbook(values.out, [proposalSheet(proposal, null, proposalDrawings(proposal, taken))]);
  if (!written.ok) return cannotUse(io, written.message, progress);
  progress.clear();
  io.out(summary(proposal));
  io.say(`Wrote ${values.out}.`);
  return 0;
}

function summary({
  lines,
  extras,
  alternates,
  notPriced,
  extrasNotPriced,
  unknownAlternates,
  total,
}: Proposal): string {
  const said = [`${lines.length + extras.length} lines, total ${total.toFixed(2)}.`];
  if (alternates.length > 0)
    said.push(`Alternates, not in the total: ${alternates.map(({ mark }) => mark).join(', ')}.`);
  for (const mark of unknownAlternates) said.push(`Alternate ${mark}: no opening has this mark.`);
  for (const words of extrasNotPriced) said.push(`Not priced: ${words}`);
  for (const { mark, needs } of notPriced)
    said.push(`Not priced: ${mark === '' ? 'no mark' : mark}. ${needs.join(' ')}`);
  return said.map((line) => line + '\n').join('');
}

export const proposalCommand: Command = { summary: 'the sheet that goes to the customer', help, run };

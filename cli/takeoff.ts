import { resolve } from 'node:path';
import { readSchedule } from '../src/schedule/readSchedule';
import { defaultStandards } from '../src/standards';
import { planBoards } from '../src/takeoff/boards';
import { partsOf } from '../src/takeoff/parts';
import { planSetups } from '../src/takeoff/setups';
import { takeoff } from '../src/takeoff/takeoff';
import { workbookSources } from '../src/workbook/workbook';
import { readTable, writeOut } from './files';
import { cannotUse, wrongUsage } from './endings';
import type { Command, ExitCode, Io } from './io';
import { readOptions } from './options';
import { Progress } from './progress';
import { readStandardsFile } from './standardsFile';
import { attentionLines, openingJson, setupsJson, stockJson, takeoffTable } from './takeoffReport';

const help = `archwright takeoff SCHEDULE [options]    a takeoff from a schedule of openings (.csv, .tsv, .xlsx)

  --out FILE.xlsx     write the workbook there
  --plain             native formulas only, so that the workbook calculates where the add-in isn't
  --standards FILE    the shop's settings: .json ({"reveal": 0.25}), or a table with a setting and its value in each row,
                      such as the Standards sheet of a workbook
  --json              print {openings, problems, totals, setups, stock} instead of the table
`;

async function run(args: readonly string[], io: Io): Promise<ExitCode> {
  const options = readOptions(args, {
    out: { type: 'string' },
    plain: { type: 'boolean' },
    standards: { type: 'string' },
    json: { type: 'boolean' },
  });
  if (!options.ok) return wrongUsage(io, 'takeoff', options.message);
  const { values, positionals } = options.value;
  const [path, extra] = positionals;
  if (path === undefined) return wrongUsage(io, 'takeoff', 'takeoff needs the file of a schedule.');
  if (extra !== undefined)
    return wrongUsage(io, 'takeoff', `takeoff reads one schedule at a time; got "${extra}" as well.`);
  if (values.out !== undefined && !/\.xlsx$/i.test(values.out)) {
    return wrongUsage(io, 'takeoff', `--out must name a file that ends in .xlsx; got "${values.out}".`);
  }
  if (values.out !== undefined && resolve(values.out) === resolve(path)) {
    return wrongUsage(io, 'takeoff', `--out would write over the schedule "${path}".`);
  }

  const progress = new Progress(io, 4);
  progress.show(0, 'Reading');
  const standards =
    values.standards === undefined
      ? { ok: true as const, value: defaultStandards() }
      : await readStandardsFile(values.standards);
  if (!standards.ok) return cannotUse(io, standards.message, progress);
  const table = await readTable(path);
  if (!table.ok) return cannotUse(io, table.message, progress);
  const schedule = readSchedule(table.value, standards.value);
  if (!schedule.ok) return cannotUse(io, schedule.message, progress);

  progress.show(1, 'Computing');
  const taken = takeoff(schedule.value.openings, standards.value);
  progress.show(2, 'Planning the boards');
  const boards = planBoards(partsOf(taken), standards.value);

  if (values.out !== undefined) {
    progress.show(3, 'Writing');
    const { writeXlsx } = await import('../src/workbook/xlsx');
    const bytes = writeXlsx(workbookSources(schedule.value, taken, { plain: values.plain ?? false, boards }));
    if (!bytes.ok) return cannotUse(io, bytes.message, progress);
    const written = await writeOut(values.out, bytes.value);
    if (!written.ok) return cannotUse(io, written.message, progress);
  }
  progress.clear();

  if (values.json) {
    const json = {
      openings: taken.openings.map(openingJson),
      problems: taken.problems,
      totals: taken.totals,
      setups: setupsJson(planSetups(taken)),
      stock: stockJson(boards),
    };
    io.out(JSON.stringify(json, null, 2) + '\n');
  } else {
    io.out(takeoffTable(taken));
    const lines = attentionLines(taken, schedule.value, boards);
    if (lines.length > 0) io.out(`\nNeeds attention:\n${lines.map((line) => `  ${line}\n`).join('')}`);
  }
  io.say(values.out === undefined ? 'No workbook was written: name one with --out.' : `Wrote ${values.out}.`);
  return 0;
}

export const takeoffCommand: Command = { summary: "a builder's schedule in, a takeoff workbook out", help, run };

import type { Revision } from '../src/revision/compare';
import { compareTakeoffs } from '../src/revision/listed';
import { takenOver } from '../src/revision/takeOver';
import { figureLabel, valueText } from '../src/revision/words';
import { ok, type Result } from '../src/result';
import type { Schedule } from '../src/schedule/opening';
import { chooseTable } from '../src/schedule/readTables';
import { readSchedule } from '../src/schedule/readSchedule';
import type { Standards } from '../src/standards';
import { planTakeoff } from '../src/takeoff/planned';
import { takeoff } from '../src/takeoff/takeoff';
import type { Unit } from '../src/unit';
import { revisionSheet } from '../src/workbook/revisionSheet';
import { openingsOfTakeoff } from '../src/workbook/takeoff/openings';
import { workbookSources } from '../src/workbook/workbook';
import { cannotUse, wrongUsage } from './endings';
import { readAllTables, writeWorkbook } from './files';
import type { Command, ExitCode, Io } from './io';
import { readOptions, unfitOut } from './options';
import { Progress } from './progress';
import { readStandardsFile } from './standardsFile';

const help = `archwright compare OLD NEW [options]    a revised schedule against the one before (.csv, .tsv, .xlsx)

Openings are known by mark and figures, never by their rows. A takeoff workbook may stand for a schedule: its Takeoff is read as
it is, changes by hand included.

  --out FILE.xlsx     write the takeoff of NEW there, with a Revision sheet; openings that were there keep their numbers
  --standards FILE    the shop's settings, as for archwright takeoff
  --json              print {added, dropped, renamed, changed, unchanged, shared, total} instead of the text
`;

async function run(args: readonly string[], io: Io): Promise<ExitCode> {
  const options = readOptions(args, {
    out: { type: 'string' },
    standards: { type: 'string' },
    json: { type: 'boolean' },
  });
  if (!options.ok) return wrongUsage(io, 'compare', options.message);
  const { values, positionals } = options.value;
  const [oldPath, newPath, extra] = positionals;
  if (oldPath === undefined || newPath === undefined)
    return wrongUsage(io, 'compare', 'compare needs two files: the schedule before and the revised one.');
  if (extra !== undefined) return wrongUsage(io, 'compare', `compare reads two files; got "${extra}" as well.`);
  const { out } = values;
  const unfit = unfitOut(out, [oldPath, newPath]);
  if (unfit) return wrongUsage(io, 'compare', unfit.message);

  const progress = new Progress(io, 3);
  progress.show(0, 'Reading');
  const standards = await readStandardsFile(values.standards);
  if (!standards.ok) return cannotUse(io, standards.message, progress);
  const old = await readList(oldPath, standards.value);
  if (!old.ok) return cannotUse(io, old.message, progress);
  const now = await readList(newPath, standards.value);
  if (!now.ok) return cannotUse(io, now.message, progress);

  progress.show(1, 'Computing');
  const before = planTakeoff(takeoff(old.value.openings, standards.value)).taken;
  const listed = now.value.openings.map((opening) => ({ ...opening, no: undefined }));
  const revision = compareTakeoffs(before, planTakeoff(takeoff(listed, standards.value)).taken);
  if (out !== undefined) {
    progress.show(2, 'Writing');
    const schedule = takenOver(now.value, revision, before);
    const taken = takeoff(schedule.openings, standards.value, { numbersGiven: before.numbersGiven });
    const names = { old: old.value.name, now: now.value.name };
    const sheets = workbookSources(schedule, taken, {
      revision: revisionSheet(revision, names, standards.value.unit),
    });
    const written = await writeWorkbook(out, sheets);
    if (!written.ok) return cannotUse(io, written.message, progress);
  }
  progress.clear();
  io.out(
    values.json ? JSON.stringify(revisionJson(revision), null, 2) + '\n' : revisionText(revision, standards.value.unit),
  );
  if (out !== undefined) io.say(`Wrote ${out}.`);
  return 0;
}

/** The openings of a file: of our Takeoff as it stands where the file is a workbook of ours, else of its schedule. */
async function readList(path: string, standards: Standards): Promise<Result<Schedule>> {
  const tables = await readAllTables(path);
  if (!tables.ok) return tables;
  const takeoffTable = tables.value.find(({ name }) => name === 'Takeoff');
  const openings = takeoffTable ? openingsOfTakeoff(takeoffTable, standards.unit) : null;
  if (openings !== null) {
    const nothing = { headings: [], meaning: [], headingRow: null, remarks: [], passedOver: [] };
    return ok({ name: path, ...nothing, openings });
  }
  const table = chooseTable(tables.value);
  return table === null ? { ok: false, message: `"${path}" holds no table.` } : readSchedule(table, standards);
}

export function revisionJson({ added, dropped, renamed, changed, unchanged, shared, total }: Revision) {
  return {
    added: added.map(({ mark }) => mark),
    dropped: dropped.map(({ mark }) => mark),
    renamed: renamed.map(({ old, new: now }) => [old.mark, now.mark]),
    changed: changed.map(({ new: now, figures, money }) => ({ mark: now.mark, figures, money })),
    unchanged: unchanged.length,
    shared,
    total,
  };
}

function revisionText(revision: Revision, unit: Unit): string {
  const { added, dropped, renamed, changed, unchanged, shared, total } = revision;
  const money = (amount: number) => `${amount < 0 ? '-' : '+'}${Math.abs(amount).toFixed(2)}`;
  const lines = [
    ...added.map(({ mark, price }) => `Added    ${named(mark)}  ${price === null ? 'not priced' : money(price)}`),
    ...dropped.map(
      ({ mark, price }) => `Dropped  ${named(mark)}  ${price === null ? 'was not priced' : money(-price)}`,
    ),
    ...changed.map(({ new: now, figures, money: moved }) => {
      const said = figures.map(
        ({ figure, from, to }) =>
          `${figureLabel(figure)} ${valueText(figure, from, unit)} to ${valueText(figure, to, unit)}`,
      );
      return `Changed  ${named(now.mark)}  ${said.join(', ')}  ${money(moved)}`;
    }),
    ...renamed.map(
      ({ old, new: now }) =>
        `Renamed  ${named(old.mark)} to ${named(now.mark)}: the same figures; are they the same opening?`,
    ),
    `Unchanged: ${unchanged.length}`,
    `Their part of what is shared: ${money(shared)}`,
    `Total: ${total.old.toFixed(2)} before, ${total.new.toFixed(2)} now (${money(Math.round((total.new - total.old) * 100) / 100)})`,
  ];
  return lines.map((line) => line + '\n').join('');
}

function named(mark: string): string {
  return mark === '' ? '(no mark)' : mark;
}

export const compareCommand: Command = { summary: 'a revised schedule against the one before', help, run };

import { addUp } from '../src/rounding';
import type { Revision } from '../src/revision/compare';
import { figureLabel, priceText, valueText } from '../src/revision/words';
import { ok, type Result } from '../src/result';
import type { Table } from '../src/schedule/opening';
import type { Standards } from '../src/standards';
import { planTakeoff } from '../src/takeoff/planned';
import { takeoff } from '../src/takeoff/takeoff';
import type { Unit } from '../src/unit';
import { readBook } from '../src/workbook/readBook';
import { keptFrom, NOTHING_KEPT, type Kept } from '../src/workbook/refill';
import { revise, type Revised } from '../src/workbook/revise';
import { revisedList } from '../src/workbook/revisedList';
import { revisionSheet } from '../src/workbook/revisionSheet';
import { workbookSources } from '../src/workbook/workbook';
import { cannotUse, wrongUsage } from './endings';
import { readAllTables, readBytes, writeWorkbook } from './files';
import type { Command, ExitCode, Io } from './io';
import { settingsIn } from './list';
import { readOptions, unfitOut } from './options';
import { Progress } from './progress';
import { readStandardsFile } from './standardsFile';
import { beforeIn, lostByHand } from './standing';

const help = `archwright compare OLD NEW [options]    a revised schedule against the one before (.csv, .tsv, .xlsx)

Openings are known by mark and figures, never by their rows; those of two states of one takeoff workbook by their No. A takeoff
workbook may stand for a schedule: its Takeoff is read as it is. Inputs that were changed there by hand are kept where NEW leaves
them as they were listed; those that are not kept are named.

  --out FILE.xlsx     write the takeoff of NEW there, with a Revision sheet; openings that were there keep their numbers
  --replace           also over a takeoff that was changed by hand
  --standards FILE    the shop's settings, as for archwright takeoff; left out: those of OLD, or of NEW, where it is a takeoff workbook
  --json              print {added, dropped, renamed, changed, unchanged, shared, total} instead of the text
`;

async function run(args: readonly string[], io: Io): Promise<ExitCode> {
  const options = readOptions(args, {
    out: { type: 'string' },
    replace: { type: 'boolean' },
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
  const oldTables = await readAllTables(oldPath);
  if (!oldTables.ok) return cannotUse(io, oldTables.message, progress);
  const newTables = await readAllTables(newPath);
  if (!newTables.ok) return cannotUse(io, newTables.message, progress);
  const standards = await settingsFor(values.standards, [oldTables.value, newTables.value]);
  if (!standards.ok) return cannotUse(io, standards.message, progress);
  const lost = values.replace ? null : await lostByHand(out, standards.value);
  if (lost !== null) return cannotUse(io, lost, progress);
  const old = revisedList(oldTables.value, oldPath, standards.value);
  if (!old.ok) return cannotUse(io, old.message, progress);
  const now = revisedList(newTables.value, newPath, standards.value);
  if (!now.ok) return cannotUse(io, now.message, progress);
  const kept = old.value.ours ? await editsIn(oldPath, standards.value) : NOTHING_KEPT;

  progress.show(1, 'Computing');
  const numbersGiven = kept.numbersGiven;
  const before = planTakeoff(takeoff(old.value.schedule.openings, standards.value, { numbersGiven })).taken;
  const { schedule, ours } = now.value;
  const revised = revise({ before, kept, schedule, ours: ours && old.value.ours });
  const { revision } = revised;
  if (out !== undefined) {
    progress.show(2, 'Writing');
    const names = { old: old.value.schedule.name, now: schedule.name };
    const sheets = workbookSources(revised.schedule, revised.taken, {
      boards: revised.boards,
      pictures: true,
      revision: revisionSheet(revision, names, standards.value.unit),
    });
    const written = await writeWorkbook(out, sheets);
    if (!written.ok) return cannotUse(io, written.message, progress);
  }
  progress.clear();
  io.out(
    values.json ? JSON.stringify(revisionJson(revision), null, 2) + '\n' : revisionText(revised, standards.value.unit),
  );
  if (out !== undefined) io.say(`Wrote ${out}.`);
  return 0;
}

/** Of the file that is named, else of the first of the lists that is a takeoff workbook, else the defaults. */
async function settingsFor(
  named: string | undefined,
  lists: readonly (readonly Table[])[],
): Promise<Result<Standards>> {
  for (const tables of named === undefined ? lists : []) {
    const own = settingsIn(tables);
    if (!own.ok) return own;
    if (own.value !== null) return ok(own.value.standards);
  }
  return readStandardsFile(named);
}

/** What was changed by hand in a takeoff workbook since it was filled. */
async function editsIn(path: string, { unit }: Standards): Promise<Kept> {
  const bytes = await readBytes(path);
  const book = bytes.ok ? readBook(bytes.value) : bytes;
  const before = book.ok ? beforeIn(book.value) : null;
  return before === null || before.schedule === null ? NOTHING_KEPT : keptFrom(before, unit);
}

function revisionJson({ added, dropped, renamed, changed, unchanged, shared, total }: Revision) {
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

function revisionText({ revision, numbered, said }: Revised, unit: Unit): string {
  const { added, dropped, renamed, changed, unchanged, shared, total } = revision;
  const money = (amount: number) => `${amount < 0 ? '-' : '+'}${Math.abs(amount).toFixed(2)}`;
  const lines = [
    ...(numbered ? ['Openings are known by their No.'] : []),
    ...added.map((one) => `Added    ${named(one.mark)}  ${priceText(one, false, money)}`),
    ...dropped.map((one) => `Dropped  ${named(one.mark)}  ${priceText(one, true, money)}`),
    ...changed.map(({ new: now, figures, money: moved }) => {
      const said = figures.map(
        ({ figure, from, to }) =>
          `${figureLabel(figure)} ${valueText(figure, from, unit)} to ${valueText(figure, to, unit)}`,
      );
      return `Changed  ${named(now.mark)}  ${said.join(', ')}  ${money(moved)}`;
    }),
    ...renamed.map(
      ({ old, new: now }) =>
        `Renamed  ${named(old.mark)} to ${named(now.mark)}${numbered ? '' : ': the same figures; are they the same opening?'}`,
    ),
    `Unchanged: ${unchanged.length}`,
    `Their part of what is shared: ${money(shared)}`,
    `Total: ${total.old.toFixed(2)} before, ${total.new.toFixed(2)} now (${money(addUp([total.new, -total.old]))})`,
    ...said,
  ];
  return lines.map((line) => line + '\n').join('');
}

function named(mark: string): string {
  return mark === '' ? '(no mark)' : mark;
}

export const compareCommand: Command = { summary: 'a revised schedule against the one before', help, run };

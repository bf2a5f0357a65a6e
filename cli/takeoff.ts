import { isDeepStrictEqual } from 'node:util';
import { aloneIn } from '../src/takeoff/alone';
import { costKinds } from '../src/takeoff/costKinds';
import { planTakeoff } from '../src/takeoff/planned';
import { wantedBy } from '../src/takeoff/segmentChange';
import { segmentSavings, withSegments } from '../src/takeoff/segmentSavings';
import { planSetups } from '../src/takeoff/setups';
import { takeoffWithEdits } from '../src/workbook/withEdits';
import { ok } from '../src/result';
import { readKept, type KeptAnswers } from '../src/schedule/keptAnswers';
import type { Book } from '../src/workbook/sheet';
import { workbookSources } from '../src/workbook/workbook';
import { cannotUse, wrongUsage } from './endings';
import { writeWorkbook } from './files';
import type { Command, ExitCode, Io } from './io';
import { readPricedList } from './list';
import { LIST_HELP, LIST_OPTIONS, unfitListOptions } from './listOptions';
import { readOptions, readTableChoice, unfitOut } from './options';
import { Progress } from './progress';
import { segmentsText } from './segmentsReport';
import { readStanding, unfitToFillAgain } from './standing';
import { notSetJson, openingJson, readingJson, setupsJson, stockJson, totalsJson } from './takeoffJson';
import { attentionLines, costLines, takeoffTable } from './takeoffReport';

const help = `archwright takeoff SCHEDULE [options]    a takeoff from a schedule of openings (.csv, .tsv, .xlsx, .pdf)

  --out FILE.xlsx     write the workbook there; a takeoff that stands there is filled again: what was changed by hand is
                      kept, and so are the answers given for a list of the same name and headings
  --replace           write a new workbook over whatever stands there
  --plain             native formulas only, so that the workbook calculates where the add-in isn't
  --standards FILE    the shop's settings: .json ({"reveal": 0.25}), or a table with a setting and its value in each row,
                      such as the Standards sheet of a workbook
  --page N, --table N in a PDF with several tables that read like a schedule: that of this page, the Nth of the list
  --job FILE          who it is for and how it is charged, as for archwright proposal: the workbook has a Proposal sheet then
  --segments show     also say where other numbers of segments cost less, boards and gluing together; --segments take
                      writes them as segments wanted
${LIST_HELP}  --json              print {openings, problems, totals, costs, setups, stock, questions, passedOver, unread, remarks, …} instead of the
                      table
`;

async function run(args: readonly string[], io: Io): Promise<ExitCode> {
  const options = readOptions(args, {
    out: { type: 'string' },
    replace: { type: 'boolean' },
    plain: { type: 'boolean' },
    standards: { type: 'string' },
    page: { type: 'string' },
    table: { type: 'string' },
    json: { type: 'boolean' },
    job: { type: 'string' },
    segments: { type: 'string' },
    ...LIST_OPTIONS,
  });
  if (!options.ok) return wrongUsage(io, 'takeoff', options.message);
  const { values, positionals } = options.value;
  const [path, extra] = positionals;
  const { out } = values;
  if (path === undefined) return wrongUsage(io, 'takeoff', 'takeoff needs the file of a schedule.');
  if (extra !== undefined)
    return wrongUsage(io, 'takeoff', `takeoff reads one schedule at a time; got "${extra}" as well.`);
  const unfit = unfitOut(out, [path]);
  if (unfit) return wrongUsage(io, 'takeoff', unfit.message);
  const { segments } = values;
  if (segments !== undefined && segments !== 'show' && segments !== 'take')
    return wrongUsage(io, 'takeoff', `--segments must be show or take; got "${segments}".`);
  const choice = readTableChoice(values);
  if (!choice.ok) return wrongUsage(io, 'takeoff', choice.message);
  const unfitList = unfitListOptions(values);
  if (unfitList !== null) return wrongUsage(io, 'takeoff', unfitList);

  const progress = new Progress(io, 3);
  progress.show(0, 'Reading');
  const standing = out === undefined || values.replace ? ok(null) : await readStanding(out);
  if (!standing.ok) return cannotUse(io, standing.message, progress);
  const again = standing.value;
  const lost = again && unfitToFillAgain(out!, again, values.job === undefined ? [] : ['Proposal']);
  if (lost) return cannotUse(io, lost, progress);
  const list = await readPricedList(path, values, {
    standing: again,
    kept: readKept(again?.settings[ANSWERS] ?? ''),
    choice: choice.value,
    onPage: (page, of) => progress.show(page / (of + 1), `Reading page ${page} of ${of}`),
  });
  if (!list.ok) return cannotUse(io, list.message, progress);
  const { schedule, standards, job, answered } = list.value;

  progress.show(1, 'Computing and planning the boards');
  const filled = takeoffWithEdits({
    ...{ schedule, standards, before: again?.before ?? null },
  });
  const { held, said, repriced, ownColumns } = filled;
  const savings = segments === undefined ? null : segmentSavings(filled.taken);
  const { taken, boards } =
    segments === 'take' && savings!.changes.length > 0
      ? planTakeoff(withSegments(filled.taken, wantedBy(savings!.changes)), {}, held)
      : filled;

  if (out !== undefined) {
    progress.show(2, 'Writing');
    const sheets = workbookSources(schedule, taken, {
      ...{ plain: values.plain ?? false, boards, held, ownColumns, pictures: true },
      // What was taken over is in the rows; nobody looked again.
      ...{ savings: segments === 'show' ? savings : null },
      ...{ job, proposal: values.job !== undefined },
    });
    const written = await writeWorkbook(out, sheets, settingsWith(again?.settings ?? {}, answered));
    if (!written.ok) return cannotUse(io, written.message, progress);
  }
  progress.clear();

  if (values.json) {
    const alone = aloneIn(taken);
    const json = {
      openings: taken.openings.map((row) => ({
        ...openingJson(row, taken.standards),
        alonePrice: row.cost === null ? null : alone(row),
      })),
      problems: taken.problems,
      notSet: notSetJson(taken.standards),
      totals: totalsJson(taken, job),
      costs: costKinds(taken),
      setups: setupsJson(planSetups(taken)),
      stock: stockJson(boards, taken),
      ...(savings === null ? {} : { segments: savings }),
      ...readingJson(schedule),
    };
    io.out(JSON.stringify(json, null, 2) + '\n');
  } else {
    io.out(takeoffTable(taken, job));
    const costs = costLines(taken);
    if (costs.length > 0) io.out(`\nWhat the prices pay for:\n${costs.map((line) => `  ${line}\n`).join('')}`);
    const lines = attentionLines(taken, schedule, boards);
    if (lines.length > 0) io.out(`\nNeeds attention:\n${lines.map((line) => `  ${line}\n`).join('')}`);
  }
  if (savings !== null && !values.json) io.out(`\n${segmentsText(savings, segments === 'take')}`);
  for (const sentence of [...repriced, ...said]) io.say(sentence);
  if (again && !isDeepStrictEqual(again.standards, standards))
    io.say(`The settings are those of ${values.standards}; the workbook's own Standards were others.`);
  io.say(
    out === undefined ? 'No workbook was written: name one with --out.' : `${again ? 'Filled again' : 'Wrote'} ${out}.`,
  );
  return 0;
}

/** Under which the answers stand among a workbook's small texts. */
const ANSWERS = 'archwright.answers';

/** The small texts of the workbook with what was answered; none where there is nothing to keep. */
function settingsWith(settings: Book['settings'], answered: KeptAnswers | null): Book['settings'] | undefined {
  const { [ANSWERS]: _before, ...others } = settings;
  const has = answered !== null && Object.keys(answered.answers).length > 0;
  const all = has ? { ...others, [ANSWERS]: JSON.stringify(answered) } : others;
  return Object.keys(all).length === 0 ? undefined : all;
}

export const takeoffCommand: Command = { summary: "a builder's schedule in, a takeoff workbook out", help, run };

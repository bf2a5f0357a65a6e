import { join } from 'node:path';
import { jobFiles, pairsOf, templateFiles, type TemplateFile } from '../src/drawing/template';
import { ok, refuse, type Result } from '../src/result';
import { planSetups, type Setup } from '../src/takeoff/setups';
import { takeoff, type Takeoff } from '../src/takeoff/takeoff';
import { cannotUse, wrongUsage } from './endings';
import { makeFolder, writeOut } from './files';
import type { Command, ExitCode, Io } from './io';
import { readPricedList } from './list';
import { LIST_HELP, LIST_OPTIONS, unfitListOptions } from './listOptions';
import { readNumber, readOptions } from './options';

const help = `archwright template MARK --schedule FILE --out DIR [options]    drawings of the guide boards an opening needs

For each pair of guide boards: a full-size DXF (release 12) and SVG, a letter-size overview that is not for tracing, and a
table of ordinates where the radius is too long for a trammel. An elliptical or three-centered head needs two pairs.

  --schedule FILE     the schedule of openings, or a takeoff workbook: its openings as they stand, its settings
  --out DIR           the folder to write into; made where it is missing
  --all               the guide boards of every opening, in place of MARK; with them a page of pictures and one table of all ordinates
  --standards FILE    the shop's settings, as for takeoff
  --bed-line 5        from the center line to each of the two bed lines; left out: the shop's setting
  --trammel 120       a blank whose outside radius is longer than this gets ordinates; left out: 120 inches, as on the tickets
${LIST_HELP}`;

async function run(args: readonly string[], io: Io): Promise<ExitCode> {
  const options = readOptions(args, {
    schedule: { type: 'string' },
    out: { type: 'string' },
    all: { type: 'boolean' },
    standards: { type: 'string' },
    'bed-line': { type: 'string' },
    trammel: { type: 'string' },
    ...LIST_OPTIONS,
  });
  if (!options.ok) return wrongUsage(io, 'template', options.message);
  const { values, positionals } = options.value;
  const [mark, extra] = positionals;
  if (values.all ? mark !== undefined : mark === undefined || extra !== undefined) {
    return wrongUsage(io, 'template', 'template needs the mark of one opening, or --all.');
  }
  if (values.schedule === undefined)
    return wrongUsage(io, 'template', 'template needs --schedule, the file the opening stands in.');
  if (values.out === undefined) return wrongUsage(io, 'template', 'template needs --out, the folder to write into.');
  const unfitList = unfitListOptions(values);
  if (unfitList !== null) return wrongUsage(io, 'template', unfitList);
  const bedLine = optionalLength('bed-line', values['bed-line']);
  if (!bedLine.ok) return wrongUsage(io, 'template', bedLine.message);
  const trammel = optionalLength('trammel', values.trammel);
  if (!trammel.ok) return wrongUsage(io, 'template', trammel.message);

  const list = await readPricedList(values.schedule, values);
  if (!list.ok) return cannotUse(io, list.message);
  const { schedule, standards } = list.value;
  const taken = takeoff(schedule.openings, standards);
  const setups = mark === undefined ? ok(curved(planSetups(taken).setups)) : setupsOf(mark, taken);
  if (!setups.ok) return cannotUse(io, setups.message);

  const files: TemplateFile[] = [];
  const pairs = pairsOf(setups.value, standards, {
    ...(bedLine.value === undefined ? {} : { bedLine: bedLine.value }),
    ...(trammel.value === undefined ? {} : { trammel: trammel.value }),
  });
  if (!pairs.ok) return cannotUse(io, `${pairs.message}.`);
  for (const { name, boards } of pairs.value) {
    const made = templateFiles(boards, name);
    if (!made.ok) return cannotUse(io, `${name}: ${made.message}.`);
    files.push(...made.value);
  }
  if (mark === undefined) {
    const together = jobFiles(pairs.value);
    if (!together.ok) return cannotUse(io, `${together.message}.`);
    files.push(...together.value);
  }
  const folder = await makeFolder(values.out);
  if (!folder.ok) return cannotUse(io, folder.message);
  for (const { name, content } of files) {
    const path = join(values.out, name);
    const written = await writeOut(path, content);
    if (!written.ok) return cannotUse(io, written.message);
    io.out(`${path}\n`);
  }
  return 0;
}

/** The guide sets an opening runs through; a sentence where there are none. */
function setupsOf(mark: string, taken: Takeoff): Result<readonly Setup[]> {
  const wanted = mark.trim().toLowerCase();
  const openings = taken.openings.filter((row) => row.opening.mark.trim().toLowerCase() === wanted);
  if (openings.length === 0) {
    const marks = taken.openings.map((row) => row.opening.mark).filter((each) => each !== '');
    const some =
      marks.length > 12 ? `${marks.slice(0, 12).join(', ')} and ${marks.length - 12} more` : marks.join(', ');
    return refuse(`The schedule has no opening "${mark}"; it has ${some || 'no marks'}.`);
  }
  const needs = openings.flatMap((row) => row.needs);
  if (needs.length > 0) return refuse(`${mark} can't be drawn yet. ${needs.join(' ')}`);
  const rows = new Set(openings.map((row) => row.opening.row));
  const setups = curved(planSetups(taken).setups).filter((setup) => setup.pieces.some((piece) => rows.has(piece.row)));
  return setups.length === 0 ? refuse(`${mark} is straight: it needs no guide boards.`) : ok(setups);
}

function curved(setups: readonly Setup[]): readonly Setup[] {
  return setups.filter((setup) => setup.insideRadius !== null);
}

function optionalLength(name: string, given: string | undefined): Result<number | undefined> {
  return given === undefined ? ok(undefined) : readNumber(name, given, 0.001, 1e6);
}

export const template: Command = { summary: 'drawings of guide boards (DXF, SVG)', help, run };

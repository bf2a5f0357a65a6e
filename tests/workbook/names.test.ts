import { readdirSync, readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { HEAD_SHAPES } from '../../src/head/head';
import { cellName, defaultStandards, SETTINGS, withSettings, type Setting, type Standards } from '../../src/standards';
import { planBoards } from '../../src/takeoff/boards';
import { FIGURES, figureOf } from '../../src/takeoff/figures';
import { MONEY_FIGURES } from '../../src/takeoff/moneyFigures';
import { takeoff } from '../../src/takeoff/takeoff';
import { partsOf } from '../../src/workbook/formulas/lexer';
import { workbookSheets } from '../../src/workbook/workbook';
import { otherValue } from '../otherValue';
import { random } from '../random';
import { randomOpenings, scheduleOf } from '../takeoff/openings';
import { valueOf } from '../value';

/** Guides that near radii share are in a plain workbook's formulas only where the shop shares them. */
const STANDARDS = valueOf(withSettings(defaultStandards(), { guideTolerance: 3 }));
const OPENINGS = HEAD_SHAPES.flatMap((head) => randomOpenings(1, random(9), STANDARDS, [head]));
const HALF = OPENINGS.filter((_, at) => at % 2 === 0);
/** Nothing is planned: it would take long, and brings no name. */
const boards = planBoards([], STANDARDS);

/** The names in the formulas of a whole workbook, and those that it defines. */
function namesIn(plain: boolean) {
  const taken = takeoff(OPENINGS, STANDARDS);
  const sheets = workbookSheets(scheduleOf(OPENINGS), taken, { plain, proposal: true, boards });
  const formulas = sheets.flatMap(({ rows }) => rows.flat()).flatMap((cell) => cell?.formula ?? []);
  const parts = formulas.flatMap((formula) => partsOf(formula));
  return {
    used: new Set(parts.flatMap(({ kind, text }) => (kind === 'name' ? [text] : []))),
    defined: new Set(sheets.flatMap(({ names = [] }) => names.map(({ name }) => name))),
  };
}

it.each([true, false])('every name in a formula is one that its workbook defines (plain: %s)', (plain) => {
  const { used, defined } = namesIn(plain);
  expect(used.size).toBeGreaterThan(plain ? 50 : 3);
  expect([...used].filter((name) => !defined.has(name))).toEqual([]);
});

const FILES = readdirSync('src', { recursive: true, encoding: 'utf8' }).filter((path) => path.endsWith('.ts'));
const sourceBut = (left: string) =>
  FILES.filter((path) => path !== left)
    .map((path) => readFileSync(`src/${path}`, 'utf8'))
    .join('\n');

/** What is set before a heading that is shown for something else, too: what a list gave, a ring that is not the crown's. */
const BEFORE = /^(?:Read|Haunch|Second haunch|Third haunch): /;

it.each([true, false])('every heading stands in the source as the sheets show it (plain: %s)', (plain) => {
  const taken = takeoff(OPENINGS, STANDARDS);
  const sheets = workbookSheets(scheduleOf(OPENINGS), taken, { plain, proposal: true, boards });
  const cells = sheets.flatMap(({ name, rows }) => rows.flat().map((cell) => ({ name, cell })));
  const headings = new Set(cells.flatMap(({ cell }) => (cell?.style === 'heading' ? [String(cell.value)] : [])));
  expect(headings.size).toBeGreaterThan(60);
  const source = sourceBut('').toLowerCase();
  const found = (heading: string) => source.includes(heading.replace(BEFORE, '').toLowerCase());
  expect([...headings].filter((heading) => !found(heading))).toEqual([]);
});

it('every setting is used where something is worked out', () => {
  const source = sourceBut('standards.ts');
  expect(SETTINGS.filter(({ key }) => !new RegExp(`\\b${key}\\b`).test(source))).toEqual([]);
});

function figuresBy(standards: Standards): string {
  const taken = takeoff(HALF, standards);
  return JSON.stringify(
    taken.openings.map((row) => [
      FIGURES.map((figure) => (figure.name === 'look at' ? '' : figureOf(figure, row, 'in'))),
      MONEY_FIGURES.map((figure) => figure.value(row) ?? null),
    ]),
  );
}

it('every setting that moves a figure stands in the plain formulas', () => {
  const { used } = namesIn(true);
  const before = figuresBy(STANDARDS);
  const moving = (SETTINGS as readonly Setting[])
    .filter(({ key }) => key !== 'unit')
    .filter(
      (setting) => figuresBy(valueOf(withSettings(STANDARDS, { [setting.key]: otherValue(setting) }))) !== before,
    );
  expect(moving.length).toBeGreaterThan(30);
  expect(moving.map(({ key }) => cellName(key)).filter((name) => !used.has(name))).toEqual([]);
});

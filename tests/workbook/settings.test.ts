import { expect, it } from 'vitest';
import { BLANK_JOB } from '../../src/job/fields';
import { readSchedule } from '../../src/schedule/readSchedule';
import { defaultStandards, SETTINGS, withSettings, type Setting, type Standards } from '../../src/standards';
import { planBoards } from '../../src/takeoff/boards';
import { takeoff } from '../../src/takeoff/takeoff';
import type { Cell, Sheet } from '../../src/workbook/sheet';
import { planSheets } from '../../src/workbook/workbook';
import { checkRows } from '../check/quote/example';
import { otherValue } from '../otherValue';
import { quickPlan, quickSheets } from '../takeoff/quickPlan';
import { valueOf } from '../value';

/** Openings that stand close to every threshold of the shop, so that another value of any setting crosses it. */
// prettier-ignore
const LIST = [
  ['Mark', 'Qty', 'Head', 'Width', 'RO Width', 'RO Height', 'Spring Height', 'Rise', 'Leg', 'Casing', 'Ends', 'Keystone', 'Plinth blocks', 'Rosettes', 'Remarks'],
  ['keystone, blocks, rosettes', 2, 'half round', 36, '', '', '', '', '', '', '', 1, 2, 2],
  ['radius 30', 1, 'segmental', 36, '', '', '', 6],
  ['radius 30.23', 1, 'segmental', 36.15, '', '', '', 6],
  ['rough width', 1, 'half round', '', 40],
  ['rough height', 1, 'segmental', 48, '', 74.5, 60],
  ['over legs', 1, 'straight', 30, '', '', '', '', 50, '', 'over legs'],
  ['6 long', 1, 'straight', 6, '', '', '', '', '', '', 'square'],
  ['radius 9', 1, 'half round', 18, '', '', '', '', '', 2.5],
  ['wide', 1, 'segmental', 48, '', '', '', 9, '', 8],
  ['150 across', 1, 'segmental', 150, '', '', '', 20],
  ['74 high', 1, 'half round', 140],
  ['full circle', 1, 'round', 24],
  ['by arcs', 1, 'elliptical', 72, '', '', '', 22],
  ['level', 1, 'segmental', 40, '', '', '', 0.9, '', '', 'level'],
  ['two units', 1, 'half round', 36, '', '', '', '', '', '', '', '', '', '', 'mulled pair'],
  ['by the foot', '50 LF', '', '', '', '', '', '', '', 3.5],
];
const ANSWERS = { 'remark:mulled pair': 'one head over 2 units of the width listed' };
const JOB = { ...BLANK_JOB, leadTime: 'shown' as const };

function takenOff(standards: Standards) {
  const list = { name: 'list', firstRow: 1, rows: LIST.map((row) => [...row, ...Array<string>(15)].slice(0, 15)) };
  const reading = valueOf(readSchedule(list, standards, {}, { answers: ANSWERS }));
  return { reading, taken: takeoff(reading.openings, standards) };
}

/** A quote of two openings: one a little more than the shop's tolerance too long, one a little more than its price band too dear. */
function quoteFor(standards: Standards) {
  const [, one, other] = takenOff(standards).taken.openings;
  return [
    ['Mark', 'Qty', 'Length', 'Unit price'],
    ['radius 30', 1, one!.own!.curve.length + standards.tolerance * 1.1, one!.cost!.unitPrice],
    ['radius 30.23', 1, other!.own!.curve.length, other!.cost!.unitPrice * (1 + standards.priceBand * 1.1)],
  ];
}

/** What the sheets show, but for the settings themselves: on Standards, kept by the plan, and those that nobody has set. */
function shownBy(standards: Standards, quote: ReturnType<typeof quoteFor>, planned: boolean, masked: boolean) {
  const { reading, taken } = takenOff(standards);
  const boards = planned ? quickPlan(taken).boards : planBoards([], standards);
  const check = checkRows(quote, taken);
  const sheets = [
    ...quickSheets(reading, taken, { boards, check, proposal: true, job: JOB }),
    ...planSheets(taken, boards, { plain: false, held: new Map(), rowsOnSheet: LIST.length, tickets: true }),
  ];
  return new Map(
    sheets.filter(({ name }) => name !== 'Standards').map((sheet) => [sheet.name, valuesOf(sheet, masked)]),
  );
}
function valuesOf({ rows }: Sheet, masked: boolean): string[] {
  // A sentence may name a limit: that it is said counts, not the figure in it.
  const text = (value: Cell['value']) =>
    masked && typeof value === 'string' ? value.replace(/[0-9./ ]+/g, ' ') : String(value ?? '');
  const shown = rows.map((row) => row.map((cell) => text(cell?.value ?? null)));
  const kept = shown.findIndex(([first]) => first === 'What this plan was made from');
  return shown
    .slice(0, kept < 0 ? undefined : kept)
    .flat()
    .filter((value) => value !== '' && !value.startsWith('Not set yet'));
}

const BASE = {
  largestAcross: 150,
  profileDepth: 0.62,
  rpm: 1500,
  feed: 9,
  hoursPerWeek: 1,
  pieceMinimum: 250,
  guideTolerance: 0.2,
};
// A plan takes longest: it is asked last.
const SHOPS = [false, true].flatMap((planned) =>
  [BASE, { ...BASE, shortPieces: 'carrier' }].map((settings) => {
    const standards = valueOf(withSettings(defaultStandards(), settings));
    const quote = quoteFor(standards);
    const before = new Map([true, false].map((masked) => [masked, shownBy(standards, quote, planned, masked)]));
    return { standards, quote, planned, before };
  }),
);

/** Those that move nothing but a figure in a text: the depth of a knife mark, the weeks of a lead time. */
const IN_WORDS = ['cuttingCircle', 'hoursPerWeek'];

it.each(SETTINGS as readonly Setting[])('$label moves what a sheet shows', (setting) => {
  const masked = !IN_WORDS.includes(setting.key);
  const moves = SHOPS.some(({ standards, quote, planned, before }) => {
    const other = otherValue({ ...setting, value: standards[setting.key as 'rpm'] } as Setting);
    const after = shownBy(valueOf(withSettings(standards, { [setting.key]: other })), quote, planned, masked);
    const shown = before.get(masked)!;
    return [...after].some(([name, values]) => values.some((value, at) => value !== shown.get(name)![at]));
  });
  expect(moves).toBe(true);
});

import ExcelJS from 'exceljs';
import DxfParser from 'dxf-parser';
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { SaxesParser } from 'saxes';
import { openingJson } from '../cli/takeoffJson';
import { toDxf } from '../src/drawing/dxf';
import { elevationScene } from '../src/drawing/elevation';
import { toSvg } from '../src/drawing/svg';
import { fileName, guideBoardsOf, templateFiles } from '../src/drawing/template';
import { readSchedule, type Schedule } from '../src/schedule';
import { defaultStandards } from '../src/standards';
import { planSetups } from '../src/takeoff/setups';
import { takeoff, type Takeoff } from '../src/takeoff/takeoff';
import { fittingText } from '../src/workbook/cellText';
import type { Sheet } from '../src/workbook/sheet';
import { writeXlsx } from '../src/workbook/xlsx';
import { contentsOf } from '../taskpane/excel/cells';
import { excelHost } from '../taskpane/excel/excelHost';
import { cellData, cellFormula, type Engine } from '../taskpane/workbench/engine';
import { startHeadless } from '../taskpane/workbench/headless';
import { WorkbenchHost } from '../taskpane/workbench/workbenchHost';
import { openings as drawn } from './drawing/openings';
import { FakeWorkbook } from './excel/fakeExcel';
import { addressAt } from './excel/fakeSheet';
import { install } from './excel/officeJs';
import { quickSheets } from './takeoff/quickPlan';
import { valueOf } from './value';

/** Text that somebody would have carried out, by a spreadsheet, a page, a drawing program or a file system. */
const HOSTILE = [
  '=HYPERLINK("http://example.com","x")',
  "=cmd|' /C calc'!A0",
  '+1+1',
  '-2+3',
  '@SUM(A1)',
  '\t=1+1',
  '\r\n=1+1',
  "'=1+1",
  '＝1+1',
  '"&CHAR(65)&"',
  '"),WEBSERVICE("http://example.com',
  '{=1+1}',
  '1/2',
  '1e5',
  'TRUE',
  '_x003D_1+1',
  '<script>alert(1)</script>',
  '"/><image href="x" onerror="y"/>',
  '</t></is></c><c r="A1"><f>1+1</f></c>',
  ']]><!--',
  '&lt;b&gt; &#61;1+1',
  '\n  0\nLINE\n  8\n0',
  '%%u^J\\P\\U+0041',
  '../../etc/passwd',
  'C:\\x:stream',
  'a\u0000b\u001b[31mred\u202etxt',
  '{span}+{rise:all}',
  '$&$1`',
];

const text = fc.oneof(
  { weight: 3, arbitrary: fc.constantFrom(...HOSTILE) },
  { weight: 2, arbitrary: fc.string({ unit: 'binary', maxLength: 40 }) },
  {
    weight: 2,
    arbitrary: fc.tuple(fc.constantFrom(...HOSTILE), fc.string({ maxLength: 8 })).map((parts) => parts.join('')),
  },
);

const FIELDS = ['Mark', 'Qty', 'Head', 'Width', 'Rise', 'Casing', 'Reveal', 'Species', 'Profile', 'Remarks'];

/** In every second row each field is that text, figures too; in the others only what may be any text. */
function scheduleOf(heading: string, rows: readonly (readonly string[])[]): (string | number | null)[][] {
  return [
    [...FIELDS, heading],
    ['W0', 1, 'elliptical', 72, 24, 3.5],
    ...rows.flatMap((texts, at) => {
      const [mark, species, profile, remarks, own] = texts as [string, string, string, string, string];
      return [[mark, 1 + at, 'segmental', 36, 6, 3, 0.25, species, profile, remarks, own], [...texts]];
    }),
  ];
}

const schedule = fc
  .tuple(text, fc.array(fc.array(text, { minLength: 11, maxLength: 11 }), { minLength: 1, maxLength: 3 }))
  .map(([heading, rows]) => scheduleOf(heading, rows));

type Rows = readonly (readonly (string | number | null)[])[];

function read(rows: Rows): { schedule: Schedule; computed: Takeoff } {
  const schedule = valueOf(readSchedule({ name: 'list', firstRow: 1, rows }, defaultStandards()));
  return { schedule, computed: takeoff(schedule.openings, defaultStandards()) };
}

/** The sheets of each form asked for. */
function sheetsOf(rows: Rows, ...forms: readonly ('live' | 'plain')[]): Sheet[] {
  const { schedule, computed } = read(rows);
  return forms.flatMap((form) => quickSheets(schedule, computed, { plain: form === 'plain' }));
}

const withoutLiterals = (formula: string) => formula.replace(/"[^"]*"/g, '""');

/** Words of a formula outside quotes: functions, names, sheets; not addresses. */
const words = (formula: string) =>
  (withoutLiterals(formula).match(/[A-Za-z_][\w.]*/g) ?? []).filter((word) => !/^[A-Z]{1,3}\d*$/.test(word));

let ours: ReadonlySet<string>;
let engine: Engine;
beforeAll(() => {
  const sheets = sheetsOf(
    scheduleOf(
      'Notes',
      ['casing', ''].map((each) => Array<string>(11).fill(each)),
    ),
    'live',
    'plain',
  );
  const inFormulas = sheets.flatMap(({ rows }) => rows.flat()).flatMap((cell) => words(cell?.formula ?? ''));
  ours = new Set([...inFormulas, ...sheets.flatMap(({ names = [] }) => names.map(({ name }) => name))]);
  engine = startHeadless([]);
});
afterAll(() => engine.univer.dispose());

describe('any text in any field of a schedule stays text', { timeout: 120_000 }, () => {
  it('in every formula: only inside quotes', () => {
    fc.assert(
      fc.property(schedule, (rows) => {
        for (const cell of sheetsOf(rows, 'live', 'plain').flatMap((sheet) => sheet.rows.flat())) {
          if (cell?.formula === undefined) continue;
          expect(words(cell.formula).filter((word) => !ours.has(word))).toEqual([]);
          expect(withoutLiterals(cell.formula)).toMatch(/^[\w.,:!$()+\-*/^&<>=%{}" ]*$/);
        }
      }),
      { numRuns: 25 },
    );
  });

  it('in an .xlsx, read by another library: text as text, formulas only ours', async () => {
    await fc.assert(
      fc.asyncProperty(schedule, async (rows) => {
        const sheets = sheetsOf(rows, 'live');
        const book = new ExcelJS.Workbook();
        await book.xlsx.load(valueOf(writeXlsx(sheets)).slice().buffer as ArrayBuffer);
        for (const sheet of sheets) {
          const found = book.getWorksheet(sheet.name)!;
          expect(found.rowCount).toBeLessThanOrEqual(sheet.rows.length);
          for (const [row, cells] of sheet.rows.entries()) {
            for (const [column, cell] of cells.entries()) {
              const { type } = found.getCell(row + 1, column + 1);
              if (cell?.formula !== undefined) expect(type).toBe(ExcelJS.ValueType.Formula);
              else if (typeof cell?.value === 'string' && cell.value !== '') {
                expect([type, cell.value]).toEqual([ExcelJS.ValueType.String, cell.value]);
              } else expect(type).not.toBe(ExcelJS.ValueType.Formula);
            }
          }
        }
      }),
      { numRuns: 12 },
    );
  });

  it('in Excel: every text is entered with an apostrophe, and is in the cell as it was', async () => {
    await fc.assert(
      fc.asyncProperty(schedule, async (rows) => {
        const sheets = sheetsOf(rows, 'live');
        const book = new FakeWorkbook();
        install(book);
        expect(await excelHost().writeSheets(sheets, { replace: [] })).toEqual({ ok: true, value: undefined });
        for (const sheet of sheets) {
          const entries = contentsOf(sheet).blocks.flatMap((block) => block.entries);
          for (const [row, cells] of sheet.rows.entries()) {
            for (const [column, cell] of cells.entries()) {
              const entered = book.sheet(sheet.name).cells.get(addressAt(row, column));
              if (cell?.formula !== undefined) expect(entered).toBe('=' + cell.formula);
              else if (typeof cell?.value === 'string' && cell.value !== '') {
                expect(entries[row]![column]).toBe("'" + fittingText(cell.value));
                expect(entered).toBe(fittingText(cell.value));
              }
            }
          }
        }
      }),
      { numRuns: 12 },
    );
  });

  it('in the grid of the workbench: text as text, formulas only ours', async () => {
    const host = new WorkbenchHost(engine);
    await fc.assert(
      fc.asyncProperty(schedule, async (rows) => {
        const sheets = sheetsOf(rows, 'live').filter(({ name }) => name === 'Takeoff' || name === 'Schedule');
        valueOf(await host.writeSheets(sheets, { replace: ['Takeoff', 'Schedule'] }));
        for (const sheet of sheets) {
          const grid = engine.workbook.getSheetBySheetName(sheet.name)!;
          for (const [row, cells] of sheet.rows.entries()) {
            for (const [column, cell] of cells.entries()) {
              const formula = cellFormula(engine, grid, row, column);
              expect(formula !== '').toBe(cell?.formula !== undefined);
              if (formula === '' && typeof cell?.value === 'string' && cell.value !== '') {
                expect(cellData(engine, grid, row, column)).toMatchObject({ v: cell.value });
              }
            }
          }
        }
      }),
      { numRuns: 10 },
    );
  });

  it('in JSON: the marks come back as they were', () => {
    fc.assert(
      fc.property(schedule, (rows) => {
        const { openings, standards } = read(rows).computed;
        const json = openings.map((row) => openingJson(row, standards));
        expect(JSON.parse(JSON.stringify(json, null, 2))).toEqual(json);
        expect(json.map(({ mark }) => mark)).toEqual(openings.map(({ opening }) => opening.mark));
      }),
      { numRuns: 30 },
    );
  });

  it('in drawings: no kind of element, attribute or entity that a harmless one has not', () => {
    const { figures } = drawn[1]!;
    const of = (mark: string, profile: string) => {
      const scene = valueOf(elevationScene({ ...figures, mark }));
      return [...elements(toSvg(scene)), ...entities(toDxf(scene)), ...guides(mark, profile)];
    };
    const harmless = of('W1', 'casing');
    fc.assert(
      fc.property(text, text, (mark, profile) => {
        expect(of(`W${mark}`, profile).filter((kind) => !harmless.includes(kind))).toEqual([]);
      }),
      { numRuns: 40 },
    );
  });

  it('in file names: they stay in the folder, and nothing but letters, digits, dots and hyphens is in them', () => {
    fc.assert(
      fc.property(text, (mark) => {
        expect(fileName(mark)).toMatch(/^[A-Za-z0-9-]+(?:\.[A-Za-z0-9-]+)*$/);
      }),
    );
  });
});

/** Element and attribute names of an SVG, which must be well-formed. */
function elements(svg: string): string[] {
  const found: string[] = [];
  const parser = new SaxesParser({ xmlns: true });
  parser.on('error', (error) => {
    throw error;
  });
  parser.on('opentag', ({ name, attributes }) => found.push(`${name} ${Object.keys(attributes).join(' ')}`));
  parser.write(svg).close();
  return found;
}

function entities(dxf: string): string[] {
  return (new DxfParser().parseSync(dxf)?.entities ?? []).map(({ type, layer }) => `${type} ${layer}`);
}

function guides(mark: string, profile: string): string[] {
  const row = [mark, 1, 'segmental', 36, 6, profile];
  const [setup] = planSetups(read([['Mark', 'Qty', 'Head', 'Width', 'Rise', 'Profile'], row]).computed).setups;
  if (!setup) return []; // a profile's name may hold no * ? or ~, and is asked about
  const files = valueOf(templateFiles(valueOf(guideBoardsOf(setup, defaultStandards())), mark));
  return files.flatMap(({ name, content }) => (name.endsWith('.dxf') ? entities(content) : elements(content)));
}

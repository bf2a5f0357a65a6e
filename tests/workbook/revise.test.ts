import { describe, expect, it } from 'vitest';
import type { CellValue, Opening, Table } from '../../src/schedule/opening';
import { defaultStandards } from '../../src/standards';
import { planTakeoff } from '../../src/takeoff/planned';
import { takeoff, type Takeoff } from '../../src/takeoff/takeoff';
import { keptFrom } from '../../src/workbook/refill';
import { revise } from '../../src/workbook/revise';
import { numberedAlike, revisedList } from '../../src/workbook/revisedList';
import type { Sheet } from '../../src/workbook/sheet';
import { TAKEOFF_COLUMNS } from '../../src/workbook/takeoff/columns';
import { openingsOfTakeoff } from '../../src/workbook/takeoff/openings';
import { workbookSheets } from '../../src/workbook/workbook';
import { opening, scheduleOf } from '../takeoff/openings';
import { valueOf } from '../value';

const STANDARDS = defaultStandards();
const LIST = [
  opening({ row: 2, mark: 'W1', head: 'segmental', span: 36, rise: 6 }),
  opening({ row: 3, mark: 'W2', head: 'half round', span: 40 }),
  opening({ row: 4, mark: 'W3', head: 'segmental', span: 48, rise: 9 }),
];

const planned = (openings: readonly Opening[]): Takeoff => planTakeoff(takeoff(openings, STANDARDS)).taken;

/** The sheets that a filling writes, and the Takeoff's cells with one typed over. */
function workbook(typed: { readonly row: number; readonly key: string; readonly value: CellValue } | null = null) {
  const sheets = workbookSheets(scheduleOf(LIST), planned(LIST));
  const sheet = (name: string) => sheets.find((one) => one.name === name)!;
  const table = ({ name, rows }: Sheet, formulas: boolean): Table => ({
    name,
    firstRow: 1,
    rows: rows.map((row) =>
      row.map((cell) => (formulas && cell?.formula !== undefined ? `=${cell.formula}` : (cell?.value ?? null))),
    ),
  });
  const column = TAKEOFF_COLUMNS.findIndex(({ key }) => key === typed?.key);
  const changed = (from: Table): Table => ({
    ...from,
    rows: from.rows.map((row) =>
      typed && row[0] === typed.row ? row.map((was, at) => (at === column ? typed.value : was)) : row,
    ),
  });
  const values = changed(table(sheet('Takeoff'), false));
  const formulas = changed(table(sheet('Takeoff'), true));
  return { values, before: { values, formulas, schedule: table(sheet('Schedule'), false) } };
}

describe('a revised list against a workbook', () => {
  it('that is the same list changes nothing, though an input was changed by hand, which is kept', () => {
    const { values, before } = workbook({ row: 1, key: 'face', value: 4.5 });
    const { revision, taken, said } = revise({
      before: planned(openingsOfTakeoff(values, 'in')!),
      kept: keptFrom(before, 'in'),
      schedule: scheduleOf([LIST[2]!, LIST[0]!, LIST[1]!]),
      ours: false,
    });
    expect([revision.added, revision.dropped, revision.renamed, revision.changed]).toEqual([[], [], [], []]);
    expect([revision.unchanged.length, revision.shared]).toEqual([3, 0]);
    expect(said).toEqual(['W1: kept casing width 4.5 from the workbook; the list says nothing.']);
    expect(taken.openings.map(({ no, opening: { mark, face } }) => [no, mark, face])).toEqual([
      [3, 'W3', null],
      [1, 'W1', 4.5],
      [2, 'W2', null],
    ]);
  });

  it('that changes what was changed by hand has the last word, and that is said', () => {
    const { values, before } = workbook({ row: 1, key: 'rise', value: 6.5 });
    const { revision, said } = revise({
      before: planned(openingsOfTakeoff(values, 'in')!),
      kept: keptFrom(before, 'in'),
      schedule: scheduleOf([{ ...LIST[0]!, rise: 7 }, LIST[1]!, LIST[2]!]),
      ours: false,
    });
    expect(revision.changed.map(({ figures }) => figures)).toEqual([[{ figure: 'rise', from: 6.5, to: 7 }]]);
    expect(said).toEqual(['W1: rise 6.5 from the workbook is not kept: the revised list changed it from 6 to 7.']);
  });

  it('that is a later state of the same Takeoff is known by its numbers: a mark changed there is no question', () => {
    const { values } = workbook({ row: 2, key: 'mark', value: 'X9' });
    const list = valueOf(revisedList([values], 'later.xlsx', STANDARDS));
    expect(list.ours).toBe(true);
    const { revision, numbered } = revise({ before: planned(LIST), schedule: list.schedule, ours: list.ours });
    expect(numbered).toBe(true);
    expect(revision.renamed.map(({ old, new: now, asked }) => [old.mark, now.mark, asked])).toEqual([
      ['W2', 'X9', false],
    ]);
  });

  it('that is the Takeoff of another job is known by mark and figures, for its numbers count from 1 as well', () => {
    const other = LIST.map((one, at) => ({ ...one, mark: `K${at}`, no: at + 1 }));
    expect(
      numberedAlike(
        LIST.map((one, at) => ({ ...one, no: at + 1 })),
        other,
      ),
    ).toBe(false);
  });

  it('is no Takeoff of ours only because its columns begin with No. and Mark', () => {
    const table: Table = {
      name: 'list',
      firstRow: 1,
      rows: [
        ['No.', 'Mark', 'Qty', 'Head', 'Width', 'Rise'],
        [1, 'W1', 1, 'segmental', 36, 6],
      ],
    };
    const list = valueOf(revisedList([table], 'list.csv', STANDARDS));
    expect([list.ours, list.schedule.openings[0]!.span]).toEqual([false, 36]);
  });
});

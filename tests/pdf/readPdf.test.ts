import { degrees, PDFDocument, StandardFonts } from 'pdf-lib';
import { describe, expect, test } from 'vitest';
import { QUOTE } from '../../src/pdf/quoteKind';
import { chooseOffered } from '../../src/pdf/offer';
import { readQuote } from '../../src/quote/readQuote';
import { readSchedule } from '../../src/schedule/readSchedule';
import { defaultStandards } from '../../src/standards';
import { valueOf } from '../value';
import { blanks, read, rowsOf, schedule } from './reading';
import { drawn, SCHEDULE_ROWS, SCHEDULE_WIDTHS, type Sheet } from './plan';

describe('tables of a PDF', () => {
  test('a ruled schedule on a plan sheet is read, its title block and notes are not', async () => {
    const bytes = await drawn((sheet) => {
      schedule(sheet, 80);
      sheet.say('WINDOW SCHEDULE', 60, 70, 12);
      sheet.say('NOTES', 450, 90);
      sheet.say('1. See the elevations for heights.', 450, 102);
      sheet.table(
        [
          ['Sheet', 'A-601'],
          ['Date', '3/4/2026'],
          ['Scale', '1/4 in = 1 ft'],
        ],
        500,
        500,
        [60, 120],
      );
    });
    expect(await rowsOf(bytes)).toEqual([blanks(SCHEDULE_ROWS)]);
  });

  test('one that goes on over a page, with and without its headings again, is one table', async () => {
    const more = [
      ['A4', '1', 'Segmental', '30', '6'],
      ['A5', '1', 'Segmental', '31', '6'],
    ];
    for (const again of [true, false]) {
      const bytes = await drawn(schedule, (sheet) => {
        sheet.table(again ? [SCHEDULE_ROWS[0]!, ...more] : more, 50, 60, SCHEDULE_WIDTHS);
      });
      const [rows, ...others] = await rowsOf(bytes);
      expect(others).toEqual([]);
      expect(rows!.map(([mark]) => mark)).toEqual(['Mark', 'A1', 'A2', 'A3', ...(again ? ['Mark'] : []), 'A4', 'A5']);
    }
  });

  test('a row without a mark on the next page puts it and the last row before it in doubt', async () => {
    const bytes = await drawn(schedule, (sheet) => {
      sheet.table(
        [
          ['', '', 'arched', '', ''],
          ['A4', '1', 'Segmental', '30', '6'],
          ['A5', '1', 'Segmental', '31', '6'],
        ],
        50,
        60,
        SCHEDULE_WIDTHS,
      );
    });
    const [table] = valueOf(await read(bytes)).tables;
    expect([...table!.table.doubts!.keys()]).toEqual([4, 5]);
  });

  test('a row without a mark between rules is a question of the opening above it; a total is none', async () => {
    const below = (...rows: readonly string[][]) =>
      drawn((sheet) => sheet.table([...SCHEDULE_ROWS, ...rows], 50, 60, SCHEDULE_WIDTHS));
    const asked = async (bytes: Uint8Array) => {
      const [found] = valueOf(await read(bytes)).tables;
      const { openings } = valueOf(readSchedule(found!.table, defaultStandards()));
      return openings.map(({ mark, span }) => [mark, span]);
    };
    const rest = [
      ['A1', 36.5],
      ['A2', 42],
    ];
    expect(await asked(await below(['', '', 'with keystone', '', '']))).toEqual([...rest, ['A3', null]]);
    // A row of its own fills more than half of what the one above does.
    expect((await asked(await below(['', '', 'keystone', 'oak', '']))).slice(0, 3)).toEqual([...rest, ['A3', null]]);
    expect((await asked(await below(['', '1', 'Segmental', '40', '']))).slice(0, 3)).toEqual([...rest, ['A3', 60]]);
    expect((await asked(await below(['', '7', 'Total', '', '']))).slice(0, 3)).toEqual([...rest, ['A3', 60]]);
  });

  test('a row in doubt is a question: its opening is not priced until the row has been compared with the page', async () => {
    const bytes = await drawn((sheet) => {
      schedule(sheet);
      sheet.say('XX', 52, 60 + 16 + 11.5);
    });
    const [found] = valueOf(await read(bytes)).tables;
    const { openings, questions } = valueOf(readSchedule(found!.table, defaultStandards()));
    expect(questions).toEqual([
      {
        id: 'page:letters lie over one another in column 1',
        rows: [2],
        about: 'page',
        text: 'On the page letters lie over one another in column 1; please compare the row with the page: is it as read?',
        choices: ['as read', 'leave out'],
      },
    ]);
    expect(openings.map(({ span }) => span)).toEqual([null, 42, 60]);
    const answered = (answer: string) =>
      valueOf(
        readSchedule(found!.table, defaultStandards(), {}, { answers: { [`${questions[0]!.id}@2`]: answer } }),
      ).openings.map(({ span }) => span);
    expect(answered('as read')).toEqual([36.5, 42, 60]);
    expect(answered('leave out')).toEqual([42, 60]);
  });

  test('a fraction alone on a line below a whole number, without rules, stops and asks', async () => {
    const bytes = await drawn((sheet) => {
      const columns = [50, 110, 170, 260, 330];
      const line = (cells: readonly string[], y: number) =>
        cells.forEach((cell, index) => cell && sheet.say(cell, columns[index]!, y));
      line(SCHEDULE_ROWS[0]!, 60);
      line(['A1', '2', 'Segmental', '42', '8'], 84);
      line(['', '', '', '5/8', ''], 95);
      line(['A2', '2', 'Segmental', '40', '8'], 119);
      line(['A3', '2', 'Segmental', '44', '8'], 143);
    });
    const [table] = valueOf(await read(bytes)).tables;
    const { openings } = valueOf(readSchedule(table!.table, defaultStandards()));
    expect(openings.map(({ mark }) => mark)).toEqual(['A1', 'A2', 'A3']);
    expect(openings[0]!.problems.map(({ message }) => message).join()).toMatch(/fraction/);
  });

  test('columns set closer than words, and type of one width, are told apart by headings and by what stands in line', async () => {
    const rows = [
      ['MARK', 'QTY', 'HEAD', 'WIDTH', 'RISE', 'LOCATION', 'REMARKS'],
      ['W1', '1', 'SEGMENTAL', '63 3/4', '12 5/8', 'BED 1', 'TEMPERED'],
      ['W2', '12', 'SEGMENTAL', '54', '11 3/8', 'STAIR', 'SEE DETAIL 4'],
      ['W3', '1', 'HALF ROUND', '30', '15', 'HALL', ''],
      ['W4', '3', 'SEGMENTAL', '36', '8 1/4', 'HALL', 'VERIFY IN FIELD'],
      ['W5', '2', 'ELLIPTICAL', '48 1/2', '14', 'KITCHEN', ''],
    ];
    for (const [name, gap] of [
      [StandardFonts.Helvetica, 2.6],
      [StandardFonts.Courier, 5.4],
    ] as const) {
      const document = await PDFDocument.create();
      const font = await document.embedFont(name);
      const page = document.addPage();
      const wide = rows[0]!.map((_, column) => Math.max(...rows.map((row) => font.widthOfTextAtSize(row[column]!, 9))));
      rows.forEach((row, line) => {
        let left = 40;
        row.forEach((text, column) => {
          const isFigure = line > 0 && [1, 3, 4].includes(column);
          const x = isFigure ? left + wide[column]! - font.widthOfTextAtSize(text, 9) : left;
          if (text !== '') page.drawText(text, { x, y: 600 - line * 16, size: 9, font });
          left += wide[column]! + gap;
        });
      });
      expect(await rowsOf(await document.save())).toEqual([blanks(rows)]);
    }
  });

  test('a text that begins in the column before it is asked about', async () => {
    const bytes = await drawn((sheet) => {
      const columns = [50, 110, 170, 260, 330];
      const line = (cells: readonly string[], y: number, shift = 0) =>
        cells.forEach((cell, index) => cell && sheet.say(cell, columns[index]! - (index === 3 ? shift : 0), y));
      line(SCHEDULE_ROWS[0]!, 60);
      for (let row = 1; row <= 6; row += 1)
        line([`A${row}`, '2', 'Segmental', `${40 + row} 1/2`, '8'], 60 + row * 20, row === 4 ? 14 : 0);
    });
    const [table] = valueOf(await read(bytes)).tables;
    expect(table!.table.doubts).toEqual(new Map([[5, ['a text stands out of line in column 4']]]));
  });

  test('notes beside a short table, with a heading of their own, are no column of it', async () => {
    const bytes = await drawn((sheet) => {
      const columns = [50, 110, 170, 260, 330];
      SCHEDULE_ROWS.forEach((row, line) =>
        row.forEach((cell, index) => cell && sheet.say(cell, columns[index]!, 60 + line * 20)),
      );
      ['GENERAL NOTES', 'A. Openings are shown from outside.', 'B. See sheet 7.', 'C. Field measure.'].forEach(
        (note, line) => sheet.say(note, 400, 60 + line * 13),
      );
    });
    const [table] = valueOf(await read(bytes)).tables;
    expect(table!.table.rows).toEqual(blanks(SCHEDULE_ROWS));
  });

  test('rules between the columns alone, over two pages', async () => {
    const more = [
      ['A4', '1', 'Segmental', '30', '6'],
      ['A5', '1', 'Segmental', '31', '6'],
    ];
    const page = (rows: readonly (readonly string[])[]) => (sheet: Sheet) => {
      let x = 50;
      const bottom = 60 + rows.length * 16;
      for (const [column, width] of [...SCHEDULE_WIDTHS, 0].entries()) {
        sheet.line(x, 60, x, bottom);
        rows.forEach((row, line) => row[column] && sheet.say(row[column], x + 3, 71.5 + line * 16));
        x += width;
      }
      sheet.line(50, 60, x, 60);
      sheet.line(50, bottom, x, bottom);
    };
    const bytes = await drawn(page(SCHEDULE_ROWS), page(more));
    expect(await rowsOf(bytes)).toEqual([blanks([...SCHEDULE_ROWS, ...more])]);
  });

  test('a table turned on its page is read as it stands', async () => {
    const document = await PDFDocument.create();
    const font = await document.embedFont(StandardFonts.Helvetica);
    const page = document.addPage([400, 500]);
    SCHEDULE_ROWS.forEach((row, line) =>
      row.forEach((cell, column) =>
        page.drawText(cell, { x: 60 + line * 18, y: 40 + column * 80, size: 9, font, rotate: degrees(90) }),
      ),
    );
    expect(await rowsOf(await document.save())).toEqual([blanks(SCHEDULE_ROWS)]);
  });

  test('letters within the frame that are in no cell are counted and shown', async () => {
    const bytes = await drawn(({ page, font, table, say }) => {
      table(SCHEDULE_ROWS.slice(0, 3), 50, 60, SCHEDULE_WIDTHS);
      // One more row, of which rules close the middle cells alone.
      table([['1', 'Segmental', '42']], 100, 108, SCHEDULE_WIDTHS.slice(1, 4));
      say('A9', 53, 119.5);
      // Across the rules of three rows.
      page.drawText('VERIFY ALL', { x: 240, y: 612 - 110, size: 9, font, rotate: degrees(90) });
    });
    const [table] = valueOf(await read(bytes)).tables;
    expect(table!.table.remarks).toEqual([
      'On page 1, 11 letters within the table\'s frame went into no cell: "A9", "VERIFY ALL".',
    ]);
  });

  test('headings turned upright are read with the cells below them', async () => {
    const bytes = await drawn(({ page, font, table }) => {
      table([SCHEDULE_ROWS[0]!.map(() => ''), ...SCHEDULE_ROWS.slice(1)], 50, 60, SCHEDULE_WIDTHS);
      SCHEDULE_ROWS[0]!.forEach((heading, column) => {
        const left = SCHEDULE_WIDTHS.slice(0, column).reduce((sum, width) => sum + width, 50);
        page.drawText(heading, { x: left + 20, y: 612 - 75, size: 3, font, rotate: degrees(90) });
      });
    });
    expect(await rowsOf(bytes)).toEqual([blanks(SCHEDULE_ROWS)]);
  });

  test("a turned heading longer than its cell is its column's; over another cell it puts every row in doubt", async () => {
    const turned = (y: number) =>
      drawn(({ page, font, table }) => {
        table([['', ...SCHEDULE_ROWS[0]!.slice(1)], ...SCHEDULE_ROWS.slice(1)], 50, 60, SCHEDULE_WIDTHS);
        page.drawText(SCHEDULE_ROWS[0]![0]!, { x: 80, y: 612 - y, size: 9, font, rotate: degrees(90) });
      });
    const [over, below] = [await turned(75), await turned(79)].map(
      async (bytes) => valueOf(await read(bytes)).tables[0]!.table,
    );
    expect((await over!).rows).toEqual(blanks(SCHEDULE_ROWS));
    expect((await over!).doubts).toEqual(new Map());
    expect((await below!).rows).toEqual(blanks(SCHEDULE_ROWS));
    expect([...(await below!).doubts!.keys()]).toEqual([1, 2, 3, 4]);
  });

  test('feet and inches without their closing mark go on with the fraction below them', async () => {
    const bytes = await drawn(({ say }) => {
      const rows = [SCHEDULE_ROWS[0]!, ['A1', '2', 'Segmental', "3'-6", '8'], ['A2', '1', 'Segmental', '42"', '8']];
      rows.forEach((row, line) => row.forEach((cell, column) => say(cell, 50 + column * 80, 60 + line * 32)));
      say('1/2"', 290, 103);
    });
    const { table } = valueOf(await read(bytes)).tables[0]!;
    expect(table.rows[1]).toEqual(['A1', '2', 'Segmental', `3'-6 1/2"`, '8']);
    expect(table.doubts).toEqual(new Map());
  });

  test('a first line with figures is no second line of the headings', async () => {
    const rows = [
      ['Line', 'Item', 'Description', 'Qty', 'Length'],
      ['1', 'A', 'Segmental casing', '4', '43 3/8"'],
      ['2', 'B', 'Half round casing', '2', '81"'],
    ];
    const bytes = await drawn(({ say }) =>
      rows.forEach((row, line) => row.forEach((cell, column) => say(cell, 50 + column * 110, 60 + line * 14))),
    );
    expect(valueOf(await read(bytes, QUOTE)).tables[0]!.table.rows).toEqual(rows);
  });

  test('columns on a page of their own stand beside the rows at whose heights they are', async () => {
    const wide = SCHEDULE_ROWS.map((row, index) => [...row, index === 0 ? 'Remarks' : `note ${index}`]);
    const bytes = await drawn(schedule, (sheet) =>
      sheet.table(
        wide.map((row) => row.slice(5)),
        50,
        60,
        [120],
      ),
    );
    const [table, ...others] = valueOf(await read(bytes)).tables;
    expect(others).toEqual([]);
    expect(table!.table.rows).toEqual(blanks(wide));
    expect(table!.table.remarks).toEqual(['Page 2 was read as more columns of page 1.']);
  });

  test('of several tables one must be chosen, and the list says which there are', async () => {
    const bytes = await drawn(
      schedule,
      (sheet) =>
        void sheet.table(
          [...SCHEDULE_ROWS]
            .reverse()
            .slice(0, 0)
            .concat([
              ['Tag', 'Width', 'Rise', 'Head'],
              ['B1', '20', '5', 'Segmental'],
              ['B2', '20', '5', 'Segmental'],
            ]),
          80,
          80,
          [60, 60, 60, 90],
        ),
    );
    const reading = valueOf(await read(bytes));
    const all = chooseOffered('plan.pdf', reading, {});
    expect(all).toEqual({
      ok: false,
      message:
        '"plan.pdf" holds 2 tables; please name the one to read with --table:\n  1  page 1, 4 rows: Mark, Qty, Head, Width, Rise\n  2  page 2, 3 rows: Tag, Width, Rise, Head',
    });
    expect(valueOf(chooseOffered('plan.pdf', reading, { table: 2 })).rows[1]).toEqual(['B1', '20', '5', 'Segmental']);
    expect(valueOf(chooseOffered('plan.pdf', reading, { page: 2 })).unread).toEqual([
      { what: 'plan.pdf, page 1', why: 'another table of the file was chosen' },
    ]);
    expect(chooseOffered('plan.pdf', reading, { table: 3 }).ok).toBe(false);
    expect(chooseOffered('plan.pdf', reading, { page: 7 }).ok).toBe(false);
  });

  test('a quote reads the same way, and a line in doubt has a problem', async () => {
    const rows = [
      ['Item', 'Description', 'Qty', 'Unit price', 'Amount'],
      ['A1', 'Arched casing', '2', '$210.00', '$420.00'],
      ['A2', 'Arched casing', '1', '$300.00', '$300.00'],
    ];
    const bytes = await drawn((sheet) => {
      sheet.table(rows, 50, 60, [60, 150, 40, 80, 80]);
      sheet.say('9', 52, 60 + 32 + 11.5);
    });
    const [table] = valueOf(await read(bytes, QUOTE)).tables;
    const { lines } = valueOf(readQuote(table!.table, defaultStandards()));
    expect(lines.map(({ extension }) => extension)).toEqual([420, 300]);
    expect(lines.map(({ problems }) => problems.length)).toEqual([0, 1]);
  });
});

import { beforeEach, describe, expect, test } from 'vitest';
import type { Cell, Sheet } from '../../src/workbook/sheet';
import { excelHost } from '../../taskpane/excel/excelHost';
import { lookForBroken, settleBroken } from '../../taskpane/excel/backup';
import { thisComputer, whoseAndWhen } from '../../taskpane/excel/broken';
import { FakeWorkbook } from './fakeExcel';
import { install } from './officeJs';

let book: FakeWorkbook;
const host = excelHost();

beforeEach(() => {
  book = new FakeWorkbook();
  install(book);
});

const cell = (value: Cell['value'], more: Partial<Cell> = {}): Cell => ({ value, ...more });

function sheet(name: Sheet['name'], rows: Sheet['rows'], more: Partial<Sheet> = {}): Sheet {
  return { name, rows, widths: [10], frozenRows: 1, frozenColumns: 0, home: 'A1', ...more };
}

const standards = sheet('Standards', [[cell('Reveal'), cell(0.1875, { style: 'input', format: '0.0000' })]], {
  names: [{ name: 'Shop_reveal', ref: 'Standards!$B$1' }],
});
const takeoff = sheet('Takeoff', [
  [cell('Radius', { style: 'heading' })],
  [cell(30, { formula: 'ARCH.RADIUS(36,6)+Shop_reveal*0' })],
]);

describe('writing sheets to Excel', () => {
  test('puts formulas, constants and names where they belong', async () => {
    expect(await host.writeSheets([standards, takeoff], { replace: [] })).toEqual({ ok: true, value: undefined });
    expect(book.sheet('Takeoff').cells.get('A2')).toBe('=ARCH.RADIUS(36,6)+Shop_reveal*0');
    expect(book.sheet('Standards').cells.get('B1')).toBe(0.1875);
    expect(book.sheet('Standards').formats.get('B1')).toBe('0.0000');
    expect(book.names.get('Shop_reveal')).toBe('=Standards!$B$1');
    expect(book.active).toBe('Takeoff');
  });

  test('takes out names that an earlier filling left on the sheets it writes, and none of the user’s own', async () => {
    await host.writeSheets([standards, takeoff], { replace: [] });
    book.names.set('Shop_setup_minutes', '=Standards!$C$9');
    book.names.set('Shop_front', "='My own'!$A$1");
    book.names.set('Waste', '=Standards!$B$1');
    await host.writeSheets([standards, takeoff], { replace: ['Standards', 'Takeoff'] });
    expect([...book.names.keys()].sort()).toEqual(['Shop_front', 'Shop_reveal', 'Waste']);
  });

  test('shows where a figure was typed over its formula', async () => {
    await host.writeSheets([{ ...takeoff, figures: ['A2:A9'] }], { replace: [] });
    const rules = [...book.sheet('Takeoff').looks].filter(([name]) => name.endsWith('rule.formula'));
    expect(rules).toEqual([['A2:A9 conditionalFormat Custom.custom.rule.formula', '=AND(A2<>"",NOT(ISFORMULA(A2)))']]);
  });

  test('asks nobody who lacks the add-in whether to trust it, where sheets hold ARCH formulas', async () => {
    await host.writeSheets([standards], { replace: [] });
    expect(book.settings.size).toBe(0);
    await host.writeSheets([takeoff], { replace: [] });
    expect([...book.settings]).toEqual([['Office.DisableTrustUX', true]]);
  });

  test('takes few round trips, however many rows there are', async () => {
    const rows = Array.from({ length: 1000 }, (_, row) => [cell(row), cell(`mark ${row}`)]);
    await host.writeSheets([sheet('Takeoff', rows), standards], { replace: [] });
    // Two look, one makes room, one for each sheet, one settles, and office.js lets go of the ranges it kept hold of.
    expect(book.syncs.length).toBe(7);
  });

  test('keeps every request under 5 MB by writing a large sheet in parts', async () => {
    const rows = Array.from({ length: 3000 }, (_, row) => [cell(row), cell('x'.repeat(3000))]);
    const written = await host.writeSheets([sheet('Takeoff', rows)], { replace: [] });
    expect(written.ok).toBe(true);
    expect(Math.max(...book.syncs.map(({ bytes }) => bytes))).toBeLessThan(5_000_000);
    expect(book.sheet('Takeoff').cells.get('A3000')).toBe(2999);
  });

  test('text that looks like a date or a formula stays text', async () => {
    const texts = ['36-1/2', '=HYPERLINK("x")', '+1', '-1', '@a', 'TRUE', "'quoted"];
    await host.writeSheets([sheet('Schedule', [texts.map((text) => cell(text))])], { replace: [] });
    expect(texts.map((_, at) => book.sheet('Schedule').cells.get('ABCDEFG'.charAt(at) + '1'))).toEqual(texts);
  });

  test('ragged rows are filled up to a rectangle', async () => {
    const written = await host.writeSheets([sheet('Takeoff', [[cell(1)], [null, cell(2), cell(3)], []])], {
      replace: [],
    });
    expect(written.ok).toBe(true);
    expect(book.sheet('Takeoff').cells).toEqual(
      new Map([
        ['A1', 1],
        ['B2', 2],
        ['C2', 3],
      ]),
    );
  });

  test('a filled sheet of the same name is refused and untouched unless it may be replaced', async () => {
    book = new FakeWorkbook({ Takeoff: [['mine']] });
    install(book);
    const before = book.snapshot();
    const refused = await host.writeSheets([takeoff], { replace: [] });
    expect(refused).toEqual({ ok: false, message: expect.stringContaining('"Takeoff" already holds something') });
    expect(book.snapshot()).toEqual(before);

    expect((await host.writeSheets([standards, takeoff], { replace: ['Takeoff'] })).ok).toBe(true);
    expect(book.sheet('Takeoff').cells.get('A1')).toBe('Radius');
    expect(book.sheets.map(({ name }) => name)).toEqual(['Takeoff', 'Standards']);
  });

  test('a sheet that this add-in has locked is replaced and locked again', async () => {
    const locked = { ...takeoff, locked: true };
    await host.writeSheets([standards, locked], { replace: [] });
    expect(book.sheet('Takeoff').protected).toBe(true);
    expect(await host.writeSheets([standards, locked], { replace: ['Standards', 'Takeoff'] })).toEqual({
      ok: true,
      value: undefined,
    });
    expect(book.sheet('Takeoff').protected).toBe(true);
  });

  test('folded columns are hidden', async () => {
    await host.writeSheets([sheet('Takeoff', [[cell(1)]], { folded: [{ first: 1, last: 2 }] })], { replace: [] });
    expect(book.sheet('Takeoff').looks.get('B1:C1048576 columnHidden')).toBe(true);
  });

  test('rows and filters that hid something of a replaced sheet do so no more', async () => {
    book = new FakeWorkbook({ Takeoff: [['mine'], [1], [2]] });
    book.sheet('Takeoff').hiddenRows.add(1);
    book.sheet('Takeoff').filter = 'A1:A3';
    install(book);
    await host.writeSheets([standards, takeoff], { replace: ['Takeoff'] });
    expect(book.sheet('Takeoff').hiddenRows.size).toBe(0);
    expect(book.sheet('Takeoff').filter).toBeNull();
    const all = 'A1:XFD1048576';
    expect(book.sheet('Takeoff').looks.get(`${all} columnHidden`)).toBe(false);
  });

  test('filter buttons are put on before the sheet is locked, and print set-up is that of a file', async () => {
    const printed = sheet('Takeoff', [[cell('A')], [cell(1)], [cell(2)]], {
      autoFilter: 'A1:A3',
      locked: true,
      landscape: true,
      pagesWide: 2,
      frozenColumns: 1,
      repeatRows: [1, 1],
      pageBreaks: [2],
      printArea: 'A1:B3',
    });
    expect(await host.writeSheets([printed], { replace: [] })).toEqual({ ok: true, value: undefined });
    const { filter, looks } = book.sheet('Takeoff');
    expect(filter).toBe('A1:A3');
    expect(Object.fromEntries([...looks].filter(([name]) => /^(pageLayout|horizontalPageBreaks)/.test(name)))).toEqual({
      'pageLayout.paperSize': 'Letter',
      'pageLayout.orientation': 'Landscape',
      'pageLayout.zoom': { horizontalFitToPages: 2 },
      'pageLayout.leftMargin': 28.8,
      'pageLayout.rightMargin': 28.8,
      'pageLayout.topMargin': 43.2,
      'pageLayout.bottomMargin': 43.2,
      'pageLayout.headerMargin': 21.6,
      'pageLayout.footerMargin': 21.6,
      'pageLayout.headersFooters.defaultForAllPages.leftFooter': '&A',
      'pageLayout.headersFooters.defaultForAllPages.rightFooter': 'Page &P of &N',
      'pageLayout.setPrintTitleRows': ['$1:$1'],
      'pageLayout.setPrintTitleColumns': ['$A:$A'],
      'pageLayout.setPrintArea': ['A1:B3'],
      'horizontalPageBreaks.removePageBreaks': [],
      'horizontalPageBreaks.add': ['A3'],
    });
  });

  test('the cells that an array fills are left empty', async () => {
    const formula: Cell = { value: 1, formula: 'ARCH.GUIDES(30,3.5)', spill: { rows: 2, columns: 2 } };
    await host.writeSheets(
      [
        sheet('Takeoff', [
          [formula, cell(2), cell('x')],
          [cell(3), cell(4)],
        ]),
      ],
      { replace: [] },
    );
    expect([...book.sheet('Takeoff').cells]).toEqual([
      ['A1', '=ARCH.GUIDES(30,3.5)'],
      ['C1', 'x'],
    ]);
  });

  test('a formula that repeats down its column is sent once, and stands in every row as it should', async () => {
    const rows = Array.from({ length: 400 }, (_, at): Cell[] => [
      cell(at),
      cell(0, { formula: `ARCH.RADIUS(A${at + 1},$A$1)+Other!B${at + 1}&"A${1}"` }),
      cell(0, { formula: at === 200 ? 'A1' : `B${at + 1}*2` }),
    ]);
    await host.writeSheets([sheet('Takeoff', rows)], { replace: [] });
    const { cells } = book.sheet('Takeoff');
    for (const [at, row] of rows.entries()) {
      expect(cells.get(`B${at + 1}`)).toBe(`=${row[1]!.formula}`);
      expect(cells.get(`C${at + 1}`)).toBe(`=${row[2]!.formula}`);
    }
    expect(JSON.stringify(book.requests).split('ARCH.RADIUS').length - 1).toBe(1);
  });

  test('a name that the sheet alone knows gives way to the workbook’s, and is back after a failure', async () => {
    book = new FakeWorkbook({ Standards: [['x']] });
    book.sheet('Standards').names.set('Shop_reveal', '=Standards!$B$9');
    book.sheet('Standards').names.set('mine', '=Standards!$C$1');
    install(book);
    const picture = book.snapshot();
    book.fault = { sync: 4, after: 0, code: 'GeneralException' };
    expect((await host.writeSheets([standards], { replace: ['Standards'] })).ok).toBe(false);
    expect(book.sheet('Standards').names.get('Shop_reveal')).toBe('=Standards!$B$9');
    expect(book.names.size).toBe(0);
    book.sheet('Standards').names = new Map([...book.sheet('Standards').names].reverse()); // their order is no matter
    expect(book.snapshot()).toEqual(picture);
    expect((await host.writeSheets([standards], { replace: ['Standards'] })).ok).toBe(true);
    expect([...book.sheet('Standards').names.keys()]).toEqual(['mine']);
    expect([...book.names]).toEqual([['Shop_reveal', '=Standards!$B$1']]);
    expect(book.sheets.every(({ names }) => !names.has('Shop_reveal'))).toBe(true); // no copy left a twin
  });

  test.each([
    [2, 1],
    [3, 0],
    [0, 2],
    [0, 0],
  ])('%i rows and %i columns are frozen, whatever was frozen before', async (rows, columns) => {
    book = new FakeWorkbook({ Takeoff: [] });
    book.sheet('Takeoff').frozen = { rows: 5, columns: 5 };
    install(book);
    const frozen = sheet('Takeoff', [[cell(1)]], { frozenRows: rows, frozenColumns: columns });
    expect((await host.writeSheets([frozen], { replace: [] })).ok).toBe(true);
    expect(book.sheet('Takeoff').frozen).toEqual({ rows, columns });
  });

  test('a sheet whose name differs in upper and lower case alone is refused by name, and nothing is touched', async () => {
    book = new FakeWorkbook({ TAKEOFF: [['mine']] });
    install(book);
    const before = book.snapshot();
    const refused = await host.writeSheets([standards, takeoff], { replace: ['Takeoff'] });
    expect(!refused.ok && refused.message).toMatch(/^Rename the sheet "TAKEOFF": "Takeoff" is to be written/);
    expect(book.snapshot()).toEqual(before);
  });
});

describe('when Excel fails half-way', () => {
  const before = {
    Takeoff: [
      ['mine', 1],
      ['=A1&"x"', 2],
    ],
    Sheet1: [[7]],
  };

  // 1 and 2 look, 3 lifts the lock, 4 makes room, 5 and 6 write a sheet each, 7 settles.
  test.each([1, 2, 3, 4, 5, 6, 7])(
    'in round trip %i, after whichever of its actions, the workbook is as it was and the sentence says so',
    async (sync) => {
      let actions = 1;
      for (let after = 0; after < actions; after++) {
        book = new FakeWorkbook(before);
        book.names.set('Shop_reveal', '=Sheet1!$A$1');
        book.sheet('Takeoff').frozen = { rows: 2, columns: 1 };
        book.sheet('Takeoff').protected = true;
        install(book);
        const picture = book.snapshot();
        book.fault = { sync, after, code: 'GeneralException' };
        const failed = await host.writeSheets([standards, takeoff], { replace: ['Takeoff'] });
        actions = book.syncs[sync - 1]!.actions;
        expect(failed.ok).toBe(false);
        // Whatever goes wrong where the lock is lifted is told as a password.
        const told = sync === 3 ? 'Nothing was written.' : 'Excel refused: GeneralException';
        expect(!failed.ok && failed.message).toContain(told);
        // Until then nothing was changed that would have to be put back.
        if (sync > 3) expect(!failed.ok && failed.message).toMatch(/The workbook is as it was\.$/);
        expect(book.snapshot()).toEqual(picture);
      }
    },
  );

  test('a stop pressed while writing puts everything back', async () => {
    book = new FakeWorkbook(before);
    install(book);
    const picture = book.snapshot();
    const stop = new AbortController();
    const rows = Array.from({ length: 3000 }, () => [cell('x'.repeat(3000))]);
    const stopped = await host.writeSheets([sheet('Takeoff', rows)], {
      replace: ['Takeoff'],
      signal: stop.signal,
      onProgress: () => stop.abort(),
    });
    expect(stopped).toEqual({ ok: false, message: 'Stopped. The workbook is as it was.' });
    expect(book.snapshot()).toEqual(picture);
  });

  test.each([
    ['rows', { rows: 3, columns: 0 }],
    ['columns', { rows: 0, columns: 2 }],
    ['no panes', { rows: 0, columns: 0 }],
  ])('frozen %s are as they were', async (_, frozen) => {
    book = new FakeWorkbook(before);
    book.sheet('Takeoff').frozen = frozen;
    install(book);
    book.fault = { sync: 5, after: 1, code: 'GeneralException' };
    expect((await host.writeSheets([takeoff], { replace: ['Takeoff'] })).ok).toBe(false);
    expect(book.sheet('Takeoff').frozen).toEqual(frozen);
  });

  /** From a request on for which `when` holds, none gets through: the add-in is gone. */
  function closedOnce(when: () => boolean): () => void {
    const sync = book.sync.bind(book);
    let closed = false;
    book.sync = async (body) => {
      if (closed) throw new Error('the add-in is gone');
      const answer = await sync(body);
      closed = when();
      return answer;
    };
    return () => {
      book.sync = sync;
    };
  }

  describe('the add-in closed while filling', () => {
    let picture: unknown;
    beforeEach(async () => {
      book = new FakeWorkbook(before);
      book.sheet('Takeoff').frozen = { rows: 2, columns: 1 };
      install(book);
      picture = book.snapshot();
      const opened = closedOnce(() => book.sheets.some(({ name }) => name.startsWith('~before')));
      await host.writeSheets([takeoff], { replace: ['Takeoff'] });
      opened();
      expect(book.sheet('Takeoff').cells.size).toBe(0);
    });

    test('changes nothing at the next start, on whichever computer, and says whose filling it was and when', async () => {
      const left = book.snapshot();
      const found = await lookForBroken();
      expect(found).toMatchObject({ ok: true, value: { sheets: ['Takeoff'], filling: { whose: thisComputer() } } });
      const filling = found.ok ? found.value.filling : null;
      expect(Math.abs(Date.now() - Date.parse(filling!.when))).toBeLessThan(60_000);
      expect(whoseAndWhen(filling, 'en-US')).toMatch(/^on this computer, \w+ \d+, \d{4} at \d+:\d\d/);
      expect(whoseAndWhen({ ...filling!, whose: 'other' }, 'en-US')).toMatch(/^on another computer, /);
      expect(book.snapshot()).toEqual(left);
    });

    test('leaves the old sheet to be put back when the user says so', async () => {
      expect(await settleBroken(true)).toEqual({ ok: true, value: ['Takeoff'] });
      expect(book.snapshot()).toEqual(picture);
      expect(await lookForBroken()).toEqual({ ok: true, value: { sheets: [], filling: null } });
    });

    test('leaves everything as it stands when the user says so, without the copies', async () => {
      expect(await settleBroken(false)).toEqual({ ok: true, value: [] });
      expect(book.sheets.map(({ name }) => name)).toEqual(['Takeoff', 'Sheet1']);
      expect(book.sheet('Takeoff').cells.size).toBe(0);
      expect(book.settings.size).toBe(0);
    });

    test('no other filling goes over it before that is answered', async () => {
      const left = book.snapshot();
      const refused = await host.writeSheets([takeoff], { replace: ['Takeoff'] });
      expect(!refused.ok && refused.message).toMatch(/^A filling of "Takeoff" was broken off.*Nothing was written\.$/);
      expect(book.snapshot()).toEqual(left);
    });
  });

  test('a copy that could not be cleared away goes with the next filling', async () => {
    book = new FakeWorkbook(before);
    install(book);
    book.fault = { sync: 6, after: 0, code: 'GeneralException' };
    expect((await host.writeSheets([takeoff], { replace: ['Takeoff'] })).ok).toBe(true);
    expect(await lookForBroken()).toEqual({ ok: true, value: { sheets: [], filling: null } });
    expect(book.sheets.map(({ name }) => name)).toContain('~done Takeoff');
    expect((await host.writeSheets([takeoff], { replace: ['Takeoff'] })).ok).toBe(true);
    expect(book.sheets.map(({ name }) => name)).toEqual(['Takeoff', 'Sheet1']);
  });

  /** Something happens in Excel right after the n-th round trip. */
  function afterSync(count: number, happens: () => void): void {
    const sync = book.sync.bind(book);
    let left = count;
    book.sync = async (body) => {
      const answer = await sync(body);
      if (--left === 0) happens();
      return answer;
    };
  }

  test('a sheet with a password is left alone, the other sheets are locked again, and the sentence names it', async () => {
    book = new FakeWorkbook({ ...before, Standards: [['x']] });
    for (const name of ['Standards', 'Takeoff']) book.sheet(name).protected = true;
    book.sheet('Takeoff').password = 'secret';
    install(book);
    const picture = book.snapshot();
    const failed = await host.writeSheets([standards, takeoff], { replace: ['Standards', 'Takeoff'] });
    expect(failed).toEqual({
      ok: false,
      message:
        'The sheet "Takeoff" is protected with a password. Take its protection off, then try again. Nothing was written.',
    });
    expect(book.snapshot()).toEqual(picture);
  });

  test.each(['Takeoff', 'Standards'])(
    '%s deleted by hand meanwhile: the other sheets are as they were',
    async (name) => {
      book = new FakeWorkbook(before);
      book.sheet('Takeoff').protected = true;
      install(book);
      afterSync(4, () => {
        book.sheets = book.sheets.filter((sheet) => sheet.name !== name);
      });
      const failed = await host.writeSheets([standards, takeoff], { replace: ['Takeoff'] });
      expect(!failed.ok && failed.message).toContain('A sheet that was there a moment ago is gone.');
      const kept = new FakeWorkbook(before).sheets.filter((sheet) => sheet.name !== name);
      for (const { name: other, cells } of kept) expect(book.sheet(other).cells).toEqual(cells);
      expect(book.sheets.filter(({ visibility }) => visibility === 'Visible').map((sheet) => sheet.name)).toEqual(
        kept.map((sheet) => sheet.name),
      );
    },
  );

  test('a cell edited from half-way on: what stood there can be put back afterwards', async () => {
    book = new FakeWorkbook(before);
    install(book);
    const picture = book.snapshot();
    afterSync(3, () => {
      book.editing = true;
    });
    const failed = await host.writeSheets([takeoff], { replace: ['Takeoff'] });
    expect(!failed.ok && failed.message).toContain('Press Enter or Escape');
    expect(!failed.ok && failed.message).toContain('the top of this pane asks whether to put it back');
    book.editing = false;
    expect(await settleBroken(true)).toEqual({ ok: true, value: ['Takeoff'] });
    expect(book.snapshot()).toEqual(picture);
  });

  test('a cell being edited is told in words', async () => {
    book.editing = true;
    const refused = await host.writeSheets([takeoff], { replace: [] });
    expect(!refused.ok && refused.message).toContain('Press Enter or Escape');
  });
});

describe('writing a few cells to Excel', () => {
  test('refuses to overwrite filled cells unless told to', async () => {
    book = new FakeWorkbook({
      Sheet1: [
        [1, null],
        [null, 'x'],
      ],
    });
    install(book);
    const refused = await host.writeCells('Sheet1', 'A1', [[5, 6]], false);
    expect(refused).toEqual({ ok: false, message: 'Sheet1!A1 already holds something. Nothing was written.' });
    expect(book.sheet('Sheet1').cells.get('A1')).toBe(1);
    expect((await host.writeCells('Sheet1', 'A1', [[5, '=A1*2']], true)).ok).toBe(true);
    expect(book.sheet('Sheet1').cells.get('B1')).toBe('=A1*2');
  });

  describe('on a locked sheet', () => {
    beforeEach(() => {
      book = new FakeWorkbook({ Takeoff: [['=ARCH.RADIUS(36,6)']] });
      book.sheet('Takeoff').protected = true;
      install(book);
    });

    test('goes through where it was asked to write over, and locks again', async () => {
      expect((await host.writeCells('Takeoff', 'A1', [[30]], true)).ok).toBe(true);
      expect(book.sheet('Takeoff').cells.get('A1')).toBe(30);
      expect(book.sheet('Takeoff').protected).toBe(true);
    });

    test('is refused in words where it was not', async () => {
      const refused = await host.writeCells('Takeoff', 'B1', [[30]], false);
      expect(!refused.ok && refused.message).toContain('is protected');
      expect(book.sheet('Takeoff').cells.has('B1')).toBe(false);
    });

    test('locks again when the write fails', async () => {
      book.fault = { sync: 3, after: 3, code: 'GeneralException' };
      expect((await host.writeCells('Takeoff', 'A1', [[30]], true)).ok).toBe(false);
      expect(book.sheet('Takeoff').protected).toBe(true);
    });

    test('is refused with a true sentence where the lock has a password', async () => {
      book.sheet('Takeoff').password = 'secret';
      expect(await host.writeCells('Takeoff', 'A1', [[30]], true)).toEqual({
        ok: false,
        message:
          'The sheet "Takeoff" is protected with a password. Take its protection off, then try again. Nothing was written.',
      });
      expect(book.sheet('Takeoff').cells.get('A1')).toBe('=ARCH.RADIUS(36,6)');
    });
  });

  test('ragged rows, a missing sheet and a bad address are refused in words', async () => {
    expect((await host.writeCells('Sheet1', 'A1', [[1], [1, 2]], true)).ok).toBe(false);
    expect(await host.writeCells('Nowhere', 'A1', [[1]], true)).toEqual({
      ok: false,
      message: 'There is no sheet "Nowhere".',
    });
    expect((await host.writeCells('Sheet1', '1A', [[1]], true)).ok).toBe(false);
  });
});

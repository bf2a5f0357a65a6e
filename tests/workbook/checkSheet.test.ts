import { describe, expect, it } from 'vitest';
import { amountOf, checkQuote, hangs, priceOff, readQuote, summaryText, type QuoteCheck } from '../../src/check/quote';
import { defaultStandards } from '../../src/standards';
import { takeoff } from '../../src/takeoff/takeoff';
import { checkSheet, CHECK_HEAD_ROWS } from '../../src/workbook/checkSheet';
import type { Cell, Sheet } from '../../src/workbook/sheet';
import { takeoffSource } from '../../src/workbook/takeoff/sheet';
import { checkRows, exampleCheck, sharedLines } from '../check/quote/example';
import { ANSWERS, checkOf, quotedTakeoff } from '../check/suppliersQuotes';
import { plant, rightLine, tableOf } from '../check/quote/planted';
import { random } from '../random';
import { opening, randomOpenings } from '../takeoff/openings';
import { valueOf } from '../value';

const SHARED = sharedLines();

/** The lines of a Check sheet by the quote's row, cells by column key. */
function linesOf(sheet: Sheet, check: QuoteCheck): Map<number, Record<string, Cell>> {
  const rows = sheet.rows.slice(CHECK_HEAD_ROWS, CHECK_HEAD_ROWS + check.lines.length);
  return new Map(
    rows.map((row) => [
      Number(row[0]!.value),
      Object.fromEntries(sheet.columnKeys!.map((key, at) => [key, row[at] ?? { value: null }])),
    ]),
  );
}

describe('the Check sheet', () => {
  it('prints one page wide: verdict, reason, and every quoted figure beside the right one', () => {
    const sheet = checkSheet(SHARED, true);
    expect(sheet.pagesWide).toBe(1);
    const pairs = ['quantity', 'radius', 'length', 'extension'].map((key) => [key, `${key}Right`]);
    for (const [quoted, right] of [...pairs, ['verdict', 'reason'], ['unitPrice', 'priceRight']])
      expect(sheet.columnKeys!.indexOf(right!)).toBe(sheet.columnKeys!.indexOf(quoted!) + 1);
    const folded = sheet.folded![0]!;
    expect(folded.first).toBeGreaterThan(sheet.columnKeys!.indexOf('description'));
  });

  it.each([true, false])(
    'gives each line of the example the verdict and the money of the check (plain: %s)',
    async (plain) => {
      const { check } = await exampleCheck();
      const lines = linesOf(checkSheet(check, plain), check);
      for (const one of check.lines) {
        const { line, verdict, corrected } = one;
        const cells = lines.get(line.row)!;
        expect([line.row, cells['verdict']!.value]).toEqual([line.row, verdict]);
        const off = amountOf(line)! - corrected!;
        expect([line.row, Number(cells['off']!.value)]).toEqual([line.row, expect.closeTo(off, 2) as number]);
        const against = [Number(cells['priceOff']!.value), Number(cells['hangs']!.value)];
        expect([line.row, ...against]).toEqual([
          line.row,
          expect.closeTo(priceOff(one), 2) as number,
          hangs(one) ? amountOf(line) : 0,
        ]);
      }
    },
  );

  it('gives 600 lines with mistakes planted in half of them the verdicts of the check, inches and millimeters', () => {
    for (const unit of ['in', 'mm'] as const) {
      const from = random(5);
      const standards = defaultStandards(unit);
      const taken = takeoff(randomOpenings(320, from, standards), standards);
      const made = taken.openings.flatMap((row) => {
        if (row.own === null) return [];
        const line = rightLine(row, from);
        if (from.between(0, 1) < 0.5) plant(line, row, taken, from);
        return [line];
      });
      const check = checkQuote(valueOf(readQuote(tableOf(made, from, unit), standards)), taken);
      const lines = linesOf(checkSheet(check, false), check);
      const off = check.lines.filter(({ line, verdict }) => lines.get(line.row)!['verdict']!.value !== verdict);
      expect(off.map(({ line, findings }) => [line.mark, findings.map(({ text }) => text)])).toEqual([]);
    }
  }, 60_000);

  it('gives every line of 40 suppliers’ quotes the verdict of the check, and the reason by the same words', async () => {
    const taken = await quotedTakeoff();
    const counts = { live: 0, all: 0 };
    for (const file of Object.keys(ANSWERS)) {
      const check = await checkOf(file, taken);
      const lines = linesOf(checkSheet(check, false), check);
      const sheet = check.lines.map(({ line }) => [line.row, lines.get(line.row)!['verdict']!.value]);
      expect([file, sheet]).toEqual([file, check.lines.map(({ line, verdict }) => [line.row, verdict])]);
      const silent = check.lines.filter(({ line }) => lines.get(line.row)!['reason']!.value === '');
      expect([file, silent.map(({ line }) => line.row)]).toEqual([file, []]);
      const live = check.lines.filter(({ line }) => lines.get(line.row)!['verdict']!.formula !== undefined);
      // Lines for several openings, alternates and marks that aren't ours have no cells to be judged by.
      counts.live += live.length;
      counts.all += check.lines.length;
    }
    expect(counts.live).toBeGreaterThan(0.95 * counts.all);
  }, 60_000);

  it('finds our own Takeoff sheet, read as a quote, to agree line by line: no column of ours is unknown', () => {
    for (const unit of ['in', 'mm'] as const) {
      const standards = defaultStandards(unit);
      const taken = takeoff(randomOpenings(60, random(7), standards), standards);
      const rows = [...takeoffSource(taken, null).rows];
      const values = rows.map((row) => row.map((cell) => cell?.value ?? null));
      const quote = valueOf(readQuote({ name: 'Takeoff', firstRow: 1, rows: values }, standards));
      expect(quote.setAside.filter(({ understood }) => !understood)).toEqual([]);
      const complete = quote.lines.filter(({ mark }) =>
        taken.openings.some((row) => row.opening.mark === mark && row.own !== null),
      );
      const { lines } = checkQuote({ ...quote, items: complete, lines: complete }, taken);
      expect(lines.length).toBeGreaterThan(30);
      expect(
        lines.filter(({ verdict }) => verdict === 'differs').map(({ findings }) => findings.map(({ text }) => text)),
      ).toEqual([]);
    }
  });

  it('calls no line right that has a figure under a heading that isn’t understood, and doesn’t say it wasn’t given', () => {
    const taken = takeoff([opening({ head: 'half round', span: 36, mark: 'W1' })], defaultStandards());
    const check = checkRows(
      [
        ['Mark', 'Qty', 'Zorp', 'Each'],
        ['W1', 1, '68 1/8', taken.openings[0]!.cost!.unitPrice],
      ],
      taken,
    );
    const cells = linesOf(checkSheet(check, true), check).get(2)!;
    expect(cells['verdict']!.value).toBe("can't tell");
    expect(cells['openingSays']!.value).toContain('column "Zorp" was not understood; agrees in quantity and price');
    expect(cells['lengthSays']).toMatchObject({ value: "can't tell: no length read" });
    expect(cells['lengthSays']!.formula).toContain('"can\'t tell: no length read"');
  });

  describe('where several lines are for one opening', () => {
    const lines = linesOf(checkSheet(SHARED, true), SHARED);
    const compared = ['quantitySays', 'lengthSays', 'extensionSays', 'priceSays', 'verdict', 'off'];
    const isLive = (row: number) => compared.every((key) => lines.get(row)![key]!.formula !== undefined);
    const said = (row: number, ...keys: string[]) => keys.map((key) => lines.get(row)![key]!.value);

    it('counts lines that divide its pieces between them together, live', () => {
      expect([2, 3].map((row) => said(row, 'quantitySays', 'verdict', 'off'))).toEqual([
        ['agrees', 'agrees', 0],
        ['agrees', 'agrees', 0],
      ]);
      expect([2, 3].every(isLive)).toBe(true);
    });

    it('says once, on the first of them, how many are missing, and what that is worth', () => {
      expect(said(4, 'quantitySays', 'verdict', 'off')).toEqual(['2 too few', 'differs', -200]);
      expect(said(5, 'quantitySays', 'verdict', 'off')).toEqual(['', 'agrees', 0]);
      expect([4, 5].every(isLive)).toBe(true);
    });

    it('judges the first by itself where it has all pieces, and writes of the second that it is quoted twice', () => {
      expect(said(6, 'quantitySays', 'verdict')).toEqual(['agrees', 'agrees']);
      expect(isLive(6)).toBe(true);
      expect(said(7, 'openingSays', 'verdict', 'off')).toEqual(['W3 is quoted already in row 6', 'differs', 100]);
      expect(isLive(7)).toBe(false);
    });

    it('leaves an alternate out of the count', () => {
      expect(said(8, 'place', 'verdict')).toEqual([null, "can't tell"]);
    });

    it('gives each the verdict and the money of the check', () => {
      for (const { line, verdict, corrected, part } of SHARED.lines) {
        const off = part === 'alternate' ? null : (expect.closeTo(amountOf(line)! - corrected!, 2) as number);
        expect([line.row, ...said(line.row, 'verdict', 'off')]).toEqual([line.row, verdict, off]);
      }
    });
  });

  it('stands with the most money at stake on top', async () => {
    const { check } = await exampleCheck();
    const sheet = checkSheet(check, false);
    const at = sheet.columnKeys!.indexOf('stake');
    const stakes = sheet.rows
      .slice(CHECK_HEAD_ROWS, CHECK_HEAD_ROWS + check.lines.length)
      .map((row) => Number(row[at]!.value));
    expect(stakes).toEqual([...stakes].sort((one, other) => other - one));
    expect(stakes[0]).toBeGreaterThan(stakes.at(-1)!);
  });

  it('uses LENGTHCHECK in the ARCH version, and no function of ours in the plain one', async () => {
    const { check } = await exampleCheck();
    const formulas = (plain: boolean) =>
      checkSheet(check, plain)
        .rows.flat()
        .flatMap((cell) => cell?.formula ?? []);
    expect(formulas(false).filter((formula) => formula.includes('ARCH.LENGTHCHECK('))).not.toEqual([]);
    expect(formulas(true).filter((formula) => formula.includes('ARCH.'))).toEqual([]);
  });

  it('breaks a summary that is wider than the page between its words, and has a longer word stand by itself', () => {
    const taken = takeoff([opening({ head: 'segmental', span: 36, rise: 6, mark: 'W1' })], defaultStandards());
    const marks = Array.from({ length: 45 }, (_one, at) => `W${at + 101}`).join(',');
    expect(marks).toHaveLength(224);
    const check = checkRows(
      [
        ['Mark', 'Description', 'Qty', 'Length', 'Unit price', 'Extension'],
        [marks, 'casing', 1, '43 3/8', 90, 90],
      ],
      taken,
    );
    const sheet = checkSheet(check, true);
    const from = sheet.rows.findIndex((row) => row[0]?.value === 'Summary when it was checked');
    const said = sheet.rows.slice(from + 1).map((row) => String(row[0]!.value));
    expect(said.some((text) => text.includes(marks))).toBe(true);
    expect(said.filter((text) => text.length > 170 && text.trim().includes(' '))).toEqual([]);
    // A continuation is set in; nothing is lost.
    const whole = said.reduce((all, text) => (/^ {4}/.test(text) ? `${all} ${text.slice(4)}` : `${all}\n${text}`));
    expect(whole).toBe(summaryText(check));
  });

  it('writes what a quote says as text, never as a formula', () => {
    const taken = takeoff([opening({ head: 'segmental', span: 36, rise: 6, mark: 'W1' })], defaultStandards());
    const evil = '=HYPERLINK("http://example.com","W1")';
    const check = checkRows(
      [
        ['Mark', 'Description', 'Qty', 'Length', 'Unit price', 'Extension'],
        [evil, '@SUM(A1:A9)', 1, '43 3/8', 90, 90],
        ['W1', "=cmd|'/c calc'!A1", 1, '43 3/8', 90, 90],
        ['', '+1+1 Total', '', '', '', '=1+1'],
      ],
      taken,
    );
    for (const plain of [true, false]) {
      const cells = checkSheet(check, plain).rows.flat();
      const said = cells.filter((cell) => typeof cell?.value === 'string' && /HYPERLINK|cmd|SUM\(A1/.test(cell.value));
      expect(said.length).toBeGreaterThan(0);
      expect(said.filter((cell) => cell!.formula !== undefined)).toEqual([]);
      expect(cells.filter((cell) => /HYPERLINK|cmd\||SUM\(A1:A9/.test(cell?.formula ?? ''))).toEqual([]);
    }
  });
});

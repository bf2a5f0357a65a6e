import { describe, expect, it } from 'vitest';
import { defaultStandards } from '../../../src/standards';
import { fillButton, fits, heading, isAccessible, press } from './drive';
import { filled, readList, usePane } from './usePane';

const withPane = usePane();

describe('the tools', () => {
  it('ask a figure: the figures follow what is typed, and one goes into the cell', async () => {
    await withPane(async (page) => {
      await press(page, 'Figure');
      await page.getByRole('textbox', { name: 'Rise' }).fill('12');
      await page.locator('.drawing').getByText('R 19 1/2').waitFor();
      await page.evaluate(() => globalThis.memory.select('List', 'H9'));
      await page.getByRole('button', { name: /^Put it in the cell.*: Opening radius$/ }).click();
      await page.getByRole('status').getByText('Written into List, cell H9.').waitFor();
      expect(await page.evaluate(() => globalThis.memory.cell('List', 'H9')?.formula)).toBe(
        '=ARCH.HEADRADIUS("segmental",36,12)',
      );
    });
  });

  it('ask a figure: a filled cell is asked about first', async () => {
    await withPane(async (page) => {
      await press(page, 'Figure');
      await page.evaluate(() => globalThis.memory.select('List', 'A2'));
      await page.getByRole('button', { name: /^Put it in the cell.*: Opening radius$/ }).click();
      await page.getByRole('alertdialog', { name: 'Cell A2 of List is not empty' }).waitFor();
      await press(page, 'Leave it');
      expect(await page.evaluate(() => globalThis.memory.cell('List', 'A2')?.value)).toBe('W1');
    });
  });

  it('this cell: an ARCH error shows its sentence and the arguments it saw', async () => {
    await withPane(async (page) => {
      await press(page, 'Cell');
      await page.evaluate(() => {
        globalThis.memory.edit('List', 'H2', '=ARCH.RADIUS(D2,-3)');
        globalThis.memory.select('List', 'H2');
      });
      await page.getByText('got -3').waitFor();
      await page.locator('.arguments').getByText('36', { exact: true }).waitFor();
      await isAccessible(page, 'why-320');
    });
  });

  it('this cell: a row of the takeoff shows its opening, and follows an edit', async () => {
    await withPane(async (page) => {
      await filled(page);
      await press(page, 'Cell');
      const row = await page.evaluate(() => globalThis.memory.written.get('Takeoff')?.body?.[0] ?? 0);
      await page.evaluate((at) => globalThis.memory.select('Takeoff', `B${at}`), row);
      await page.locator('.drawing').getByText('R 30').waitFor();
      await page.evaluate((at) => {
        const column = globalThis.memory.written.get('Takeoff')?.columnKeys?.indexOf('rise') ?? 0;
        globalThis.memory.edit('Takeoff', `${String.fromCharCode(65 + column)}${at}`, 12);
      }, row);
      await page.locator('.drawing').getByText('R 19 1/2').waitFor();
    });
  });

  it('shop: a setting outside its limits is refused beside it, a good one is kept with the workbook', async () => {
    await withPane(async (page) => {
      await press(page, 'Shop');
      await page.getByText('Casing', { exact: true }).click();
      const reveal = page.getByLabel('Reveal in');
      await reveal.fill('99');
      await reveal.press('Enter');
      await page.getByText('Reveal must be a number from 0 to 6; got 99.').waitFor();
      expect(await reveal.inputValue()).toBe('99');
      await isAccessible(page, 'shop-refused-320');
      await reveal.fill('3/16');
      await reveal.press('Enter');
      await page.getByText('got 99').waitFor({ state: 'detached' });
      await reveal.fill('1/4');
      await reveal.press('Enter');
      await expect
        .poll(() =>
          page.evaluate(async () => JSON.stringify(await globalThis.memory.readSetting('archwright.standards'))),
        )
        .toContain('\\"reveal\\": 0.25');
    });
  });

  it('drawings: the guide boards of a set-up are looked at and saved, and those of all in one archive', async () => {
    await withPane(async (page) => {
      await press(page, 'Drawings');
      await page.getByText('Choose a list of openings first').waitFor();
      await press(page, 'Takeoff');
      await readList(page);
      await press(page, 'Drawings');
      await press(page, 'List the pairs of guides');
      await page.locator('svg.drawing').waitFor();
      await isAccessible(page, 'drawings-320');
      const names: string[] = [];
      page.on('download', (file) => names.push(file.suggestedFilename()));
      await press(page, 'Save the drawings (DXF, SVG)');
      await expect.poll(() => names.map((name) => name.split('.').pop()).sort()).toEqual(['dxf', 'svg', 'svg']);
      await press(page, /^Save all \d+ pairs? in one .zip/);
      await expect.poll(() => names.at(-1)).toBe('guide boards.zip');
    });
  });

  it('drawings: the boards of a filled workbook as they are sawn, by its plan', async () => {
    await withPane(async (page) => {
      await press(page, 'Drawings');
      await press(page, 'Draw the boards');
      await page.getByText('Fill the workbook first').waitFor();
      await press(page, 'Takeoff');
      await filled(page);
      await press(page, 'Drawings');
      await press(page, 'Draw the boards');
      await page.locator('.sheet svg.drawing').first().waitFor();
      await fits(page);
      await isAccessible(page, 'boards-320');
    });
  });

  it('drawings: numbers of segments that cost less are listed, and written as segments wanted', async () => {
    // The quarter round costs less out of more segments than out of the two that are chosen for it alone.
    const list = [
      ['Mark', 'Qty', 'Head', 'Width', 'Rise', 'Casing'],
      ['W1', 1, 'half round', 80.5, null, 3.5],
      ['W2', 1, 'quarter round', 49, null, 3.5],
      ['W3', 1, 'segmental', 48, null, 3.5],
    ];
    await withPane(
      async (page) => {
        await filled(page);
        await press(page, 'Drawings');
        await press(page, 'Look for numbers that cost less');
        await page.getByText('All together save').waitFor({ timeout: 30_000 });
        await fits(page);
        await isAccessible(page, 'segments-320');
        await press(page, 'Write them as segments wanted');
        await page
          .getByRole('status')
          .getByText(/^Segments wanted are written for \d+ openings?: W2/)
          .waitFor();
      },
      { sheets: { List: list } },
    );
  });

  it('shop: formulas are frozen only after asking, and entered again in one press', async () => {
    await withPane(async (page) => {
      await filled(page);
      await press(page, 'Shop');
      await press(page, 'Freeze to values');
      await press(page, 'Leave them live');
      await expect.poll(() => page.evaluate(() => document.activeElement?.id)).toBe('freeze');
      await press(page, 'Re-enter ARCH formulas');
      await page
        .getByRole('status')
        .getByText(/^Entered again: \d/)
        .waitFor();
      await press(page, 'Freeze to values');
      await page.getByRole('alertdialog').getByRole('button', { name: 'Freeze to values' }).click();
      await page
        .getByRole('status')
        .getByText(/^Plain figures now: /)
        .waitFor();
      const left = await page.evaluate(async () => JSON.stringify(await globalThis.memory.readFormulas('Takeoff')));
      expect(left).not.toContain('"=');
    });
  });

  it('shop: millimeters are asked about before every setting starts again', async () => {
    await withPane(async (page) => {
      await press(page, 'Shop');
      await page.getByLabel('Unit of length').selectOption('millimeters');
      await page.getByRole('alertdialog', { name: 'Keep this workbook in millimeters?' }).waitFor();
      await press(page, 'Change the unit');
      await page.getByRole('status').getByText('These settings hold now.').waitFor();
      const lengths = new Set(defaultStandards('mm').stock.map((board) => board.length));
      expect(await page.getByLabel('Board lengths on sale').inputValue()).toBe([...lengths].join(', '));
      await press(page, 'Figure');
      await page.locator('.figure-value').getByText(/ mm$/).first().waitFor();
    });
  });

  it('shop: settings are saved as a file that is read again', async () => {
    await withPane(async (page) => {
      await press(page, 'Shop');
      const [saved] = await Promise.all([page.waitForEvent('download'), press(page, 'Save as a file')]);
      expect(saved.suggestedFilename()).toBe('shop-standards.json');
      await page.getByLabel('Use a saved file').setInputFiles((await saved.path())!.replace(/$/, ''));
      await page.getByRole('alert').or(page.getByRole('status')).filter({ hasText: 'Close' }).first().waitFor();
    });
  });
});

describe('a cutting plan', () => {
  const pieces = [
    ['Length', 'Qty'],
    [24.5, 6],
    ['36 1/2', 3],
    [60, 2],
  ];

  it('for the selected lengths is worked out beside the page, and put into the sheet where there is room', async () => {
    await withPane(
      async (page) => {
        await press(page, 'Shop');
        await page.evaluate(() => globalThis.memory.select('Pieces', 'A1:B4'));
        await page.getByLabel('Board lengths on sale').fill("96, 10'");
        await press(page, 'Plan the selected lengths');
        await page.getByText('none costs less').waitFor();
        await isAccessible(page, 'plan-320');
        await fits(page);
        await page.evaluate(() => globalThis.memory.select('Pieces', 'B3'));
        await press(page, 'Put it from the selected cell on');
        await page.getByRole('alert').getByText('already holds something').waitFor();
        await page.evaluate(() => globalThis.memory.select('Pieces', 'D1'));
        await press(page, 'Put it from the selected cell on');
        await page.getByRole('status').getByText('The plan stands on Pieces from cell D1 on.').waitFor();
        expect(await page.evaluate(() => globalThis.memory.cell('Pieces', 'D1')?.value)).toBe('Boards');
      },
      { sheets: { Pieces: pieces } },
    );
  });

  it('says which length cannot be read, and which piece is longer than every board', async () => {
    await withPane(
      async (page) => {
        await press(page, 'Shop');
        await page.evaluate(() => globalThis.memory.select('Pieces', 'A1:B3'));
        await press(page, 'Plan the selected lengths');
        await page.getByRole('alert').getByText('Length in row 3').waitFor();
        await page.evaluate(() => globalThis.memory.select('Pieces', 'A1:B2'));
        await page.getByLabel('Board lengths on sale').fill('20');
        await press(page, 'Plan the selected lengths');
        await page.getByRole('alert').getByText('24 1/2').or(page.getByRole('alert').getByText('24.5')).waitFor();
      },
      {
        sheets: {
          Pieces: [
            ['Length', 'Qty'],
            [24.5, 6],
            ['long', 1],
          ],
        },
      },
    );
  });
});

describe('a quote', () => {
  it('asks for the list first, then says in words which lines differ and why', async () => {
    await withPane(async (page) => {
      await press(page, 'Quote');
      await isAccessible(page, 'quote-without-list');
      await press(page, 'Choose the list');
      await press(page, 'Open the example');
      await heading(page, 'What each column holds');
      await press(page, 'Quote');
      await page.getByLabel('Choose a file').setInputFiles('examples/quote.csv');
      await page.getByText(/lines? agree/).waitFor();
      await page.locator('.opening.wrong').first().waitFor();
      await isAccessible(page, 'quote-checked');
      await page.getByText('Summary for a reply').first().click();
      await expect.poll(() => page.locator('#quote-summary').inputValue()).toContain('against our takeoff');
      await isAccessible(page, 'quote-summary');
      await press(page, 'Write it to the Check sheet');
      await page.getByRole('alert').getByText('Fill the workbook first').waitFor();
      await press(page, 'Takeoff');
      await press(page, /^Fill/);
      await fillButton(page).click();
      await heading(page, 'The workbook is filled');
      await press(page, 'Quote');
      await press(page, 'Write it to the Check sheet');
      await page.getByRole('status').getByText('The Check sheet is written').waitFor();
      expect(await page.evaluate(() => globalThis.memory.written.has('Check'))).toBe(true);
      await press(page, 'Write it to the Check sheet');
      await page.getByRole('alertdialog', { name: 'This workbook already has Check' }).waitFor();
    });
  });

  it('that is no quote is refused in words', async () => {
    await withPane(async (page) => {
      await readList(page);
      await press(page, 'Quote');
      await page.getByLabel('Choose a file').setInputFiles('package.json');
      await page.getByRole('alert').filter({ hasText: 'Close' }).waitFor();
    });
  });
});

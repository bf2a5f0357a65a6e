import { writeFileSync, mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { defaultStandards } from '../../src/standards';
import { launchChromium } from './launch';
import { fillButton, fits, heading, isAccessible, openPane, press, type OpenPane } from './pane/drive';
import { servePane, type PaneServer } from './pane/server';

const LIST = [
  ['Mark', 'Qty', 'Head', 'Width', 'Rise'],
  ['W1', 2, 'segmental', 36, 6],
  ['W2', 1, 'half round', 36, null],
  ['W3', 1, 'segmental', 48, null],
];

let browser: Browser;
let server: PaneServer;

beforeAll(async () => {
  [browser, server] = await Promise.all([launchChromium(), servePane()]);
});
afterAll(async () => {
  await browser?.close();
  await server?.close();
});

async function withPane(
  work: (page: Page, pane: OpenPane) => Promise<void>,
  options: Parameters<typeof openPane>[2] & { readonly sheets?: PaneServer['sheets'] } = {},
): Promise<void> {
  const { sheets = { List: LIST }, ...others } = options;
  server.sheets = sheets;
  const pane = await openPane(browser, server, others);
  await work(pane.page, pane);
  await pane.close();
}

async function readList(page: Page): Promise<void> {
  await press(page, 'Read it');
  await heading(page, 'What each column holds');
}
async function toFill(page: Page): Promise<void> {
  await readList(page);
  await press(page, 'See the 3 openings');
  await press(page, 'Go on to fill the workbook');
}

describe('first use', () => {
  it('takes the example from one click to a filled workbook and to the row that needs something', async () => {
    await withPane(async (page) => {
      await press(page, 'Open the example');
      await heading(page, 'What each column holds');
      await press(page, /^See the \d+ openings/);
      await press(page, 'Go on to fill the workbook');
      await fillButton(page).click();
      await heading(page, 'The workbook is filled');
      await page.locator('button.troubled').first().click();
      const at = await page.evaluate(() => globalThis.memory.cellAt());
      expect(at).toMatchObject({ ok: true, value: { sheet: 'Takeoff' } });
    });
  });

  it('offers the example no more once a takeoff stands in the workbook', async () => {
    await withPane(async (page) => {
      await toFill(page);
      await fillButton(page).click();
      await heading(page, 'The workbook is filled');
      await press(page, /^List/);
      expect(await page.getByText('First time here?').count()).toBe(0);
    });
  });
});

describe('ways to choose the list', () => {
  const folder = mkdtempSync(join(tmpdir(), 'lists-'));
  const file = (name: string, content: string | Buffer) => {
    const path = join(folder, name);
    writeFileSync(path, content);
    return path;
  };

  it('the selected cells', async () => {
    await withPane(async (page) => {
      await page.evaluate(() => globalThis.memory.select('List', 'B2'));
      await press(page, 'Read the selected cells');
      await heading(page, 'What each column holds');
    });
  });

  it('a file, comma-separated or a workbook', async () => {
    for (const name of ['schedule.csv', 'schedule.xlsx']) {
      await withPane(async (page) => {
        await page.locator('input[type=file]').setInputFiles(`examples/${name}`);
        await page.locator('.columns, .plain button, .notice').first().waitFor();
        expect(await page.locator('.notice').allInnerTexts()).toEqual([]);
        if (await page.getByRole('heading', { name: 'Which one is the schedule?' }).count()) {
          await isAccessible(page, `which-table-${name}`);
          await page.locator('.plain button').first().click();
        }
        await heading(page, 'What each column holds');
      });
    }
  });

  it('a file dropped on the pane', async () => {
    await withPane(async (page) => {
      const data = await page.evaluateHandle(() => {
        const transfer = new DataTransfer();
        transfer.items.add(new File(['Mark,Width,Rise,Head\nW1,36,6,segmental\n'], 'list.csv'));
        return transfer;
      });
      await page.dispatchEvent('.drop', 'drop', { dataTransfer: data });
      await heading(page, 'What each column holds');
    });
  });

  it('pasted rows', async () => {
    await withPane(async (page) => {
      await page.getByLabel('Paste the rows here').fill('Mark\tWidth\tRise\tHead\nW1\t36\t6\tsegmental\n');
      await press(page, 'Read the pasted rows');
      await heading(page, 'What each column holds');
    });
  });

  it('a thousand rows from the clipboard', async () => {
    await withPane(async (page) => {
      await page.evaluate(() => {
        const row = 'W1\t36\t6\tsegmental';
        const clipboardData = new DataTransfer();
        clipboardData.setData('text/plain', ['Mark\tWidth\tRise\tHead', ...Array(1000).fill(row)].join('\n'));
        document
          .getElementById('paste')!
          .dispatchEvent(new ClipboardEvent('paste', { clipboardData, bubbles: true, cancelable: true }));
      });
      await press(page, 'Read the pasted rows');
      await page.getByRole('button', { name: 'See the 1,000 openings' }).waitFor();
    });
  });

  it.each([
    ['empty.csv', ''],
    ['words.csv', 'Dear all,\nplease find the schedule in the other mail.\n'],
    ['cut.xlsx', Buffer.from('PK\x03\x04 cut short')],
    ['picture.csv', Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0, 0, 0])],
    ['old.xls', Buffer.from([0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1])],
  ])('but not %s: the pane says why and stays', async (name, content) => {
    await withPane(async (page) => {
      await page.locator('input[type=file]').setInputFiles(file(name, content));
      const told = page.getByRole('alert').filter({ hasText: 'Close' });
      await told.waitFor();
      expect((await told.innerText()).length).toBeGreaterThan(20);
      await heading(page, 'Where is the builder’s schedule?');
      await isAccessible(page, `refused-${name}`);
    });
  });

  it('never takes what a file says for anything but text', async () => {
    const hostile = '<img src=x onerror=alert(1)>';
    await withPane(async (page) => {
      await page
        .getByLabel('Paste the rows here')
        .fill(`Mark,Width,Rise,Head,${hostile}\n"${hostile}",36,,segmental,=1+1\n`);
      await press(page, 'Read the pasted rows');
      await press(page, 'See the 1 opening');
      await page.getByRole('heading', { level: 3, name: hostile }).waitFor();
      expect(await page.locator('.page img').count()).toBe(0);
    });
  });
});

describe('headings', () => {
  it('change by a drop-down, and the openings with them', async () => {
    await withPane(async (page) => {
      await readList(page);
      await page.getByLabel('Rise', { exact: true }).selectOption('Not used');
      await page.getByText('One column is not used').waitFor();
      await press(page, 'See the 3 openings');
      await page.getByText('2 openings to look at').waitFor();
    });
  });

  it('keep the focus on the drop-down that was changed', async () => {
    await withPane(async (page) => {
      await readList(page);
      const width = page.getByLabel('Width', { exact: true });
      await width.focus();
      await width.selectOption('Rough opening, width');
      await press(page, 'See the 3 openings');
      await page.getByText('span 34″').first().waitFor();
      await press(page, /^Headings/);
      await width.focus();
      await width.selectOption('Width of the opening');
      await expect.poll(() => page.evaluate(() => document.activeElement?.id)).toBe('meaning-3');
    });
  });
});

describe('openings', () => {
  it('take a missing rise where they stand, and say why they do not take another text', async () => {
    await withPane(async (page) => {
      await readList(page);
      await press(page, 'See the 3 openings');
      const rise = page.getByLabel('Rise of W3');
      await rise.fill('about six');
      await rise.press('Enter');
      await page.getByText('you typed "about six"').waitFor();
      expect(await rise.getAttribute('aria-invalid')).toBe('true');
      await isAccessible(page, 'openings-refused-320');
      await rise.fill('');
      await rise.press('Enter');
      await page.getByText('you typed "about six"').waitFor({ state: 'detached' });
      await rise.fill('6 1/2');
      await rise.press('Enter');
      await page.getByText('3 ready').waitFor();
      expect(await page.getByText('to look at').count()).toBe(0);
      await expect.poll(() => page.evaluate(() => document.activeElement?.textContent)).toContain('Go on to fill');
    });
  });

  it('show the opening to scale, and the drawing follows the figures', async () => {
    await withPane(async (page) => {
      await readList(page);
      await press(page, 'See the 3 openings');
      await press(page, /^W1/);
      const drawing = page.locator('.drawing');
      await drawing.getByText('R 30').waitFor();
      const rise = page.getByLabel('Rise of W1');
      await rise.fill('12');
      await rise.press('Enter');
      await drawing.getByText('R 19 1/2').waitFor();
      await page.getByText('changed by you').waitFor();
      await press(page, 'Put back what the list says');
      await drawing.getByText('R 30').waitFor();
      expect(await rise.inputValue()).toBe('6');
    });
  });

  it('list a thousand a page at a time, attention first', async () => {
    const many = Array.from({ length: 1000 }, (_, at) => [
      `M${at}`,
      1,
      'segmental',
      36 + (at % 40),
      at === 999 ? null : 6,
    ]);
    await withPane(
      async (page) => {
        await readList(page);
        await press(page, 'See the 1,000 openings');
        await page.getByRole('heading', { level: 3, name: /M999/ }).waitFor();
        expect(await page.locator('.openings > li').count()).toBe(50);
        await press(page, /^Show more/);
        await expect.poll(() => page.locator('.openings > li').count()).toBe(100);
      },
      { sheets: { List: [LIST[0]!, ...many] } },
    );
  });
});

describe('filling', () => {
  it('asks before it writes over, with the harmless answer in focus, and Escape leaves all as it is', async () => {
    await withPane(
      async (page) => {
        await toFill(page);
        await fillButton(page).click();
        const ask = page.getByRole('alertdialog', { name: 'This workbook already has Takeoff' });
        await ask.waitFor();
        expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('Leave as it is');
        await isAccessible(page, 'ask-320');
        await page.keyboard.press('Escape');
        await ask.waitFor({ state: 'detached' });
        await expect.poll(() => page.evaluate(() => document.activeElement?.id)).toBe('fill');
        expect(await page.evaluate(() => globalThis.memory.cell('Takeoff', 'A1')?.value)).toBe('mine');
        await fillButton(page).click();
        await press(page, 'Write over');
        await heading(page, 'The workbook is filled');
      },
      { sheets: { List: LIST, Takeoff: [['mine']] } },
    );
  });

  it('stops when told to and leaves the workbook as it was', async () => {
    await withPane(async (page) => {
      await toFill(page);
      // A workbook that takes its time: a stop can come between two sheets.
      await page.evaluate(() => {
        const write = globalThis.memory.writeSheets.bind(globalThis.memory);
        globalThis.memory.writeSheets = async (sheets, options) => {
          options.onProgress?.(1, 10);
          while (!options.signal?.aborted) await new Promise((resume) => setTimeout(resume, 20));
          return write(sheets, options);
        };
      });
      await fillButton(page).click();
      await page.getByRole('progressbar').waitFor();
      await page.getByText('1 of 10').waitFor();
      await isAccessible(page, 'filling-320');
      await press(page, 'Stop');
      await page.getByRole('alert').getByText('Stopped. The workbook is as it was.').waitFor();
      expect(await page.evaluate(() => globalThis.memory.sheetNames())).toEqual({ ok: true, value: ['List'] });
    });
  });

  it.each([
    ['a cell is being edited', { editing: true }, 'A cell is being edited. Press Enter or Escape in the sheet'],
    ['a sheet cannot be written', { failAfterSheets: 1 }, 'could not be written. The workbook is as it was.'],
  ])('says so in the pane when %s', async (_what, faults, sentence) => {
    await withPane(async (page) => {
      await toFill(page);
      await page.evaluate((faulty) => Object.assign(globalThis.memory.faults, faulty), faults);
      await fillButton(page).click();
      await page.getByRole('alert').getByText(sentence).waitFor();
      await isAccessible(page, `host-refused-${Object.keys(faults)[0]}`);
    });
  });

  it('writes plain formulas when they are chosen', async () => {
    await withPane(async (page) => {
      await toFill(page);
      await page.getByLabel('Plain formulas').check();
      await fillButton(page).click();
      await heading(page, 'The workbook is filled');
      const text = await page.evaluate(async () => JSON.stringify(await globalThis.memory.readFormulas('Takeoff')));
      expect(text).not.toContain('ARCH.');
    });
  });
});

describe('the tools', () => {
  it('ask a figure: the figures follow what is typed, and one goes into the cell', async () => {
    await withPane(async (page) => {
      await press(page, 'Figure');
      await page.getByRole('textbox', { name: 'Rise' }).fill('12');
      await page.locator('.drawing').getByText('R 19 1/2').waitFor();
      await page.evaluate(() => globalThis.memory.select('List', 'H9'));
      await page.getByRole('button', { name: /^Put it in the cell.*Radius of the opening$/ }).click();
      await page.getByRole('status').getByText('Written into List, cell H9.').waitFor();
      expect(await page.evaluate(() => globalThis.memory.cell('List', 'H9')?.formula)).toBe('=ARCH.RADIUS(36,12)');
    });
  });

  it('ask a figure: a filled cell is asked about first', async () => {
    await withPane(async (page) => {
      await press(page, 'Figure');
      await page.evaluate(() => globalThis.memory.select('List', 'A2'));
      await page.getByRole('button', { name: /^Put it in the cell.*Radius of the opening$/ }).click();
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
      await toFill(page);
      await fillButton(page).click();
      await heading(page, 'The workbook is filled');
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

  it('shop: the guide boards of a set-up are saved as drawings', async () => {
    await withPane(async (page) => {
      await press(page, 'Shop');
      await page.getByText('Choose a list of openings first').waitFor();
      await press(page, 'Takeoff');
      await readList(page);
      await press(page, 'Shop');
      await press(page, 'List the pairs of guides');
      await isAccessible(page, 'drawings-320');
      const names: string[] = [];
      page.on('download', (file) => names.push(file.suggestedFilename()));
      await press(page, 'Save the drawings (DXF, SVG)');
      await expect.poll(() => names.map((name) => name.split('.').pop()).sort()).toEqual(['dxf', 'svg', 'svg']);
    });
  });

  it('shop: formulas are frozen only after asking, and entered again in one press', async () => {
    await withPane(async (page) => {
      await toFill(page);
      await fillButton(page).click();
      await heading(page, 'The workbook is filled');
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

describe('by keyboard alone', () => {
  it('the example is read, fixed and filled', async () => {
    await withPane(async (page) => {
      const tabTo = async (name: RegExp) => {
        for (let press = 0; press < 120; press += 1) {
          await page.keyboard.press('Tab');
          const at = await page.evaluate(() => document.activeElement?.textContent ?? '');
          if (name.test(at)) return;
        }
        throw new Error(`Tab never came to ${name}`);
      };
      await tabTo(/^Read it/);
      await page.keyboard.press('Enter');
      await heading(page, 'What each column holds');
      await expect.poll(() => page.evaluate(() => document.activeElement?.tagName)).toBe('H1');
      await tabTo(/^See the/);
      await page.keyboard.press('Enter');
      await heading(page, /openings as read/);
      await expect.poll(() => page.evaluate(() => document.activeElement?.textContent)).toContain('openings as read');
      await page.keyboard.press('Tab');
      expect(await page.evaluate(() => document.activeElement?.id)).toMatch(/^rise-/);
      await page.keyboard.type('8');
      await page.keyboard.press('Enter');
      await expect.poll(() => page.evaluate(() => document.activeElement?.textContent)).toContain('Go on to fill');
      await page.keyboard.press('Enter');
      await heading(page, 'Fill the workbook');
      await tabTo(/^Fill the workbook$/);
      await page.keyboard.press('Enter');
      await heading(page, 'The workbook is filled');
    });
  });
});

describe('in every look and width', () => {
  const looks = [
    ['light', { colorScheme: 'light' }],
    ['dark', { colorScheme: 'dark' }],
    ['contrast', { colorScheme: 'dark', forcedColors: 'active' }],
    ['office-dark', { query: '?office=dark' }],
  ] as const;

  it.each(looks.flatMap(([look, options]) => [320, 420, 600].map((width) => [look, width, options] as const)))(
    'axe finds nothing and nothing runs over: %s at %i px',
    async (look, width, options) => {
      await withPane(
        async (page) => {
          const check = async (state: string) => {
            await fits(page);
            await isAccessible(page, `${state}-${look}-${width}`);
          };
          await check('list');
          await press(page, 'Open the example');
          await heading(page, 'What each column holds');
          await check('headings');
          await press(page, /^See the/);
          await heading(page, /openings as read/);
          await check('openings');
          await page.locator('.opening-line').first().click();
          await page.locator('.drawing').scrollIntoViewIfNeeded();
          await check('opening');
          await press(page, 'Go on to fill the workbook');
          await check('fill');
          await fillButton(page).click();
          await heading(page, 'The workbook is filled');
          await check('done');
          await press(page, 'Figure');
          await page.locator('.drawing').waitFor();
          await check('figure');
          await press(page, 'Cell');
          await check('cell');
          const row = await page.evaluate(() => globalThis.memory.written.get('Takeoff')?.body?.[0] ?? 0);
          await page.evaluate((at) => globalThis.memory.select('Takeoff', `B${at}`), row);
          await page.locator('.drawing').waitFor();
          await check('takeoff-row');
          await press(page, 'Shop');
          await heading(page, 'Shop');
          await check('shop');
          for (const summary of await page.locator('.settings > summary').all()) await summary.click();
          await check('shop-open');
        },
        { width, ...options },
      );
    },
  );
});

import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { heading, isAccessible, press } from './drive';
import { usePane } from './usePane';

const withPane = usePane();

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

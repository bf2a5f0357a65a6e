import { mkdtempSync, readlinkSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium, type BrowserContext, type Page } from 'playwright-core';
import { expect, test } from 'vitest';
import type { WorkbenchHost } from '../../taskpane/workbench/workbenchHost';
import { useBuilt } from './built';
import { findChromium } from './chromium';

declare const workbench: { readonly host: WorkbenchHost; readonly settled: () => Promise<void> };

const built = useBuilt();

async function open(profile: string): Promise<{ context: BrowserContext; page: Page }> {
  const context = await chromium.launchPersistentContext(profile, {
    executablePath: findChromium()!,
    args: ['--no-sandbox', '--disable-dev-shm-usage'],
  });
  const page = await context.newPage();
  await page.goto(built.address);
  await page.waitForFunction(() => 'workbench' in globalThis, null, { timeout: 60_000 });
  return { context, page };
}

test('a browser killed five seconds after a change has all of it when it is started again', async () => {
  const profile = mkdtempSync(join(tmpdir(), 'archwright-killed-'));
  try {
    const { context, page } = await open(profile);
    await page.evaluate(async () => {
      await workbench.host.writeCells('Sheet1', 'A1', [['kept', 12, '=B1*2']], true);
      await workbench.settled();
    });
    await page.waitForTimeout(5000);
    // Its lock names the process of the whole browser: it has no time to put anything away.
    const browser = Number(/-(\d+)$/.exec(readlinkSync(join(profile, 'SingletonLock')))![1]);
    const gone = new Promise((resolve) => context.once('close', resolve));
    process.kill(browser, 'SIGKILL');
    await gone;

    const again = await open(profile);
    await again.page.getByRole('button', { name: 'Bring it back' }).click();
    await again.page.getByText(/is back as it was/).waitFor();
    await again.page.evaluate(() => workbench.settled());
    const read = await again.page.evaluate(() => workbench.host.readSheet('Sheet1'));
    expect(read).toMatchObject({ ok: true, value: { rows: [['kept', 12, 24]] } });
    await again.context.close();
  } finally {
    rmSync(profile, { recursive: true, force: true });
  }
}, 120_000);

import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { loadRunFile } from '../support/run-files.js';
import { openTestApi, type TestApi } from '../support/test-api.js';
import { startBrowser } from './support/browser.js';
import { PAGES, signedIn } from './support/screens.js';

const browser: Browser | null = await startBrowser();
const file = loadRunFile('ok', 'swirl-loaf');

describe.skipIf(browser === null)('a batch that is split', () => {
  let bench: TestApi;
  let id: string;

  beforeAll(async () => {
    bench = await openTestApi('2026-11-27T10:00:00Z', file, PAGES);
    await bench.stock(file);
    const created = await bench.call('POST', '/api/runs', file.runs[0]);
    id = created.body.run.id;
  });

  afterAll(async () => {
    await browser?.close();
    await bench.close();
  });

  it.each(['amounts', 'sheet'])('has its lye and its caution once on a phone: %s', async (view) => {
    const { page, complaints } = await signedIn(browser!, bench, { width: 360, colorScheme: 'light' });
    page.setDefaultTimeout(20_000);
    await page.goto(`/runs/${id}/${view}`);
    await page.getByText('Split, before the colours, into').waitFor();
    expect(await page.getByText('Lye burns skin and eyes').count()).toBe(1);
    expect(await page.getByText('Sodium hydroxide (NaOH)').count()).toBeLessThanOrEqual(2);
    const split = page.locator('.run-portion');
    expect(await split.count()).toBe(4);
    expect(await split.nth(1).innerText()).toMatch(/Swirl: Blue\s+28%\s+\d+ g\s+Blue mica\s+[\d.]+ g/);
    const wide = await page.evaluate(() => document.documentElement.scrollWidth);
    expect(wide).toBeLessThanOrEqual(360);
    await page.screenshot({ path: `tests/output/screens/shared-batch-${view}.png`, fullPage: true });
    expect(complaints).toEqual([]);
  });
});

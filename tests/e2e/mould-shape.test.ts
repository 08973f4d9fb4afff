import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Browser, Page } from 'playwright-core';
import { en } from '../../apps/web/words/en/index.js';
import { openTestApi, type TestApi } from '../support/test-api.js';
import { startBrowser } from './support/browser.js';
import { PAGES, shoot, signedIn } from './support/screens.js';

const browser: Browser | null = await startBrowser();
const { library, form } = en;

describe.skipIf(browser === null)('the measures of a mould beside its volume', () => {
  let bench: TestApi;
  let page: Page;
  let complaints: string[];

  beforeAll(async () => {
    bench = await openTestApi('2026-11-27T17:00:00Z', undefined, PAGES);
    ({ page, complaints } = await signedIn(browser!, bench, { width: 360, colorScheme: 'light' }));
    page.setDefaultTimeout(20_000);
    await page.goto('/makings/moulds/new');
  });

  afterAll(async () => {
    await browser?.close();
    await bench.close();
  });

  it('are asked about where they are far from it, at their place, and kept where they agree', async () => {
    await page.getByLabel(library.name, { exact: true }).fill('Flat trays');
    await page.getByLabel(library.cavitiesOwned).fill('6');
    await page.getByRole('radio', { name: library.mouldWays.cavityMl }).check();
    await page.getByLabel(library.oneCavity).fill('100');
    await page.getByText(library.forHeat).click();
    await page.getByRole('combobox', { name: library.shape }).selectOption('box');
    for (const [measure, mm] of [
      ['lengthMm', '60'],
      ['widthMm', '50'],
      ['heightMm', '20'],
    ] as const)
      await page.getByLabel(library.measures[measure]).fill(mm);
    await page.getByRole('button', { name: form.save, exact: true }).click();
    const group = page.getByRole('group', { name: library.shape });
    await expect
      .poll(() => group.evaluate((each) => document.getElementById(`${each.id}-wrong`)?.textContent ?? ''))
      .toContain('By its volume a cavity holds 100 ml, by its measures 60 ml.');
    await shoot(page, 'mould-shape-differs-360');
    await page.getByLabel(library.measures.heightMm).fill('33');
    await page.getByRole('button', { name: form.save, exact: true }).click();
    await page.waitForURL((url) => !url.pathname.endsWith('/new'));
    expect(complaints.filter((each) => !each.includes('422'))).toEqual([]);
  });
});

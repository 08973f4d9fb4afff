import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { de } from '../../apps/web/words/de/index.js';
import { pasting } from '../../apps/web/words/de/pasting.js';
import { openTestApi, type TestApi } from '../support/test-api.js';
import { startBrowser } from './support/browser.js';
import { PAGES, shoot, signedIn } from './support/screens.js';

const browser: Browser | null = await startBrowser();
const { form } = de;

/** As it may stand in a message from a friend: a slip, lye and a sum among the fats. */
const TEXT = [
  'Olivenöl 500 g',
  '- Kokosöl: 0,25 kg',
  '8 oz Kakabutter',
  'NaOH 140 g',
  'Wasser 280 ml',
  'Ziegenmilch 100 g',
  'Summe 977 g',
].join('\n');

describe.skipIf(browser === null)('a recipe pasted in, on a phone, in German, by keyboard', () => {
  let bench: TestApi;
  let page: Page;
  let complaints: string[];

  beforeAll(async () => {
    bench = await openTestApi('2026-11-27T17:00:00Z', undefined, PAGES);
    const opened = await signedIn(browser!, bench, { width: 360, colorScheme: 'light' });
    ({ page, complaints } = opened);
    await opened.context.addInitScript(() =>
      localStorage.setItem('benchtide.preferences', JSON.stringify({ language: 'de', units: 'metric' })),
    );
    page.setDefaultTimeout(20_000);
    await page.goto('/makings/recipes/new');
  });

  afterAll(async () => {
    await browser?.close();
    await bench.close();
  });

  it('tells what became of each line', async () => {
    await page.getByText(pasting.title).press('Enter');
    await page.getByLabel(pasting.text).fill(TEXT);
    await page.getByRole('button', { name: pasting.read }).press('Enter');
    await page
      .getByRole('status')
      .filter({ hasText: pasting.found(2, 1) })
      .waitFor();
    const lines = await page.getByRole('list', { name: pasting.lines }).getByRole('listitem').allInnerTexts();
    await shoot(page, 'recipe-pasted-360');
    expect(lines).toHaveLength(7);
    expect(lines[1]).toContain(pasting.taken('Kokosöl', '250 g'));
    expect(lines[2]).toContain(pasting.outcomes['unknown-fat']);
    expect(lines[3]).toContain(pasting.others.lye);
    expect(lines[4]).toContain(pasting.others.water);
    expect(lines[5]).toContain(pasting.taken('Ziegenmilch', '100 g'));
    expect(lines[6]).toContain(pasting.others.total);
  });

  it('takes the fats once the line in doubt is settled', async () => {
    await page.getByRole('button', { name: 'Kakaobutter' }).press('Enter');
    await page.getByRole('button', { name: pasting.use(3, 1) }).press('Enter');
    const weight = (fat: string): Promise<string> =>
      page.getByLabel(`${pasting.weight}: ${fat}`).inputValue();
    expect(await weight('Olivenöl')).toBe('500');
    expect(await weight('Kokosöl')).toBe('250');
    // Eight ounces of 28.349523125 g.
    expect(await weight('Kakaobutter')).toBe('226,8');
  });

  it('makes the batch as large as what is left of one fat, and saves it so', async () => {
    await page.getByLabel(pasting.size).selectOption('fat');
    await page.getByLabel(pasting.sizeFatGrams).fill('300');
    await page.getByLabel(de.library.name).fill('Winterseife (erfunden)');
    await page.getByRole('button', { name: form.save, exact: true }).press('Enter');
    await page.waitForURL(/recipes\/[\w-]{36}/);
    const [recipe] = (await bench.call('GET', '/api/recipes')).body;
    expect(recipe.content.size).toEqual({ by: 'fat', fat: 'olive', grams: 300 });
    expect(recipe.content.liquids).toEqual([{ liquid: 'goat-milk', grams: 100, addedTo: 'lye' }]);
    expect(recipe.content.fats).toMatchObject([
      { fat: 'olive', grams: 500 },
      { fat: 'coconut', grams: 250 },
      { fat: 'cocoa-butter', grams: expect.closeTo(226.796, 3) },
    ]);
  });

  it('turns weights into shares', async () => {
    await page.getByLabel(pasting.amountsIn).selectOption('percent');
    // 500 of 976.8 g
    expect(await page.getByLabel(`${de.library.share}: Olivenöl`).inputValue()).toBe('51,2');
  });

  it('fits the page, and breaks nothing', async () => {
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(360);
    await shoot(page, 'recipe-weights-360');
    await page.setViewportSize({ width: 1280, height: 900 });
    await shoot(page, 'recipe-weights-1280');
    expect(complaints).toEqual([]);
  });
});

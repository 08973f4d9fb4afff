import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { de } from '../../apps/web/words/de/index.js';
import { pasting } from '../../apps/web/words/de/pasting.js';
import { openTestApi, type TestApi } from '../support/test-api.js';
import { startBrowser } from './support/browser.js';
import { PAGES, shoot, signedIn } from './support/screens.js';

const browser: Browser | null = await startBrowser();
const { library, form } = de;

describe.skipIf(browser === null)('milk in place of water, on a phone, in German', () => {
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
    await page.getByLabel(library.name).fill('Milchseife (erfunden)');
    await page.getByLabel(`${library.fat} 1`).selectOption('olive');
    await page.getByLabel(`${library.share}: Olivenöl`).fill('100');
  });

  afterAll(async () => {
    await browser?.close();
    await bench.close();
  });

  it('takes a liquid of the table, and says what to weigh beside plain water', async () => {
    await page.getByRole('button', { name: library.addLiquid }).click();
    await page.getByLabel(library.liquid, { exact: true }).selectOption('goat-milk');
    await page.getByLabel(library.ofLiquid).fill('40');
    await page.locator('dl.lye-figures').getByText('Ziegenmilch').waitFor();
    await page.locator('dl.lye-figures').getByText(library.plainWater, { exact: true }).waitFor();
  });

  it('says at the liquids that too little water is left for the lye', async () => {
    await page.getByLabel(library.goesInto).selectOption('batter');
    await page.getByLabel(library.ofLiquid).fill('80');
    await page
      .getByRole('status')
      .filter({ hasText: /Es braucht mindestens sein eigenes Gewicht/ })
      .waitFor();
    await shoot(page, 'recipe-liquid-refused-360');
    await page.getByLabel(library.ofLiquid).fill('40');
  });

  it('takes one by its label, and saves both', async () => {
    await page.getByRole('button', { name: library.addLiquid }).click();
    await page.getByLabel(library.liquid, { exact: true }).nth(1).selectOption('own-figures');
    await page.getByLabel(library.liquid, { exact: true }).nth(1).fill('Quittensud (erfunden)');
    await page.getByLabel(library.ofLiquid).nth(1).fill('10');
    await page.getByLabel(library.holdsFat, { exact: true }).fill('0,2');
    await page.getByRole('button', { name: form.save, exact: true }).click();
    await page.waitForURL(/recipes\/[\w-]{36}/);
    const [recipe] = (await bench.call('GET', '/api/recipes')).body;
    expect(recipe.content.liquids).toEqual([
      { liquid: 'goat-milk', percentOfLiquid: 40, addedTo: 'batter' },
      {
        liquid: 'own-liquid',
        percentOfLiquid: 10,
        addedTo: 'lye',
        own: { title: 'Quittensud (erfunden)', fatPercent: 0.2 },
      },
    ]);
  });

  it('tells a liquid by weight where the fats are in weights', async () => {
    await page.getByLabel(pasting.amountsIn).selectOption('grams');
    await page.getByLabel(library.liquidIn).first().selectOption('grams');
    expect(await page.getByLabel(library.liquidWeight).inputValue()).toBe('100');
  });

  it('fits the page, and breaks nothing', async () => {
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(360);
    await shoot(page, 'recipe-liquids-360');
    await page.setViewportSize({ width: 1280, height: 900 });
    await shoot(page, 'recipe-liquids-1280');
    // A browser complains of each answer that refuses a recipe while it is typed in.
    expect(complaints.filter((each) => !each.includes('422'))).toEqual([]);
  });
});

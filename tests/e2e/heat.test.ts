import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { PieceDesign } from '#contract';
import { de } from '../../apps/web/words/de/index.js';
import { en } from '../../apps/web/words/en/index.js';
import { openTestApi, type TestApi } from '../support/test-api.js';
import { loadRunFile } from '../support/run-files.js';
import { seriousFaults } from './support/accessibility.js';
import { startBrowser } from './support/browser.js';
import { looks, PAGES, shoot, signedIn } from './support/screens.js';

const browser: Browser | null = await startBrowser();
const words = { en, de } as const;

describe.skipIf(browser === null)('the heat of a poured loaf', () => {
  let bench: TestApi;
  const ids = { design: '', recipe: '' };

  beforeAll(async () => {
    const file = loadRunFile('demo', 'orchard-loaves');
    bench = await openTestApi('2026-11-27T17:00:00Z', file, PAGES);
    await bench.stock(file);
    ids.design = (await bench.call('GET', '/api/designs')).body[0].id;
    ids.recipe = (await bench.call('GET', '/api/recipes')).body[0].id;
  });

  afterAll(async () => {
    await browser?.close();
    await bench.close();
  });

  const prefer = (page: Page, language: 'en' | 'de', units: 'metric' | 'us') =>
    page.addInitScript((chosen) => localStorage.setItem('benchtide.preferences', JSON.stringify(chosen)), {
      language,
      units,
    });
  /** The numbers of a row of a table. */
  const numbers = (text: string): number[] => (text.match(/\d+/g) ?? []).map(Number);

  for (const look of looks) {
    const [language, units] =
      look.colorScheme === 'light' ? (['en', 'us'] as const) : (['de', 'metric'] as const);
    const { heat, library } = words[language];
    const of = `${String(look.width)}-${look.colorScheme}-${language}`;

    it(`is told, drawn and tabled on the page of its recipe at ${of}`, async () => {
      const { context, page, complaints } = await signedIn(browser!, bench, look);
      await prefer(page, language, units);
      await page.goto(`/makings/recipes/${ids.recipe}`);
      await page.getByLabel(library.batchFor).selectOption({ index: 1 });
      const card = page.getByRole('region', { name: heat.title, exact: true });
      await card.getByRole('img').waitFor();
      // The sentence, the table and the curve tell of one moment.
      const told =
        (await card
          .locator('p', { hasText: /°[CF] \(/ })
          .first()
          .textContent()) ?? '';
      const hottest = Number(/(\d+) °[CF] \(/.exec(told)?.[1]);
      expect(told).toContain(units === 'us' ? '°F' : '°C');
      expect(hottest).toBeGreaterThan(units === 'us' ? 130 : 55);
      await card.getByText(heat.table).click();
      const rows = await card.getByRole('region', { name: heat.table }).locator('tbody tr').allTextContents();
      expect(rows.length).toBeGreaterThan(4);
      const middles = await card
        .getByRole('region', { name: heat.table })
        .locator('tbody tr td:nth-child(2)')
        .allTextContents();
      expect(Math.max(...middles.map((text) => numbers(text)[0] ?? 0))).toBe(hottest);
      await card.getByText(heat.ways).click();
      expect(await card.getByRole('region', { name: heat.ways }).locator('tbody tr').count()).toBe(4);
      // The middle is drawn over the line of gel where it is hottest, and the lens about its peak.
      const box = async (selector: string) =>
        (await card.locator(`.heat-picture > svg ${selector}`).boundingBox())!;
      const [middle, gel, lens] = [await box('path.middle'), await box('path.gel'), await box('path.lens')];
      expect(middle.y).toBeLessThan(gel.y);
      expect(lens.y).toBeLessThan(middle.y);
      expect(lens.y + lens.height).toBeGreaterThan(middle.y);
      await shoot(card, `heat-recipe-${of}`);
      const height = await page.evaluate(() => document.documentElement.scrollHeight);
      await page.setViewportSize({ width: look.width, height });
      expect(await seriousFaults(page)).toEqual([]);
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(look.width);
      expect(complaints).toEqual([]);
      await context.close();
    });
  }

  it('follows how the mould stands, which is entered on the part and kept', async () => {
    const { context, page, complaints } = await signedIn(browser!, bench, {
      width: 360,
      colorScheme: 'light',
    });
    page.setDefaultTimeout(20_000);
    const { heat, form } = en;
    await page.goto(`/makings/designs/${ids.design}`);
    const sheet = page.getByRole('region', { name: en.library.enough });
    const rows = sheet.getByRole('listitem').filter({ hasText: heat.title });
    // Three layers of one loaf warm as one, and are told once.
    await sheet.getByText(heat.sameAs('Bark layer')).nth(1).waitFor();
    expect(await rows.count()).toBe(1);
    await sheet.getByText(heat.title).click();
    await sheet.getByText('Assumed: it stands covered.').waitFor();
    await page.locator('summary', { hasText: 'Bark layer' }).first().click();
    const field = page.getByLabel(heat.keptLabel).first();
    expect(await field.locator('option').first().textContent()).toBe(heat.usual(heat.kept.covered));
    await field.selectOption('chilled');
    await sheet.getByText('It stands in the refrigerator.').waitFor();
    await sheet.getByText(heat.legend.around.chilled('5 °C')).waitFor();
    // The mould of one layer is that of all.
    await sheet.getByText(heat.sameAs('Bark layer')).nth(1).waitFor();
    await shoot(sheet, 'heat-design-360-light-en');
    await page.getByRole('button', { name: form.save, exact: true }).click();
    await expect
      .poll(async () => {
        const [design] = (await bench.call('GET', '/api/designs')).body as [
          { readonly content: PieceDesign },
        ];
        return design.content.parts.map((part) => ('kept' in part ? part.kept : undefined));
      })
      .toEqual(['chilled', undefined, undefined]);
    expect(complaints).toEqual([]);
    await context.close();
  });
});

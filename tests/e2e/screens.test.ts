import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openTestApi, type TestApi } from '../support/test-api.js';
import { loadRunFile } from '../support/run-files.js';
import { seriousFaults } from './support/accessibility.js';
import { startBrowser } from './support/browser.js';
import { looks, PAGES, shoot, signedIn } from './support/screens.js';

const browser: Browser | null = await startBrowser();

describe.skipIf(browser === null)('every screen', () => {
  let bench: TestApi;
  let run: string;

  beforeAll(async () => {
    const file = loadRunFile('ok', 'plain-tiles');
    bench = await openTestApi('2026-11-27T17:00:00Z', file, PAGES);
    const [order] = await bench.stock(file);
    const made = await bench.call('POST', '/api/runs', order);
    run = made.body.run.id;
  });

  afterAll(async () => {
    await browser?.close();
    await bench.close();
  });

  const screens: readonly (readonly [name: string, path: () => string])[] = [
    ['now', () => '/'],
    ['runs', () => '/runs'],
    ['run', () => `/runs/${run}`],
    ['plan', () => '/plan'],
    ['makings', () => '/makings'],
    ['shelf', () => '/shelf'],
    ['hours', () => '/hours'],
    ['lessons', () => '/lessons'],
    ['settings', () => '/settings'],
    ['nothing', () => '/nowhere'],
  ];

  for (const look of looks) {
    const of = `${look.width}-${look.colorScheme}`;
    /** WCAG 2.2 A and AA as far as axe-core can tell (https://www.w3.org/TR/WCAG22/). */
    it.each(screens)(`%s has no serious fault at ${of}`, async (name, path) => {
      const { context, page, complaints } = await signedIn(browser!, bench, look);
      await page.goto(path());
      await page.getByRole('heading', { level: 1 }).waitFor();
      await page.getByText('Fetching …').first().waitFor({ state: 'hidden' });
      await shoot(page, `${name}-${of}`);
      // In full height, or what the bar at the bottom covers just now counts as too small to touch.
      const height = await page.evaluate(() => document.documentElement.scrollHeight);
      await page.setViewportSize({ width: look.width, height });
      expect(await seriousFaults(page)).toEqual([]);
      const { wide, seen } = await page.evaluate(() => ({
        wide: document.documentElement.scrollWidth,
        seen: document.documentElement.clientWidth,
      }));
      expect(wide, 'nothing sticks out sideways').toBeLessThanOrEqual(seen);
      expect(complaints).toEqual([]);
      await context.close();
    });
  }
});

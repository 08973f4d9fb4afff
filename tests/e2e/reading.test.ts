import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openTestApi, type TestApi } from '../support/test-api.js';
import { startBrowser } from './support/browser.js';
import { everyPage } from './support/every-page.js';
import { fullWorkshop, LONG_AGO, type FullWorkshop } from './support/full-workshop.js';
import { openDetails, settled } from './support/page-texts.js';
import { PAGES, signedIn } from './support/screens.js';
import { smallTargets } from './support/small-targets.js';

const browser: Browser | null = await startBrowser();

/** What a reader, a screen reader and a fingertip need on every page, on a phone. */
describe.skipIf(browser === null)('every page', () => {
  let bench: TestApi;
  let workshop: FullWorkshop;
  let context: BrowserContext;
  let page: Page;
  let complaints: string[];
  let paths: string[];

  beforeAll(async () => {
    bench = await openTestApi(LONG_AGO, undefined, PAGES);
    workshop = await fullWorkshop(bench);
    const look = { width: 360, colorScheme: 'light' } as const;
    ({ context, page, complaints } = await signedIn(browser!, { url: bench.url, key: workshop.key }, look));
    page.setDefaultTimeout(20_000);
    paths = [...new Set(everyPage(workshop).map(({ path }) => path))];
  }, 180_000);

  afterAll(async () => {
    await context?.close();
    await browser?.close();
    await bench.close();
  });

  it('is told of as it is opened: by its title, by a status, and with the focus on its heading', async () => {
    await page.goto('/');
    await page.getByRole('heading', { level: 1 }).waitFor();
    const titles = new Map<string, string>();
    let place = '/';
    for (const path of paths.slice(1)) {
      await go(path);
      const next = path.split('?')[0]!.replace(/^(\/runs\/[^/]+).*/, '$1');
      if (next !== place) await page.waitForFunction(() => document.activeElement?.tagName === 'H1');
      const { title, heading, focus, status } = await reading();
      expect(heading, path).not.toBe('');
      expect(title, path).toContain(`${heading} – Benchtide`);
      expect(status, path).toContain(title);
      if (next !== place) expect(focus, path).toBe(heading);
      place = next;
      titles.set(path, title);
    }
    // The tabs of one run have one heading, and titles of their own.
    const tabs = [...titles].filter(([path]) => path.startsWith(`/runs/${workshop.runs.begun}`));
    expect(tabs.length).toBeGreaterThan(3);
    expect(new Set(tabs.map(([, title]) => title)).size).toBe(tabs.length);
  }, 240_000);

  it('has nothing to tap that is smaller than a fingertip, and nothing beside the screen', async () => {
    const found = new Set<string>();
    for (const path of paths) {
      await page.goto(path);
      await page.getByRole('heading', { level: 1 }).first().waitFor();
      await settled(page);
      await openDetails(page);
      for (const each of await smallTargets(page)) found.add(`${path}: ${each}`);
      for (const width of [360, 320]) {
        await page.setViewportSize({ width, height: 740 });
        const wide = await page.evaluate(() => document.documentElement.scrollWidth);
        if (wide > width) found.add(`${path} is ${String(wide)} wide on ${String(width)}`);
      }
      await page.setViewportSize({ width: 360, height: 740 });
    }
    expect([...found]).toEqual([]);
  }, 400_000);

  it('asks nothing of the program while a figure is half typed', async () => {
    await page.goto(`/makings/designs/${workshop.things.designs[0] ?? ''}`);
    const pieces = page.locator('section[aria-labelledby="design-sheet"] input');
    await page.locator('.sheet strong').first().waitFor();
    complaints.length = 0;
    for (const typed of ['', '1x', '0', '-']) {
      await pieces.fill(typed);
      await page.locator('.sheet.old').waitFor();
    }
    await pieces.fill('7');
    await page.locator('.sheet:not(.old)').waitFor();
    expect(complaints).toEqual([]);
  }, 60_000);

  /** As a link within the app does. */
  async function go(path: string): Promise<void> {
    await page.evaluate((to) => {
      // Whatever is told and focused from here on is of the next page; the one before may stand a moment longer.
      document.title = '';
      if (document.activeElement instanceof HTMLElement) document.activeElement.blur();
      history.pushState({ idx: 1, key: to, usr: null }, '', to);
      dispatchEvent(new PopStateEvent('popstate', { state: { idx: 1, key: to, usr: null } }));
    }, path);
    await page.waitForURL((url) => `${url.pathname}${url.search}` === path);
    await page.waitForFunction(() => document.title !== '' && document.querySelector('main h1') !== null);
    await settled(page);
  }

  function reading(): Promise<{ title: string; heading: string; focus: string; status: string }> {
    return page.evaluate(() => ({
      title: document.title,
      heading: document.querySelector('main h1')?.textContent ?? '',
      focus: document.activeElement?.textContent ?? '',
      status: [...document.querySelectorAll('[role="status"]')].map((each) => each.textContent).join('\n'),
    }));
  }
});

import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { UnitSystem } from '#units';
import type { Language } from '#words';
import { openTestApi, type TestApi } from '../support/test-api.js';
import { startBrowser } from './support/browser.js';
import { emptyPages, everyPage, type Shown } from './support/every-page.js';
import { fullWorkshop, LONG_AGO, type FullWorkshop } from './support/full-workshop.js';
import { faultsIn } from './support/page-faults.js';
import { openDetails, settled, textsOf } from './support/page-texts.js';
import { PAGES, signedIn } from './support/screens.js';

const browser: Browser | null = await startBrowser();

const readers = [
  ['de', 'us'],
  ['en', 'us'],
  ['en', 'metric'],
] as const satisfies readonly (readonly [Language, UnitSystem])[];

/** Pages as they are, whatever of them comes from the API, from the plan or from the page itself. */
describe.skipIf(browser === null)(
  'every page, in German and in English, in US units and in metric ones',
  () => {
    let bench: TestApi;
    let workshop: FullWorkshop;
    let context: BrowserContext;
    let page: Page;

    beforeAll(async () => {
      bench = await openTestApi(LONG_AGO, undefined, PAGES);
      workshop = await fullWorkshop(bench);
      ({ context, page } = await signedIn(browser!, { url: bench.url, key: workshop.key }));
      page.setDefaultTimeout(20_000);
    }, 180_000);

    afterAll(async () => {
      await browser?.close();
      await bench.close();
    });

    it('holds no sentence of the other language and no amount of the other system', async () => {
      expect(await faultsOn(everyPage(workshop))).toEqual([]);
    }, 600_000);

    it('does so too where nothing is there yet', async () => {
      const answer = await context.request.post('/api/session', { data: { key: bench.key } });
      expect(answer.ok()).toBe(true);
      expect(await faultsOn(emptyPages)).toEqual([]);
    }, 120_000);

    it('does so too where one signs in', async () => {
      await context.clearCookies();
      expect(await faultsOn([{ name: 'sign-in', path: '/' }])).toEqual([]);
    }, 60_000);

    /** What is wrong on pages, a line each. A page is brought up in German and then read in all ways. */
    async function faultsOn(pages: readonly Shown[]): Promise<string[]> {
      const faults: string[] = [];
      for (const { name, path, bring } of pages) {
        await page.goto(path);
        await readAs('de', 'us');
        await page.getByRole('heading', { level: 1 }).first().waitFor();
        await settled(page);
        await bring?.(page);
        for (const [language, units] of readers) {
          await readAs(language, units);
          await openDetails(page);
          const texts = await textsOf(page);
          expect(texts.length, `${name} says something`).toBeGreaterThan(3);
          const found = faultsIn(texts, language, units, workshop.keys);
          faults.push(...found.map((fault) => `${name}, ${language} ${units}: ${fault}`));
        }
      }
      return faults;
    }

    /** Chooses as the settings in another tab would. */
    async function readAs(language: Language, units: UnitSystem): Promise<void> {
      await page.evaluate(
        (chosen) => {
          const key = 'benchtide.preferences';
          localStorage.setItem(key, JSON.stringify(chosen));
          dispatchEvent(new StorageEvent('storage', { key }));
        },
        { language, units },
      );
      await page.waitForFunction((lang) => document.documentElement.lang === lang, language);
      await settled(page);
    }
  },
);

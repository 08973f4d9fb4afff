import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { StockDocument, StoredStockEntryView } from '#contract';
import { stock as en } from '../../apps/web/words/en/stock.js';
import { offline } from '../../apps/web/words/en/offline.js';
import { loadRunFile } from '../support/run-files.js';
import { openTestApi, type TestApi } from '../support/test-api.js';
import { faultsInFullHeight } from './support/accessibility.js';
import { startBrowser } from './support/browser.js';
import { PAGES, shoot, signedIn } from './support/screens.js';

const browser: Browser | null = await startBrowser();
afterAll(async () => browser?.close());

/** Two runs that both take lye, of which there is none, and dough, of which some is left of an earlier batch. */
describe.skipIf(browser === null)('what to buy for all planned runs, in a shop without a connection', () => {
  const file = loadRunFile('ok', 'plain-tiles');
  const lyePacks = [{ size: 1000, price: 9.5 }];
  let bench: TestApi;
  let context: BrowserContext;
  let page: Page;
  let complaints: string[];

  const entries = async (): Promise<StoredStockEntryView[]> =>
    (await bench.call('GET', '/api/stock/entries')).body as StoredStockEntryView[];
  const lye = (): ReturnType<Page['locator']> =>
    page.getByRole('listitem').filter({ has: page.getByRole('link', { name: /Sodium hydroxide/ }) });

  beforeAll(async () => {
    const materials = [
      ...file.workshop.materials.filter(({ key }) => key !== 'soap-dough' && key !== 'naoh'),
      { key: 'naoh', title: 'Sodium hydroxide (NaOH)', unit: 'g' as const, onHand: 0, packs: lyePacks },
    ];
    const workshop = { ...file.workshop, materials, currency: 'EUR' };
    bench = await openTestApi('2026-11-27T17:00:00Z', { ...file, workshop }, PAGES);
    const [order] = await bench.stock(file);
    for (const [key, title] of [
      ['first', 'First tiles'],
      ['second', 'Second tiles'],
    ]) {
      const { status } = await bench.call('POST', '/api/runs', { ...order, key, title });
      expect(status).toBe(201);
    }
    ({ page, context, complaints } = await signedIn(browser!, bench, { width: 360, colorScheme: 'light' }));
    page.setDefaultTimeout(20_000);
  });
  afterAll(async () => {
    await browser?.close();
    await bench.close();
  });

  it('adds up what the chosen runs need', async () => {
    await page.goto('/makings/stock');
    await page.getByRole('link', { name: en.shopping }).click();
    await lye().getByText(en.packCount(1, '1,000 g')).waitFor();
    const both = parseFloat((await lye().locator('strong').innerText()).replace(',', ''));
    await shoot(page, 'stock-to-buy-360');
    expect(await faultsInFullHeight(page)).toEqual([]);
    await page.getByRole('checkbox', { name: 'Second tiles' }).uncheck();
    await expect.poll(async () => parseFloat(await lye().locator('strong').innerText())).toBeLessThan(both);
    const one = parseFloat(await lye().locator('strong').innerText());
    expect(Math.abs(both - 2 * one)).toBeLessThanOrEqual(1);
    await page.getByRole('checkbox', { name: 'First tiles' }).uncheck();
    await page.getByText(en.chooseRuns).waitFor();
    await page.reload();
    await lye().waitFor();
  });

  it('keeps what is bought out of reach, and enters it once when Benchtide is reached again', async () => {
    await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
    await page.reload();
    await lye().waitFor();
    await context.setOffline(true);
    await page.reload();
    await lye()
      .getByRole('button', { name: /^Bought: / })
      .click();
    await page.getByRole('heading', { name: en.waitingTitle }).waitFor();
    await page.reload();
    await page
      .getByText(/^Bought: Sodium hydroxide.*1,000 g/)
      .first()
      .waitFor();
    await shoot(page, 'stock-to-buy-offline-360');
    expect(await entries()).toEqual([]);
    await context.setOffline(false);
    await page.getByRole('heading', { name: en.waitingTitle }).waitFor({ state: 'hidden', timeout: 40_000 });
    const [written, ...more] = await entries();
    expect(more).toEqual([]);
    expect(written?.entry).toMatchObject({ kind: 'purchase', material: 'naoh', amount: 1000, price: 9.5 });
    await lye().waitFor({ state: 'hidden' });
    const { materials } = (await bench.call('GET', '/api/stock')).body as StockDocument;
    expect(materials.find(({ key }) => key === 'naoh')?.onHand).toBe(1000);
  }, 120_000);

  it('tells of a line that cannot be any more, and lets it go', async () => {
    const kept = {
      ...{ kind: 'leftover-kept', title: 'Sand layer', form: 'dough', massG: 60 },
      ...{ madeAt: '2026-11-20T16:00:00Z', at: '2026-11-27T16:00:00Z' },
    };
    const id = '01900000-0000-7000-8000-000000000001';
    await bench.call('POST', '/api/stock/entries', { id, entry: kept });
    await page.goto('/makings/stock');
    await page.getByRole('heading', { name: 'Sand layer' }).waitFor();
    await context.setOffline(true);
    await page.getByRole('button', { name: `${en.throwOut}: Sand layer` }).click();
    await page.getByRole('heading', { name: en.waitingTitle }).waitFor();
    // Meanwhile it was used up on another device.
    const used = { kind: 'leftover-used', leftover: id, massG: 60, at: '2026-11-27T16:30:00Z' };
    await bench.call('POST', '/api/stock/entries', {
      id: '01900000-0000-7000-8000-000000000002',
      entry: used,
    });
    await context.setOffline(false);
    await page.getByText(en.refusedLead).waitFor({ timeout: 40_000 });
    await shoot(page, 'stock-refused-360');
    await page.getByRole('button', { name: /^Discard: / }).click();
    await page.getByRole('button', { name: offline.reallyDiscard }).click();
    await page.getByRole('heading', { name: en.waitingTitle }).waitFor({ state: 'hidden' });
    expect(complaints.filter((text) => !/422|ERR_INTERNET_DISCONNECTED/.test(text))).toEqual([]);
  }, 120_000);
});

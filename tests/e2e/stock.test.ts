import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { StockDocument } from '#contract';
import { stock as en } from '../../apps/web/words/en/stock.js';
import { stock as de } from '../../apps/web/words/de/stock.js';
import { de as german } from '../../apps/web/words/de/index.js';
import { loadRunFile } from '../support/run-files.js';
import { openTestApi, type TestApi } from '../support/test-api.js';
import { faultsInFullHeight } from './support/accessibility.js';
import { startBrowser } from './support/browser.js';
import { PAGES, shoot, signedIn } from './support/screens.js';

const browser: Browser | null = await startBrowser();
const phone = { width: 360, colorScheme: 'light' } as const;

afterAll(async () => browser?.close());

async function olive(bench: TestApi): Promise<number | undefined> {
  const { materials } = (await bench.call('GET', '/api/stock')).body as StockDocument;
  return materials.find(({ key }) => key === 'olive')?.onHand;
}

/** Answers the four questions of the guide with a simple olive bar. */
async function planFirstRun(page: Page): Promise<void> {
  await page.goto('/plan?step=mould');
  await page.getByLabel('Water in one cavity').fill('84');
  await page.getByLabel('Cavities you own').fill('6');
  await page.getByRole('button', { name: 'Next' }).click();
  await page.getByRole('button', { name: 'Mostly olive' }).click();
  await page.getByText(/Likely firm enough to unmould/).waitFor();
  await page.getByRole('button', { name: 'Next' }).click();
  await page.getByRole('checkbox', { name: 'Saturday' }).check();
  await page.getByRole('checkbox', { name: 'Sunday' }).check();
  await page.getByRole('button', { name: 'Next' }).click();
  await page.getByText(/tried 2,000 times/).waitFor();
  await page.getByRole('button', { name: 'Save and plan' }).click();
  await page.waitForURL(/\/runs\/[\w-]{36}/);
}

describe.skipIf(browser === null)('stock, from an empty workshop on a phone', () => {
  let bench: TestApi;
  let page: Page;
  let complaints: string[];
  let runPage = '';
  let left = NaN;
  beforeAll(async () => {
    bench = await openTestApi('2026-11-27T10:00:00Z', undefined, PAGES);
    ({ page, complaints } = await signedIn(browser!, bench, phone));
    page.setDefaultTimeout(20_000);
    await planFirstRun(page);
    runPage = page.url();
  });
  afterAll(() => bench.close());

  it('grows by a purchase, of which a slip is marked at its field', async () => {
    await page.goto('/makings');
    await page.getByRole('link', { name: en.title }).click();
    await page.getByText(en.none).waitFor();
    await shoot(page, 'stock-empty-360');
    await page.getByLabel(en.material, { exact: true }).selectOption({ label: 'Olive oil' });
    await page.getByLabel(en.packSize).fill('a lot');
    await page.getByRole('button', { name: en.enter, exact: true }).click();
    await page.locator(':focus').and(page.getByLabel(en.packSize)).waitFor();
    await page.getByLabel(en.packs, { exact: true }).fill('2');
    await page.getByLabel(en.packSize).fill('500');
    await page.getByLabel(/^Price of a pack/).fill('6.50');
    await page.getByRole('button', { name: en.enter, exact: true }).click();
    await page.getByText(en.bought('1,000 g', 'Olive oil')).waitFor();
    expect(await olive(bench)).toBe(1000);
    await page.goto(`${runPage}/amounts`);
    const line = page.getByRole('row', { name: /^Olive oil/ });
    await line.getByText('1,000 g').waitFor();
  });

  it('falls as the run is made', async () => {
    const plan = (await bench.call('GET', `/api/runs/${runPage.split('/').at(-1) ?? ''}/plan`)).body;
    const [first] = plan.document.runs[0].stages as { startAt: string; endAt: string }[];
    await bench.walkTo(first?.endAt ?? '', 24 * 60);
    await page.goto('/');
    await page
      .getByRole('main')
      .getByRole('button', { name: /^Done: / })
      .first()
      .click();
    await page.locator('.said').getByRole('button').first().waitFor();
    left = (await olive(bench)) ?? NaN;
    expect(left).toBeLessThan(900);
  });

  it('says why, and is put right by a count that can be taken back', async () => {
    await page.goto('/makings/stock');
    await page.getByRole('link', { name: 'Olive oil' }).click();
    await page.getByRole('heading', { name: 'Olive oil' }).waitFor();
    await page.getByText(en.sinceBought('1,000 g')).waitFor();
    await page.getByText(`${en.kinds.made}:`).waitFor();
    await page.getByText(en.pack('500 g', '6.50').slice(0, 6)).first().waitFor();
    await shoot(page, 'stock-material-360');
    await page.getByLabel(en.howMuch).fill('80');
    await page.getByRole('form', { name: en.count }).getByRole('button', { name: en.enter }).click();
    await page.getByText(en.countEntered).waitFor();
    expect(await olive(bench)).toBe(80);
    await page.getByRole('button', { name: new RegExp(`^Take back: ${en.kinds.count}`) }).click();
    await page.getByText(`${en.kinds.count}:`).waitFor({ state: 'hidden' });
    expect(await olive(bench)).toBeCloseTo(left, 6);
  });

  it('keeps a leftover, and lets it be used', async () => {
    await page.goto(`${runPage}/amounts`);
    await page.getByRole('link', { name: en.keep }).first().click();
    await page.getByLabel(en.weight).fill('90');
    await shoot(page, 'stock-keep-360');
    await page.getByRole('button', { name: en.keepNow }).click();
    await page.waitForURL(/makings\/stock$/);
    await page.getByText(`90 g`).waitFor();
    await page.getByText(en.use, { exact: true }).click();
    await page
      .getByRole('form', { name: new RegExp(`^${en.use}`) })
      .getByLabel(en.amount)
      .fill('35');
    await shoot(page, 'stock-leftover-360');
    await page
      .getByRole('form', { name: new RegExp(`^${en.use}`) })
      .getByRole('button', { name: en.enter })
      .click();
    await page.getByText('55 g', { exact: true }).waitFor();
    expect(await faultsInFullHeight(page)).toEqual([]);
    expect(complaints.filter((text) => !text.includes('422'))).toEqual([]);
  });
});

describe.skipIf(browser === null)('stock, in German', () => {
  const file = loadRunFile('ok', 'plain-tiles');
  let bench: TestApi;
  let run = '';
  beforeAll(async () => {
    const materials = file.workshop.materials.filter(({ key }) => key !== 'soap-dough');
    bench = await openTestApi(
      '2026-11-27T17:00:00Z',
      { ...file, workshop: { ...file.workshop, materials } },
      PAGES,
    );
    const [order] = await bench.stock(file);
    run = (await bench.call('POST', '/api/runs', order)).body.run.id;
  });
  afterAll(() => bench.close());

  it('offers a leftover to the decor of a run, and keeps trays and prices', async () => {
    const { page, context, complaints } = await signedIn(browser!, bench, phone);
    page.setDefaultTimeout(20_000);
    await context.addInitScript(() => localStorage.setItem('benchtide.preferences', '{"language":"de"}'));
    const at = '2026-11-27T16:00:00Z';
    const kept = {
      kind: 'leftover-kept',
      title: 'Sandschicht',
      form: 'dough',
      massG: 400,
      madeAt: '2026-11-20T16:00:00Z',
      at,
    };
    await bench.call('POST', '/api/stock/entries', {
      id: '01900000-0000-7000-8000-000000000001',
      entry: kept,
    });
    await page.goto(`/runs/${run}/amounts`);
    await page.getByText(german.run.amounts.gather).waitFor();
    await page.getByRole('heading', { name: de.offer }).waitFor();
    await page.getByText(de.ages(7)).waitFor();
    await shoot(page, 'stock-offer-360-de');
    await page.getByRole('button', { name: /Sandschicht nehmen$/ }).click();
    await page.getByRole('heading', { name: de.offer }).waitFor({ state: 'hidden' });
    const { leftovers, materials } = (await bench.call('GET', '/api/stock')).body as StockDocument;
    const dough = materials.find(({ key }) => key === 'soap-dough')?.onHand ?? NaN;
    expect(dough).toBeGreaterThan(0);
    expect(dough + (leftovers[0]?.massG ?? 0)).toBeCloseTo(400, 6);

    await page.goto('/makings/stock');
    await page.getByText(de.canGo('').slice(0, 8)).waitFor();
    await shoot(page, 'stock-360-de');
    expect(await faultsInFullHeight(page)).toEqual([]);

    await page.goto('/makings/tools');
    await page.getByRole('button', { name: `+ ${de.addTool}` }).click();
    await page.getByLabel(de.toolName).last().fill('Gitter');
    await page.getByLabel(de.hourlyRate).fill('12,5');
    await page.getByRole('button', { name: german.form.save }).click();
    await page.getByText(german.form.saved, { exact: true }).waitFor();
    await shoot(page, 'stock-tools-360-de');
    const { facts } = (await bench.call('GET', '/api/workshop')).body;
    expect(facts.equipment.map(({ title }: { title: string }) => title)).toContain('Gitter');
    expect(facts.hourlyRate).toBe(12.5);
    expect(complaints).toEqual([]);
  });
});

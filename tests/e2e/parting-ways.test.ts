import type { Browser, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { run as words } from '../../apps/web/words/en/run.js';
import { openTestApi, type TestApi } from '../support/test-api.js';
import { loadRunFile } from '../support/run-files.js';
import { seriousFaults } from './support/accessibility.js';
import { startBrowser } from './support/browser.js';
import { PAGES, shoot, signedIn } from './support/screens.js';

const { mishap } = words;
const browser: Browser | null = await startBrowser();

/** Twelve coated and twelve piped, from one pour, on a phone: what the maker does is counted. */
describe.skipIf(browser === null)('a run whose pieces part ways', () => {
  let bench: TestApi;
  let page: Page;
  let complaints: string[];
  let entries = 0;

  beforeAll(async () => {
    const file = loadRunFile('ok', 'parting-ways');
    bench = await openTestApi('2026-11-27T17:00:00Z', file, PAGES);
    await bench.stock(file);
    ({ page, complaints } = await signedIn(browser!, bench, { width: 360, colorScheme: 'light' }));
    page.setDefaultTimeout(20_000);
  });

  afterAll(async () => {
    await browser?.close();
    await bench.close();
  });

  const tap = async (what: Locator): Promise<void> => {
    entries += 1;
    await what.click();
  };
  const type = async (what: Locator, text: string): Promise<void> => {
    entries += 1;
    await what.fill(text);
  };

  it('is entered in ten entries, and checked while it is', async () => {
    await page.goto('/plan');
    await tap(page.getByRole('radio', { name: /Decorated cup/ }));
    await type(page.getByRole('slider', { name: 'Pieces' }), '24');
    await tap(page.getByRole('radio', { name: 'Pieces part ways' }));
    const group = (nth: number): Locator => page.locator('[role=group]').nth(nth);
    await type(group(0).getByLabel('Name', { exact: true }), 'Coated');
    await tap(group(0).getByRole('checkbox', { name: 'Foam' }));
    await tap(group(0).getByRole('checkbox', { name: 'Drops' }));
    await type(group(1).getByLabel('Name', { exact: true }), 'Piped');
    await tap(group(1).getByRole('checkbox', { name: 'Coat' }));
    await tap(group(1).getByRole('checkbox', { name: 'Drops' }));
    await page.getByText('All 24 pieces are in a group').waitFor();
    await page.getByText('Not made, as no group has it: Drops').waitFor();
    await page.getByText(/tried 2,000 times/).waitFor();
    const outcome = page.getByRole('region', { name: 'How it would go' });
    await outcome.getByText('Coat for 12 pieces').waitFor();
    expect(await seriousFaults(page)).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(360);
    await shoot(page, 'parting-ways-plan');

    // A slip on the way, which is no entry of the count: what does not come to all pieces cannot be planned.
    await group(1).getByLabel('Pieces').fill('10');
    await page.getByText('2 of 24 pieces are in no group yet').waitFor();
    await page.getByText('Complete the groups, and the plan shows here.').waitFor();
    expect(await page.getByRole('button', { name: 'Save this plan' }).getAttribute('aria-disabled')).toBe(
      'true',
    );
    await shoot(page, 'parting-ways-slip');
    await group(1).getByLabel('Pieces').fill('12');
    await page.getByText('All 24 pieces are in a group').waitFor();

    await tap(page.getByRole('button', { name: 'Save this plan' }));
    await page.waitForURL(/\/runs\/[\w-]{36}/);
    console.info(`A run with two groups at 360 px: ${String(entries)} entries.`);
    expect(entries).toBe(10);
    expect(complaints).toEqual([]);
  });

  it('is one pour for all, a coat for twelve and piping for twelve, which do not wait for each other', async () => {
    const [{ id, order }] = (await bench.call('GET', '/api/runs')).body;
    expect(order.groups).toEqual([
      { key: 'coated', title: 'Coated', count: 12, parts: ['base', 'coat'] },
      { key: 'piped', title: 'Piped', count: 12, parts: ['base', 'foam'] },
    ]);
    const { body } = await bench.call('GET', `/api/runs/${id}/plan`);
    const [run] = body.document.runs;
    expect(body.document.status).toBe('planned');
    interface Told {
      readonly key: string;
      readonly kind: string;
      readonly pieces?: number;
      readonly groups?: string[];
    }
    const stages = new Map<string, Told>(run.stages.map((stage: Told) => [stage.key, stage]));
    expect(run.stages.filter(({ kind }: Told) => kind === 'pour')).toHaveLength(1);
    expect(stages.get('pour')).not.toHaveProperty('pieces');
    expect(stages.get('dip')).toMatchObject({ pieces: 12, groups: ['coated'] });
    expect(stages.get('pipe')).toMatchObject({ pieces: 12, groups: ['piped'] });
    expect(stages.has('drip')).toBe(false);
    const waits = run.added.filter(({ stage }: { stage: string }) => stage === 'pipe');
    expect(waits).toContainEqual({ stage: 'pipe', part: 'base', closes: 'takes-piping-until' });
    expect(JSON.stringify(waits)).not.toContain('coat');
    const counts = run.amounts.map(({ part, count }: { part: string; count: number }) => [part, count]);
    expect(Object.fromEntries(counts)).toEqual({ base: 24, coat: 12, foam: 12 });
  });

  it('says so on the pages of the run, within the width of a phone', async () => {
    const table = page.getByRole('table', { name: 'Tide table' });
    await table.getByRole('rowheader', { name: 'Dip · Coated: 12 pieces' }).waitFor();
    await table.getByRole('rowheader', { name: 'Pipe the foam · Piped: 12 pieces' }).waitFor();
    await table.getByRole('rowheader', { name: 'Pour the base', exact: true }).waitFor();
    await page.getByText('Coated: 12 pieces with Base and Coat').waitFor();
    await page.getByText('Not made, as no group has it: Drops').waitFor();
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(360);
    await shoot(page, 'parting-ways-run');
    await page.getByRole('link', { name: 'Bench sheet' }).click();
    for (const [part, pieces] of [
      ['Base', 24],
      ['Coat', 12],
      ['Foam', 12],
    ] as const) {
      const heading = page.getByRole('heading', { name: `${part} for ${String(pieces)} pieces` });
      await heading.first().waitFor();
    }
    await page.getByRole('link', { name: 'Log', exact: true }).click();
    await page.getByText('Something went wrong').click();
    await page.getByRole('group', { name: 'Of which group' }).getByRole('radio', { name: 'Piped' }).check();
    await page.getByText(mishap.onlySome).click();
    await page.getByLabel(mishap.pieces).fill('13');
    await page.getByText(mishap.badPieces(12)).waitFor();
    await page.getByLabel(mishap.pieces).fill('12');
    await page.getByText(mishap.badPieces(12)).waitFor({ state: 'hidden' });
    expect(complaints).toEqual([]);
  });
});

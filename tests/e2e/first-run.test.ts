import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openTestApi, type TestApi } from '../support/test-api.js';
import { startBrowser } from './support/browser.js';
import { PAGES, signedIn } from './support/screens.js';

const browser: Browser | null = await startBrowser();

describe.skipIf(browser === null)('an empty workshop', () => {
  let bench: TestApi;

  beforeAll(async () => {
    bench = await openTestApi('2026-11-27T10:00:00Z', undefined, PAGES);
  });

  afterAll(async () => {
    await browser?.close();
    await bench.close();
  });

  it('comes to a planned run in four steps, and keeps what was typed through a reload', async () => {
    const { page, complaints } = await signedIn(browser!, bench, { width: 360, colorScheme: 'light' });
    page.setDefaultTimeout(20_000);
    await page.goto('/');
    await page.getByRole('main').getByRole('link', { name: 'Begin, step by step' }).click();
    await page.getByLabel('Water in one cavity').fill('84');
    await page.getByLabel('Cavities you own').fill('6');
    await page.getByText(/One cavity holds/).waitFor();
    await page.reload();
    expect(await page.getByLabel('Cavities you own').inputValue()).toBe('6');
    await page.getByRole('button', { name: 'Next' }).click();
    await page.getByRole('button', { name: 'Mostly olive' }).click();
    // Worked out beside the page, by the libraries that the API uses too.
    await page.getByText(/Likely firm enough to unmould/).waitFor();
    await page.getByText(/Lye burns skin and eyes/).waitFor();
    await page.getByRole('button', { name: 'Next' }).click();
    await page.getByRole('checkbox', { name: 'Saturday' }).check();
    await page.getByRole('checkbox', { name: 'Sunday' }).check();
    await page.getByRole('button', { name: 'Next' }).click();
    await page.getByText(/tried 2,000 times/).waitFor();
    await page.getByRole('button', { name: 'Save and plan' }).click();
    await page.waitForURL(/\/runs\/[\w-]{36}/);
    const [run] = (await bench.call('GET', '/api/runs')).body;
    const plan = await bench.call('GET', `/api/runs/${run.id}/plan`);
    expect(plan.body.document.status).toBe('planned');
    expect(plan.body.document.runs[0].count).toBe(6);
    expect(complaints).toEqual([]);
  });
});

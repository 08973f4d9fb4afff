import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openTestApi, type TestApi } from '../support/test-api.js';
import { loadRunFile } from '../support/run-files.js';
import { startBrowser } from './support/browser.js';
import { PAGES } from './support/screens.js';

const browser: Browser | null = await startBrowser();
/** More steps than there are things to reach on any page. */
const FAR = 150;

/** No mouse and no finger: from the code in the terminal to a plan and into its chart. */
describe.skipIf(browser === null)('by keyboard alone', () => {
  let bench: TestApi;
  let page: Page;

  beforeAll(async () => {
    const file = loadRunFile('ok', 'plain-tiles');
    bench = await openTestApi('2026-11-27T17:00:00Z', file, PAGES);
    await bench.stock(file);
    const context = await browser!.newContext({
      baseURL: bench.url,
      viewport: { width: 1280, height: 900 },
      locale: 'en-GB',
    });
    page = await context.newPage();
    page.setDefaultTimeout(20_000);
  });

  afterAll(async () => {
    await browser?.close();
    await bench.close();
  });

  it('signs in with a code', async () => {
    const { body } = await bench.call('POST', '/api/session/codes');
    await page.goto('/');
    await page.getByLabel('Code or key').waitFor();
    await tabTo('Code or key');
    await page.keyboard.type(body.code);
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { level: 1, name: 'Now' }).waitFor();
  });

  it('plans a run', async () => {
    await tabTo('Plan a run');
    await page.keyboard.press('Enter');
    await page.getByRole('radio', { name: /Rockpool tile/ }).waitFor();
    await tabTo(/Rockpool tile/);
    await page.keyboard.press('Space');
    await tabTo('Pieces');
    // One piece less than the twelve that stand there.
    await page.keyboard.press('ArrowLeft');
    await page.getByText(/tried 2,000 times/).waitFor();
    await tabTo('Save this plan');
    await page.keyboard.press('Enter');
    await page.waitForURL(/\/runs\/[\w-]{36}/);
    const [run] = (await bench.call('GET', '/api/runs')).body;
    expect(run.order.count).toBe(11);
  });

  it('walks from stage to stage on the tide chart and reads why', async () => {
    await page.getByRole('figure').first().waitFor();
    await tabTo(/^(?=.*deep-blue layer)(?=.*opens)/i);
    await page.keyboard.press('ArrowRight');
    const second = await focused();
    await page.keyboard.press('Enter');
    expect(second).not.toMatch(/deep-blue layer/i);
    expect(second).toMatch(/opens/i);
  });

  /** Goes on with the tab key until what has the focus is called so. */
  async function tabTo(name: string | RegExp): Promise<void> {
    const seen: string[] = [];
    for (let step = 0; step < FAR; step++) {
      await page.keyboard.press('Tab');
      const text = await focused();
      if (typeof name === 'string' ? text === name : name.test(text)) return;
      seen.push(text);
    }
    throw new Error(
      `The tab key never reaches ${String(name)}; it reaches ${[...new Set(seen)].join(' | ')}`,
    );
  }

  /** What a screen reader would call the thing that has the focus. */
  async function focused(): Promise<string> {
    return page.evaluate(() => {
      const at = document.activeElement as (HTMLElement & { labels?: NodeListOf<HTMLElement> }) | null;
      // Past the last thing there is, the page itself has the focus for a step, and holds every text.
      if (at === null || at === document.body) return '';
      const label = at.getAttribute('aria-label') ?? [...(at.labels ?? [])].map((l) => l.innerText).join(' ');
      const named = at.getAttribute('aria-labelledby')?.split(' ') ?? [];
      const by = named.map((id) => document.getElementById(id)?.textContent ?? '').join(' ');
      return (label || by || at.innerText || at.textContent || '').trim();
    });
  }
});

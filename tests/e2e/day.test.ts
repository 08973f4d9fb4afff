import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openTestApi, type TestApi } from '../support/test-api.js';
import { loadRunFile } from '../support/run-files.js';
import { startBrowser } from './support/browser.js';
import { PAGES, shoot, signedIn } from './support/screens.js';

const browser: Browser | null = await startBrowser();
const WAIT_MS = 20_000;

/** The maker's days, one after the other, with one run: from the plan to the shelf. */
describe.skipIf(browser === null)('a run from plan to shelf', () => {
  let bench: TestApi;
  let context: BrowserContext;
  let page: Page;
  let run: string;
  let complaints: string[];

  beforeAll(async () => {
    const file = loadRunFile('ok', 'plain-tiles');
    bench = await openTestApi('2026-11-27T17:30:00Z', file, PAGES);
    await bench.stock(file);
    ({ context, page, complaints } = await signedIn(browser!, bench));
    page.setDefaultTimeout(WAIT_MS);
  });

  afterAll(async () => {
    await browser?.close();
    await bench.close();
  });

  it('is planned on one page, from the first choice to the tide table', async () => {
    await page.goto('/plan');
    await page.getByRole('radio', { name: /Rockpool tile/ }).check();
    // What would come of it is worked out in a worker of the browser, by the same libraries.
    await page.getByText(/tried 2,000 times/).waitFor();
    const told = await page.getByRole('region', { name: 'How it would go' }).innerText();
    expect(told).toMatch(/about \d in 10/);
    await page.getByRole('button', { name: 'Save this plan' }).click();
    await page.waitForURL(/\/runs\/[\w-]{36}/);
    run = /runs\/([\w-]+)/.exec(page.url())![1]!;
    await page.getByRole('heading', { level: 1, name: /Rockpool tile/ }).waitFor();
    const plan = await bench.call('GET', `/api/runs/${run}/plan`);
    expect(plan.body.document.status).toBe('planned');
    const table = page.getByRole('table').first();
    for (const { title } of plan.body.document.runs[0].stages) {
      expect(await table.innerText()).toContain(title);
    }
  });

  it('shows a nudge that arrives while the page is open', async () => {
    await page.goto('/');
    await page.getByRole('heading', { level: 1, name: 'Now' }).waitFor();
    const nudges = await bench.call('GET', `/api/nudges?run=${run}`);
    const [first] = nudges.body;
    await bench.walkTo(first.dueAt, 10);
    const delivered = (await bench.call('GET', `/api/nudges?run=${run}&status=delivered`)).body;
    const { message } = delivered.find(({ id }: { id: string }) => id === first.id);
    const shown = page.getByRole('region', { name: 'Nudges' });
    await shown.getByText(message.text).waitFor();
    // It lies over neither the heading nor, once scrolled there, the end of the page.
    for (const [width, height] of [
      [360, 740],
      [1280, 900],
    ] as const) {
      await page.setViewportSize({ width, height });
      await page.evaluate(() => scrollTo({ top: 0, behavior: 'instant' }));
      const heading = await page.getByRole('heading', { level: 1 }).boundingBox();
      const top = (await shown.boundingBox())!.y;
      expect(heading!.y + heading!.height, String(width)).toBeLessThanOrEqual(top);
      await page.evaluate(() => scrollTo({ top: document.body.scrollHeight, behavior: 'instant' }));
      const content = await page.locator('main > *').last().boundingBox();
      expect(content!.y + content!.height, String(width)).toBeLessThanOrEqual((await shown.boundingBox())!.y);
      await shoot(page, `nudge-${String(width)}`);
    }
  });

  it('takes down that a stage is done, and tells how long there is for the next', async () => {
    await page.getByRole('button', { name: 'Done: Mix and pour the deep-blue layer' }).click();
    await expectLog(['done']);
    await page.getByRole('listitem', { name: 'Mix and pour the sand layer' }).waitFor();
  });

  it('plans anew when a batch seizes, and says what moved', async () => {
    await page.getByRole('button', { name: 'Something went wrong: Mix and pour the sand layer' }).click();
    const dialog = page.getByRole('dialog');
    await dialog.getByRole('radio', { name: 'Deep-blue layer' }).check();
    await dialog.getByRole('radio', { name: 'It seized' }).check();
    // What each answer leads to stands there before one is chosen.
    const remade = dialog.getByRole('listitem').filter({ hasText: 'Make it again' });
    await remade.getByText(/12 pieces/).waitFor();
    expect(await remade.innerText()).toMatch(
      /Odds\s+(about )?\d+ in \d+[\s\S]*Likely cured\s+\w+ \d+ \w+, count on/,
    );
    await expectLog(['done']);
    await remade.getByRole('button', { name: 'Log this answer: Make it again' }).click();
    await page.getByText('What moved').waitFor();
    await expectLog(['done', 'mishap']);
    const plan = await bench.call('GET', `/api/runs/${run}/plan`);
    const again = plan.body.document.runs[0].stages.filter((s: { key: string }) => s.key === 'pour-deep');
    expect(again.map((s: { status: string }) => s.status)).toEqual(['spoilt', 'planned']);
    await page.getByRole('button', { name: 'Done: Mix and pour the deep-blue layer' }).waitFor();
  });

  it('keeps what is logged without a connection, through a reload, and sends it in order', async () => {
    await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
    await page.reload();
    await page.getByRole('button', { name: 'Done: Mix and pour the deep-blue layer' }).waitFor();
    await context.setOffline(true);
    await page.getByRole('button', { name: 'Done: Mix and pour the deep-blue layer' }).click();
    await page.getByText('1 entry waits to be sent').first().waitFor();
    await page.reload();
    await page.getByText('1 entry waits to be sent').first().waitFor();
    await page
      .getByText(/Offline. What you see is from/)
      .first()
      .waitFor();
    await expectLog(['done', 'mishap']);
    await context.setOffline(false);
    await expectLog(['done', 'mishap', 'done']);
    await page.getByText('1 entry waits to be sent').first().waitFor({ state: 'hidden' });
  });

  it('shows in one tab what was done in another', async () => {
    const other = await context.newPage();
    await other.goto('/');
    await other.getByRole('button', { name: 'Done: Press the shells' }).waitFor();
    await page.getByRole('button', { name: 'Done: Press the shells' }).click();
    await expectLog(['done', 'mishap', 'done', 'done']);
    await other.bringToFront();
    await other.getByRole('button', { name: 'Done: Press the shells' }).waitFor({ state: 'hidden' });
    await other.close();
  });

  it('puts the lot on the shelf with the day it is ready', async () => {
    await logTheRest();
    await page.goto('/shelf');
    await page
      .getByText(/Rockpool tile/)
      .first()
      .waitFor();
    const [lot] = (await bench.call('GET', '/api/lots')).body;
    const day = new Intl.DateTimeFormat('en-GB', {
      day: 'numeric',
      month: 'short',
      timeZone: 'Europe/Dublin',
    });
    expect(await page.getByRole('main').innerText()).toContain(day.format(new Date(lot.ready.likely)));
  });

  it('broke no page on the way', () => {
    // A browser says so itself when it is offline.
    expect(
      complaints.filter((text) => !/ERR_INTERNET_DISCONNECTED|Failed to load resource/.test(text)),
    ).toEqual([]);
  });

  /** The kinds of entries in the log, once there are so many. */
  async function expectLog(kinds: readonly string[]): Promise<void> {
    await expect
      .poll(
        async () => {
          const { body } = await bench.call('GET', `/api/runs/${run}/log`);
          return body.map(({ entry }: { entry: { kind: string } }) => entry.kind);
        },
        { timeout: WAIT_MS },
      )
      .toEqual(kinds);
  }

  async function logTheRest(): Promise<void> {
    for (;;) {
      const plan = await bench.call('GET', `/api/runs/${run}/plan`);
      const next = plan.body.document.runs[0].stages
        .filter((stage: { status: string }) => stage.status === 'planned')
        .sort((a: { startAt: string }, b: { startAt: string }) => a.startAt.localeCompare(b.startAt))[0];
      if (next === undefined) return;
      await bench.walkTo(next.endAt, 240);
      const entry = { kind: 'done', stage: next.key, startedAt: next.startAt, at: next.endAt };
      const answer = await bench.call('POST', `/api/runs/${run}/log`, entry);
      expect(answer.status, JSON.stringify(answer.body)).toBe(201);
    }
  }
});

import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { PlanDocument, PlanOdds } from '#contract';
import { textsFor } from '#words';
import { wordsOf } from '#words/all';
import { planCommand } from '../../apps/cli/plan-command.js';
import { printPlan } from '../../apps/cli/print-plan.js';
import { loadRunFile } from '../support/run-files.js';
import { openTestApi, type TestApi } from '../support/test-api.js';
import { startBrowser } from './support/browser.js';
import { PAGES, signedIn } from './support/screens.js';

const browser: Browser | null = await startBrowser();
afterAll(async () => browser?.close());

const NOW = '2026-11-25T12:00:00Z';
const { earlier: _earlier, ...tiles } = loadRunFile('demo', 'rockpool-tiles');
const cups = loadRunFile('ok', 'two-layer');
const texts = textsFor({ language: 'en', units: 'metric', timeZone: tiles.workshop.timeZone }, wordsOf.en);
const told = ({ odds }: Pick<PlanDocument, 'odds'>): string[] =>
  [odds!.soundByTheDay, odds!.soundAtAll, odds!.asPlanned].map(texts.odds);

/** Whatever is told as so many in ten or a hundred, but for the day to count on, which is that of 9 in 10. */
const figuresIn = (text: string): string[] =>
  (text.match(/(?:[a-z]+ (?:than )?)?\d+ in (?:10|100)\b/g) ?? []).filter(
    (figure) => !/^(?:in )?9 in 10$/.test(figure),
  );

describe.skipIf(browser === null)('one plan has one number', () => {
  let api: TestApi;
  let page: Page;
  let runId: string;
  const planShown = async (): Promise<PlanDocument> =>
    (await api.call('GET', `/api/runs/${runId}/plan`)).body.document;

  beforeAll(async () => {
    api = await openTestApi(NOW, { ...tiles, earlier: [] }, PAGES);
    const [order] = await api.stock({ ...tiles, earlier: [] });
    await api.stock({ ...cups, fats: [] });
    runId = (await api.call('POST', '/api/runs', order)).body.run.id;
    ({ page } = await signedIn(browser!, api));
    page.setDefaultTimeout(20_000);
  });
  afterAll(() => api.close());

  /** What is read of it at every place that tells odds or the day; on the run's page, which stays open. */
  async function isToldEverywhere(document: PlanDocument): Promise<void> {
    const [byTheDay, atAll, asPlanned] = told(document) as [string, string, string];
    await page.locator('.run-odds', { hasText: byTheDay }).waitFor();
    const held = await page.locator('.card', { has: page.locator('.run-odds') }).innerText();
    expect(held).toContain(`Sound at all: ${atAll}. All as planned, looks too: ${asPlanned}.`);
    const day = new Intl.DateTimeFormat('en-GB', { day: 'numeric', timeZone: 'Europe/Dublin' });
    expect(held).toContain(`${day.format(Date.parse(document.runs[0]!.ready!.high))} `);

    const odds = (await api.call('GET', `/api/runs/${runId}/odds`)).body as PlanOdds;
    expect(told(odds)).toEqual([byTheDay, atAll, asPlanned]);
    const printed = printPlan(document, texts).replaceAll(/\s+/g, ' ');
    for (const figure of [byTheDay, atAll, asPlanned]) expect(printed).toContain(figure);

    const other = await page.context().newPage();
    await other.goto('/runs');
    await other.getByText('Odds', { exact: true }).first().waitFor();
    const card = other.locator('.run-list > li', { hasText: tiles.runs[0]!.title });
    expect(figuresIn(await card.innerText())).toEqual([byTheDay]);
    for (const path of ['/', '/shelf']) {
      await other.goto(path);
      await other.locator('h1').first().waitFor();
      // Neither tells odds today; whoever adds them tells these.
      for (const figure of figuresIn(await other.locator('main').innerText())) {
        expect([byTheDay, atAll, asPlanned]).toContain(figure);
      }
    }
    await other.close();
  }

  it('on the run’s page, the list of runs, Now, the shelf, in the API and on the command line', async () => {
    await page.goto(`/runs/${runId}`);
    const document = await planShown();
    const file = join(mkdtempSync(join(tmpdir(), 'benchtide-one-number-')), 'run.yaml');
    writeFileSync(file, JSON.stringify({ ...tiles, earlier: [] }));
    const printed = planCommand([file, '--at', '2026-11-25T12:00', '--json']);
    expect(printed.stderr).toBe('');
    const alone = JSON.parse(printed.stdout) as PlanDocument;
    expect([alone.odds, alone.runs[0]!.ready]).toEqual([document.odds, document.runs[0]!.ready]);
    await isToldEverywhere(document);
  });

  it('and another one everywhere, on pages that are open too, once another run takes its hours', async () => {
    const before = await planShown();
    const piped = before.runs[0]!.stages.find(({ key }) => key === 'set-shells')!;
    const { id } = (await api.call('POST', '/api/runs', { ...cups.runs[0], startAfter: '2026-11-26T18:00' }))
      .body.run;
    const startAt = new Date(Date.parse(piped.endAt) + 15 * 60_000).toISOString();
    const pins = [{ stage: 'pour-under', startAt }];
    const put = await api.call('POST', `/api/runs/${id}/plan`, { pins });
    expect(put.status, JSON.stringify(put.body)).toBe(201);
    await api.renewed();
    const after = await planShown();
    expect(told(after)).not.toEqual(told(before));
    await isToldEverywhere(after);
  });
});

import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { de } from '../../apps/web/words/de/index.js';
import { en } from '../../apps/web/words/en/index.js';
import { settings } from '../../apps/web/words/en/settings.js';
import { loadRunFile } from '../support/run-files.js';
import { openTestApi, type TestApi } from '../support/test-api.js';
import { seriousFaults } from './support/accessibility.js';
import { startBrowser } from './support/browser.js';
import { Hand } from './support/hand.js';
import { faultsIn } from './support/page-faults.js';
import { settled, textsOf } from './support/page-texts.js';
import { PAGES, shoot, signedIn } from './support/screens.js';

const browser: Browser | null = await startBrowser();
const { start, shell, now, plan, library, form } = en;

describe.skipIf(browser === null)('the first start, on a phone', { timeout: 120_000 }, () => {
  let bench: TestApi;
  let context: BrowserContext;
  let page: Page;
  let complaints: string[];

  beforeAll(async () => {
    bench = await openTestApi('2026-11-27T10:00:00Z', loadRunFile('ok', 'two-layer'), PAGES, {
      begun: false,
    });
    ({ context, page, complaints } = await signedIn(browser!, bench, { width: 360, colorScheme: 'light' }));
    page.setDefaultTimeout(20_000);
  });

  afterAll(async () => {
    await browser?.close();
    await bench.close();
  });

  it('asks how to begin, whatever page is opened, in either language', async () => {
    for (const path of ['/', '/runs', '/settings']) {
      await page.goto(path);
      await page.getByRole('heading', { level: 1, name: start.title }).waitFor();
    }
    expect(await seriousFaults(page)).toEqual([]);
    await shoot(page, 'start-360-light');
    await page.getByRole('radio', { name: 'Deutsch' }).check();
    await page.getByRole('heading', { level: 1, name: de.start.title }).waitFor();
    expect(faultsIn(await textsOf(page), 'de', 'metric', [])).toEqual([]);
    await shoot(page, 'start-360-light-de');
    await page.getByRole('radio', { name: 'English' }).check();
    await page.getByRole('heading', { level: 1, name: start.title }).waitFor();
  });

  it('shows the demo, marked as one on every page', async () => {
    await page.getByRole('button', { name: start.demo.go }).click();
    await page.getByRole('heading', { level: 1, name: shell.now }).waitFor();
    const runs: { id: string; state: string }[] = (await inDemo('GET', '/api/runs')).body;
    const run = runs.find(({ state }) => state === 'planned')!;
    for (const path of [
      ...['/', '/runs', '/plan', '/guide', '/shelf', '/makings', '/makings/moulds/new', '/hours', '/lessons'],
      ...['/settings', '/nowhere', ...['', '/amounts', '/sheet', '/log'].map((of) => `/runs/${run.id}${of}`)],
    ]) {
      await page.goto(path);
      await page.getByRole('heading', { level: 1 }).first().waitFor();
      const bar = page.getByRole('complementary', { name: shell.demo.label });
      expect(await bar.innerText(), path).toContain(shell.demo.says);
      expect(await page.evaluate(() => document.documentElement.scrollWidth), path).toBeLessThanOrEqual(360);
    }
    const curing = runs.find(({ state }) => state === 'curing')!;
    await page.goto(`/runs/${curing.id}`);
    await page.getByText(en.run.unplanned).waitFor();
    await page.goto('/runs');
    await settled(page);
    // All of it in sight, so that nothing happens to lie behind the menu, which stays where it is.
    await page.setViewportSize({ width: 360, height: 1600 });
    expect(await seriousFaults(page)).toEqual([]);
    await shoot(page, 'demo-runs-360-light');
    await page.emulateMedia({ colorScheme: 'dark' });
    expect(await seriousFaults(page)).toEqual([]);
    await page.setViewportSize({ width: 1280, height: 900 });
    await shoot(page, 'demo-runs-1280-dark');
    await page.emulateMedia({ colorScheme: 'light' });
    await page.setViewportSize({ width: 360, height: 740 });
  });

  it('is left by one tap, and begins an own workshop with the guide', async () => {
    await page.getByRole('button', { name: shell.demo.leave }).click();
    await page.getByRole('heading', { level: 1, name: start.title }).waitFor();
    await page.getByRole('button', { name: start.own.go }).click();
    await page.getByRole('heading', { level: 1, name: plan.guide.title }).waitFor();
    const { facts } = (await bench.call('GET', '/api/workshop')).body;
    expect([facts.title, facts.timeZone]).toEqual([start.workshop, 'Europe/Dublin']);
    expect(await page.getByRole('complementary', { name: shell.demo.label }).count()).toBe(0);
    await page.goto('/');
    await page.getByRole('link', { name: now.first.plan }).waitFor();
    await shoot(page, 'now-first-360-light');
    // The guide is in the menu, too, for later.
    await page.getByText(shell.more, { exact: true }).click();
    await page.getByRole('navigation').getByRole('link', { name: shell.guide }).last().click();
    await page.getByRole('heading', { level: 1, name: plan.guide.title }).waitFor();
    await page.goto('/lessons');
    await page.getByRole('heading', { level: 1 }).waitFor();
    expect((await bench.call('GET', '/api/lessons')).body.lessons).toEqual([]);
  });

  it('keeps what a page of the demo saves in the demo, while another tab shows the own workshop', async () => {
    const other = await context.newPage();
    other.setDefaultTimeout(20_000);
    await other.goto('/settings');
    await other.getByRole('button', { name: start.demo.go }).click();
    await other.getByRole('complementary', { name: shell.demo.label }).waitFor();
    await other.goto('/makings/moulds/new');
    await other.getByRole('complementary', { name: shell.demo.label }).waitFor();
    const leaving = await context.newPage();
    await leaving.goto('/');
    await leaving.getByRole('button', { name: shell.demo.leave }).click();
    await leaving.getByRole('link', { name: now.first.plan }).waitFor();
    await leaving.goto('/makings/moulds/new');
    expect(await leaving.getByLabel(library.name, { exact: true }).inputValue()).toBe('');
    const hand = new Hand(other);
    await hand.fill(library.name, 'Tried out');
    await hand.fill(library.cavitiesOwned, '2');
    await hand.fill(library.waterFill, '50');
    await hand.press(form.save);
    await expect
      .poll(async () => titles((await inDemo('GET', '/api/moulds')).body), { timeout: 20_000 })
      .toContain('Tried out');
    expect((await bench.call('GET', '/api/moulds')).body).toEqual([]);
    await leaving.close();
    await other.close();
  });

  it('is thrown away by one tap that is confirmed, and asked for again in the settings', async () => {
    await page.goto('/settings');
    await page.getByRole('heading', { name: settings.title }).waitFor();
    await page.getByRole('button', { name: start.demo.go }).click();
    const bar = page.getByRole('complementary', { name: shell.demo.label });
    await bar.getByRole('button', { name: shell.demo.remove }).click();
    await bar.getByText(shell.demo.ask).waitFor();
    await shoot(page, 'demo-remove-360-light');
    await bar.getByRole('button', { name: shell.demo.yes }).click();
    await page.getByRole('link', { name: now.first.plan }).waitFor();
    expect((await bench.call('GET', '/api/session')).body.demo).toBeNull();
    expect(await bench.count('run')).toBe(0);
  });

  it('goes to the own workshop by itself where another device throws the demo away', async () => {
    await page.goto('/settings');
    await page.getByRole('button', { name: start.demo.go }).click();
    await page.getByRole('complementary', { name: shell.demo.label }).waitFor();
    await bench.call('DELETE', '/api/demo');
    await page.goto('/runs');
    await page.getByRole('link', { name: now.first.plan }).waitFor();
    // A browser says so itself when an answer is a refusal, as that of a demo that is gone.
    expect(complaints.filter((each) => !/status of (404|410|422)/.test(each))).toEqual([]);
  });

  async function inDemo(method: string, path: string): ReturnType<TestApi['call']> {
    const { demo } = (await bench.call('GET', '/api/session')).body;
    return bench.call(method, path, undefined, { 'benchtide-workshop': demo });
  }

  function titles(things: readonly { readonly content: { readonly title: string } }[]): string[] {
    return things.map(({ content }) => content.title);
  }
});

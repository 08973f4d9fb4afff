import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { en } from '../../apps/web/words/en/index.js';
import { settings } from '../../apps/web/words/en/settings.js';
import { openTestApi, type TestApi } from '../support/test-api.js';
import { seriousFaults } from './support/accessibility.js';
import { startBrowser } from './support/browser.js';
import { Hand } from './support/hand.js';
import { PAGES, shoot } from './support/screens.js';

/** A name of the home network: not localhost, so the browser takes its pages for insecure. */
const HOST = 'bench.test';
const browser: Browser | null = await startBrowser(HOST);
const WAIT_MS = 20_000;
const { library, patterns, form, plan, now, shell, hours, session } = en;
const { mishap } = en.run;

/** As a phone opens the program that runs on another machine at home, without TLS. */
describe.skipIf(browser === null)('all journeys over plain http', { timeout: 120_000 }, () => {
  let bench: TestApi;
  let context: BrowserContext;
  let page: Page;
  let address: string;
  const complaints: string[] = [];

  beforeAll(async () => {
    bench = await openTestApi('2026-11-27T10:00:00Z', undefined, PAGES, { anyHost: true });
    address = bench.url.replace('127.0.0.1', HOST);
    ({ context, page } = await phone());
  });

  afterAll(async () => {
    await browser?.close();
    await bench.close();
  });

  it('signs in by a link, on a page that is not secure', async () => {
    const { code } = await bench.storage.signInCodes.create(bench.workshopId);
    await page.goto(`/#sign-in=${code}`);
    await page.getByRole('heading', { level: 1, name: shell.now }).waitFor();
    expect(
      await page.evaluate(() => [
        isSecureContext,
        'randomUUID' in crypto,
        'clipboard' in navigator,
        'serviceWorker' in navigator,
        'locks' in navigator,
      ]),
    ).toEqual([false, false, false, false, false]);
  });

  it('goes through the guide to a planned run', async () => {
    await page.getByRole('main').getByRole('link', { name: now.first.plan }).click();
    await page.getByLabel('Water in one cavity').fill('84');
    await page.getByLabel('Cavities you own').fill('6');
    await page.getByRole('button', { name: plan.guide.next }).click();
    await page.getByRole('button', { name: 'Mostly olive' }).click();
    await page.getByText(/Likely firm enough to unmould/).waitFor();
    await page.getByRole('button', { name: plan.guide.next }).click();
    for (const day of [hours.days.saturday, hours.days.sunday])
      await page.getByRole('checkbox', { name: day }).check();
    await page.getByRole('button', { name: plan.guide.next }).click();
    await page.getByText(/tried 2,000 times/).waitFor();
    await page.getByRole('button', { name: plan.guide.finish }).click();
    await page.waitForURL(/\/runs\/[\w-]{36}/);
    await page.getByRole('table').first().waitFor();
  });

  it('saves a recipe, a mould and a design, and what is changed in one', async () => {
    const hand = new Hand(page);
    await page.goto('/makings/designs/new');
    await hand.fill(library.name, 'Pebble');
    await hand.tick(`${patterns.names.cast} ${patterns.steps.cast}`);
    await hand.press(patterns.newRecipe, 'link');
    await page.getByRole('heading', { level: 1, name: library.newOf.recipes }).waitFor();
    await hand.fill(library.name, 'Pebble soap');
    await hand.choose(`${library.fat} 1`, 'Olive oil');
    await hand.fill(`${library.share}: Olive oil`, '100');
    await hand.press(form.save);
    await page.getByText(patterns.title).first().waitFor();
    await hand.press(patterns.newMould, 'link');
    await page.getByRole('heading', { level: 1, name: library.newOf.moulds }).waitFor();
    await hand.fill(library.name, 'Pebble mould');
    await hand.fill(library.cavitiesOwned, '12');
    await hand.fill(library.waterFill, '62');
    await hand.press(form.save);
    await page.getByText(patterns.title).first().waitFor();
    await hand.press(patterns.take);
    await hand.press(form.save);
    await page.waitForURL(/\/makings\/designs\/[\w-]{36}/);
    const recipes: { id: string; content: { title: string } }[] = (await bench.call('GET', '/api/recipes'))
      .body;
    const recipe = recipes.find(({ content }) => content.title === 'Pebble soap');
    await page.goto(`/makings/recipes/${recipe?.id ?? ''}`);
    await hand.fill(library.name, 'Pebble soap, mild');
    await hand.press(form.save);
    await expect
      .poll(async () => (await bench.call('GET', `/api/recipes/${recipe?.id ?? ''}`)).body.content.title)
      .toBe('Pebble soap, mild');
  });

  it('plans a run of it beside the first', async () => {
    await page.goto('/plan');
    await page.getByRole('radio', { name: /Pebble/ }).check();
    await page.getByText(/tried 2,000 times/).waitFor();
    await page.getByRole('button', { name: plan.save }).click();
    await page.waitForURL(/\/runs\/[\w-]{36}/);
    expect((await bench.call('GET', '/api/runs')).body).toHaveLength(2);
  });

  it('logs that a stage is done, takes it back, and logs a mishap', async () => {
    const [run] = (await bench.call('GET', '/api/runs')).body;
    const [first] = (await bench.call('GET', `/api/runs/${run.id}/plan`)).body.document.runs[0].stages;
    await bench.walkTo(first.startAt, 240);
    bench.clock.advance(15);
    await page.goto('/');
    await page
      .getByRole('button', { name: now.about(now.done, first.title) })
      .first()
      .click();
    await page.getByRole('button', { name: now.answer.undo, exact: true }).click();
    await expectLog(run.id, ['done', 'take-back']);
    await page
      .getByRole('button', { name: now.about(now.done, first.title) })
      .first()
      .click();
    await expectLog(run.id, ['done', 'take-back', 'done']);
    await page.getByRole('button', { name: now.answer.ok }).click();
    await page
      .getByRole('button', { name: new RegExp(`^${now.wentWrong}`) })
      .first()
      .click();
    const dialog = page.getByRole('dialog');
    await dialog.getByRole('radio', { name: mishap.happened.holes }).check();
    await dialog.getByRole('button', { name: `${mishap.choose}: ${mishap.responses['carry-on']}` }).click();
    await page.getByRole('button', { name: now.answer.undo, exact: true }).waitFor();
  });

  it('keeps what is logged while the connection is away, and sends it afterwards', async () => {
    const before = await bench.count('bench_log');
    await context.setOffline(true);
    await page.getByRole('button', { name: now.answer.undo, exact: true }).click();
    await page.getByText(shell.waiting(1)).first().waitFor();
    await context.setOffline(false);
    await expect.poll(() => bench.count('bench_log'), { timeout: WAIT_MS }).toBe(before + 1);
  });

  it('changes hours', async () => {
    await page.goto('/hours');
    await page.getByRole('button', { name: hours.addSpan(hours.days.wednesday) }).click();
    await page.getByRole('button', { name: form.save, exact: true }).click();
    await expect
      .poll(async () => (await bench.call('GET', '/api/workshop')).body.facts.hours.weekly.wednesday.length)
      .toBeGreaterThan(0);
  });

  it('says once, in the settings, what browsers hold back, and copies a link all the same', async () => {
    await page.goto('/settings');
    await page.getByRole('heading', { name: settings.plainHttp.title }).waitFor();
    await page.getByRole('button', { name: settings.add }).click();
    await page.getByRole('button', { name: settings.copy }).click();
    await page.getByRole('button', { name: settings.copied }).waitFor();
    await shoot(page, 'settings-plain-http-360');
    expect(await seriousFaults(page)).toEqual([]);
    const link = await page.locator('.link-text').innerText();
    await page.goto('/makings');
    await page.getByLabel(library.search).focus();
    await page.keyboard.press('Control+V');
    expect(await page.getByLabel(library.search).inputValue()).toBe(link);
    const other = await phone();
    await other.page.goto(link);
    await other.page.getByRole('heading', { level: 1, name: shell.now }).waitFor();
    expect(await other.page.getByText(session.enter).count()).toBe(0);
    await other.context.close();
  });

  it('opens every page without a word of trouble', async () => {
    for (const path of ['/runs', '/shelf', '/lessons', '/makings/fats/new', '/makings/moulds/new']) {
      await page.goto(path);
      await page.getByRole('heading', { level: 1 }).waitFor();
      await page.getByText(shell.loading).first().waitFor({ state: 'hidden' });
      expect(await page.getByText(shell.noAnswer).count(), path).toBe(0);
    }
    // A browser complains by itself of what is no trouble: nobody was signed in yet (401), what is half entered has no
    // amounts yet (422), there was no connection.
    const usual = /status of (401|422)|ERR_INTERNET_DISCONNECTED/;
    expect(complaints.filter((each) => !usual.test(each))).toEqual([]);
  });

  async function phone(): Promise<{ readonly context: BrowserContext; readonly page: Page }> {
    const made = await browser!.newContext({
      baseURL: address,
      viewport: { width: 360, height: 740 },
      locale: 'en-GB',
      timezoneId: 'Europe/Dublin',
      hasTouch: true,
    });
    const first = await made.newPage();
    first.setDefaultTimeout(WAIT_MS);
    first.on('pageerror', (error) => complaints.push(String(error)));
    first.on('console', (message) => {
      if (message.type() === 'error') complaints.push(message.text());
    });
    return { context: made, page: first };
  }

  async function expectLog(run: string, kinds: readonly string[]): Promise<void> {
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
});

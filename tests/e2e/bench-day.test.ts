import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { PlannedStage } from '#contract';
import { amountsIn, timesIn, type Language } from '#words';
import { de } from '../../apps/web/words/de/index.js';
import { en } from '../../apps/web/words/en/index.js';
import { openTestApi, type TestApi } from '../support/test-api.js';
import { seriousFaults } from './support/accessibility.js';
import { startBrowser } from './support/browser.js';
import { Hand } from './support/hand.js';
import { PAGES, shoot, signedIn } from './support/screens.js';

const browser: Browser | null = await startBrowser();

const readers = { en: { words: en, olive: 'Olive oil' }, de: { words: de, olive: 'Olivenöl' } } as const;

/** A piece that nobody ever made, entered in an empty workshop, and made without leaving the page of the day. */
describe.skipIf(browser === null).each(['en', 'de'] as const)(
  'a day at the bench on a phone, from the scales to the turning (%s)',
  { timeout: 120_000 },
  (language: Language) => {
    const { words, olive } = readers[language];
    const { now, library, patterns, form, plan, shelf, run: runWords } = words;
    const { mishap } = runWords;
    const times = timesIn(language === 'de' ? 'de-DE' : 'en-GB', 'Europe/Dublin').dayTime;
    let bench: TestApi;
    let context: BrowserContext;
    let page: Page;
    let complaints: string[];
    let run: string;

    beforeAll(async () => {
      bench = await openTestApi('2026-11-26T10:00:00Z', undefined, PAGES);
      ({ context, page, complaints } = await signedIn(browser!, bench, { width: 360, colorScheme: 'light' }));
      page.setDefaultTimeout(20_000);
      await page.addInitScript((chosen) => {
        localStorage.setItem('benchtide.preferences', JSON.stringify({ language: chosen }));
      }, language);
    });

    afterAll(async () => {
      await context?.close();
      await bench.close();
    });

    it('enters the piece and plans it', async () => {
      const hand = new Hand(page);
      await page.goto('/makings/designs/new');
      await hand.fill(library.name, 'Quill');
      await hand.tick(`${patterns.names.cast} ${patterns.steps.cast}`);
      await hand.press(patterns.newRecipe, 'link');
      await page.getByRole('heading', { level: 1, name: library.newOf.recipes }).waitFor();
      await hand.fill(library.name, 'Quill soap');
      await hand.choose(`${library.fat} 1`, olive);
      await hand.fill(`${library.share}: ${olive}`, '100');
      await hand.press(form.save);
      await page.getByText(patterns.title).first().waitFor();
      await hand.press(patterns.newMould, 'link');
      await page.getByRole('heading', { level: 1, name: library.newOf.moulds }).waitFor();
      await hand.fill(library.name, 'Quill mould');
      await hand.fill(library.cavitiesOwned, '12');
      await hand.fill(library.waterFill, '62');
      await hand.press(form.save);
      await page.getByText(patterns.title).first().waitFor();
      await hand.press(patterns.take);
      await hand.press(`+ ${patterns.additions.glaze}`);
      await hand.fill(library.onePiece, '2');
      await hand.press(form.save);
      await page.waitForURL(/\/makings\/designs\/[\w-]{36}/);
      await page.goto('/plan');
      await page.getByRole('radio', { name: /Quill/ }).check();
      await page.locator('.outcome h3').first().waitFor();
      await page.getByRole('button', { name: plan.save }).click();
      await page.waitForURL(/\/runs\/[\w-]{36}/);
      run = (await bench.call('GET', '/api/runs')).body[0].id;
      expect((await stages()).map(({ kind }) => kind)).toEqual(
        expect.arrayContaining(['pour', 'unmould', 'glaze', 'turn']),
      );
    });

    it('tells a day ahead when the sitting is, what it is for, and what to get out; nothing is counted down', async () => {
      await page.goto('/');
      const [first] = await stages();
      const head = page.getByRole('heading', { level: 2 }).first();
      await head.waitFor();
      expect(await head.innerText()).toMatch(
        language === 'en'
          ? /Fri 27 Nov.*18:\d\d, about .*: \w+ stages?/
          : /Fr., 27. Nov.*18:\d\d, etwa .*: \w+ Schritte?/,
      );
      const main = await page.getByRole('main').innerText();
      for (const fact of [
        'Quill',
        runWords.pieces(12),
        'Quill mould',
        first!.title,
        olive,
        now.plan.tools.goggles,
      ])
        expect(main).toContain(fact);
      expect(await page.getByRole('timer').count()).toBe(0);
      await shoot(page, `now-ahead-360-${language}`);
      expect(await faults()).toEqual([]);
    });

    it('weighs with the amounts of the bench sheet, and keeps the ticks through a reload', async () => {
      const [pour] = await stages();
      await bench.walkTo(pour!.startAt, 240);
      await page.goto('/');
      await page.getByRole('heading', { level: 2 }).first().waitFor();
      await shoot(page, `now-begun-360-${language}`);
      await page.getByRole('link', { name: now.about(now.weigh.open, pour!.title) }).click();
      const scales = page.getByRole('dialog');
      const sheet = (await bench.call('GET', `/api/runs/${run}/amounts`)).body.runs[0];
      const { mass } = amountsIn(language, 'metric');
      const { waterG, naohG, fatsG } = sheet.batches[0].amounts;
      for (const [title, grams] of [
        [olive, fatsG],
        [runWords.sheet.water, waterG],
        [runWords.sheet.naoh, naohG],
      ] as const) {
        const row = scales.getByRole('listitem').filter({ hasText: title });
        expect(await row.innerText()).toContain(mass(grams));
        expect((await row.boundingBox())?.height).toBeGreaterThanOrEqual(44);
      }
      // The caution stands right above what it is about.
      const lye = scales.locator('section').filter({ hasText: runWords.sheet.naoh }).last();
      expect(await lye.innerText()).toMatch(language === 'en' ? /Lye burns skin and eyes/ : /Lauge verätzt/);
      await scales.getByRole('checkbox', { name: olive }).check();
      await scales.getByText(now.weigh.count(1, 3)).waitFor();
      await shoot(page, `now-weigh-360-${language}`);
      expect(await faults()).toEqual([]);
      await page.reload();
      await scales.getByText(now.weigh.count(1, 3)).waitFor();
      expect(await scales.getByRole('checkbox', { name: olive }).isChecked()).toBe(true);
      expect(await scales.getByRole('checkbox', { name: runWords.sheet.naoh }).isChecked()).toBe(false);
    });

    it('weighs on without a connection, after the phone has slept', async () => {
      await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
      // The first page of a browser is not yet looked after.
      await page.reload();
      const scales = page.getByRole('dialog');
      await scales.getByText(now.weigh.count(1, 3)).waitFor();
      await context.setOffline(true);
      await page.reload();
      await scales.getByText(now.weigh.count(1, 3)).waitFor();
      await scales.getByRole('checkbox', { name: runWords.sheet.water }).check();
      await scales.getByRole('checkbox', { name: runWords.sheet.naoh }).check();
      await scales.getByText(now.weigh.all).waitFor();
      await scales.getByRole('button', { name: now.weigh.close }).click();
      await scales.waitFor({ state: 'hidden' });
      await page.locator('.connection .pill').first().waitFor();
      await shoot(page, `now-offline-360-${language}`);
      expect(await coveredButtons()).toEqual([]);
      await context.setOffline(false);
      await page.reload();
      const [pour] = await stages();
      await page.getByRole('link', { name: now.about(now.weigh.open, pour!.title) }).click();
      await scales.getByText(now.weigh.all).waitFor();
      await scales.getByRole('button', { name: now.weigh.close }).click();
      await scales.waitFor({ state: 'hidden' });
    });

    it('logs the pour by one tap, and has its soap on the shelf from then on', async () => {
      const [pour] = await stages();
      bench.clock.advance(35);
      await page.reload();
      await press(now.done, pour!);
      await page.getByRole('button', { name: now.answer.ok }).click();
      await page.goto('/shelf');
      const card = page.getByRole('article').filter({ hasText: 'Quill' });
      await card.getByText(shelf.stillMade).waitFor();
      const days: string[] = [];
      for (const name of [shelf.days.usable, shelf.days.cured, shelf.days.best]) {
        const told = await card.locator('dl > div').filter({ hasText: name }).innerText();
        expect(told).toMatch(language === 'en' ? /likely .*count on / : /wohl .*verlässlich /);
        days.push(told);
      }
      expect(new Set(days).size).toBe(3);
      await shoot(page, `shelf-poured-360-${language}`);
      expect(await faults()).toEqual([]);
    });

    it('asks back where something is called done long before it can be', async () => {
      const unmould = await stage('unmould');
      await page.goto('/');
      await page.getByText(now.plan.sooner).click();
      await press(now.done, unmould);
      const asked = page.getByRole('group', { name: now.early.ask(times(unmould.opensAt)) });
      await asked.getByRole('button', { name: now.early.no }).click();
      expect(await kinds()).toEqual(['done']);
    });

    it('says after “not firm yet” when to look again, and how likely it is firm by then', async () => {
      const unmould = await stage('unmould');
      await bench.walkTo(unmould.startAt, 240);
      await page.goto('/');
      await press(now.notFirm, unmould);
      const answer = page.locator('.next-look');
      await answer.waitFor();
      const next = await stage('unmould');
      expect(Date.parse(next.startAt)).toBeGreaterThan(Date.parse(unmould.startAt));
      const told = await answer.innerText();
      const clock = language === 'en' ? /Look again .*\d\d:\d\d/ : /Sehen Sie .*\d\d:\d\d wieder nach/;
      expect(told).toMatch(clock);
      expect(told).toMatch(
        language === 'en' ? /Ready by then: (about )?\d+ in \d+/ : /so weit: (etwa )?\d+ von \d+/,
      );
      await shoot(page, `now-not-firm-360-${language}`);
      expect(await faults()).toEqual([]);
      await page.getByRole('button', { name: now.answer.ok }).click();
    });

    it('shows what each answer to a mishap does before one is logged', async () => {
      const unmould = await stage('unmould');
      await bench.walkTo(unmould.startAt, 240);
      await page.goto('/');
      await press(now.done, unmould);
      await page.getByRole('button', { name: now.answer.ok }).click();
      const before = await kinds();
      const glaze = await stage('glaze');
      await press(now.wentWrong, glaze);
      const dialog = page.getByRole('dialog');
      await dialog.getByRole('radio', { name: mishap.happened.cracked }).check();
      const again = dialog.getByRole('listitem').filter({ hasText: mishap.responses.remake });
      await again.getByText(runWords.pieces(12)).waitFor();
      for (const fact of [runWords.odds, runWords.ready, runWords.next])
        expect(await again.innerText()).toContain(fact);
      await dialog.locator('[aria-busy="true"]').waitFor({ state: 'hidden' });
      await shoot(page, `now-mishap-360-${language}`);
      expect(await faults()).toEqual([]);
      await dialog.getByRole('button', { name: mishap.cancel }).click();
      expect(await kinds()).toEqual(before);
    });

    it('goes on to the turning without leaving the page', async () => {
      const glaze = await stage('glaze');
      await bench.walkTo(glaze.startAt, 240);
      await page.goto('/');
      await page.getByRole('link', { name: now.about(now.weigh.open, glaze.title) }).click();
      await page.getByRole('dialog').getByRole('checkbox', { name: runWords.sheet.base }).check();
      await page.getByRole('dialog').getByText(now.weigh.all).waitFor();
      await page.getByRole('dialog').getByRole('button', { name: now.weigh.close }).click();
      await press(now.done, glaze);
      await page.getByRole('button', { name: now.answer.ok }).click();
      const turn = await stage('turn');
      await bench.walkTo(turn.startAt, 240);
      await page.goto('/');
      await press(now.done, turn);
      await expect
        .poll(async () => (await kinds()).filter((kind) => kind === 'done').length, { timeout: 20_000 })
        .toBe(4);
    });

    it('broke no page on the way', () => {
      // What is half entered has no amounts yet (422), and a browser says by itself that there is no connection.
      const usual = /status of 422|ERR_INTERNET_DISCONNECTED|Failed to load resource/;
      expect(complaints.filter((each) => !usual.test(each))).toEqual([]);
    });

    /** In full height, or what the bar at the bottom covers just now counts as too small to touch. */
    async function faults(): Promise<string[]> {
      const height = await page.evaluate(() => document.documentElement.scrollHeight);
      await page.setViewportSize({ width: 360, height });
      const found = await seriousFaults(page);
      await page.setViewportSize({ width: 360, height: 740 });
      return found;
    }

    async function press(action: string, { title }: PlannedStage): Promise<void> {
      await page.getByRole('button', { name: now.about(action, title) }).click();
    }

    /** Buttons that cannot be tapped where they stand once they were brought into sight. */
    async function coveredButtons(): Promise<string[]> {
      return page.evaluate(() =>
        [...document.querySelectorAll<HTMLElement>('main button, main a, main summary')].flatMap((button) => {
          if (!button.checkVisibility()) return [];
          button.scrollIntoView({ block: 'nearest' });
          const { left, top, width, height } = button.getBoundingClientRect();
          const places = [top + 2, top + height / 2, top + height - 2];
          const isFree = places.every((y) => {
            const found = document.elementFromPoint(left + width / 2, y);
            return found !== null && (button.contains(found) || found.contains(button));
          });
          return isFree ? [] : [button.innerText];
        }),
      );
    }

    async function stage(kind: PlannedStage['kind']): Promise<PlannedStage> {
      const found = (await stages()).find((each) => each.kind === kind);
      if (found === undefined) throw new Error(`nothing is open of kind ${kind}`);
      return found;
    }

    async function kinds(): Promise<string[]> {
      const { body } = await bench.call('GET', `/api/runs/${run}/log`);
      return body.map(({ entry }: { entry: { kind: string } }) => entry.kind);
    }

    /** Open stages of the run, by the plan as it is now. */
    async function stages(): Promise<PlannedStage[]> {
      const { body } = await bench.call('GET', `/api/runs/${run}/plan`);
      const all: PlannedStage[] = body.document.runs[0].stages;
      return all.filter(({ status }) => status === 'planned');
    }
  },
);

afterAll(async () => {
  await browser?.close();
});

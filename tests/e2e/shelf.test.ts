import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { amountsIn, type Language } from '#words';
import { de } from '../../apps/web/words/de/index.js';
import { en } from '../../apps/web/words/en/index.js';
import { loadRunFile } from '../support/run-files.js';
import { openTestApi, type TestApi } from '../support/test-api.js';
import { seriousFaults } from './support/accessibility.js';
import { startBrowser } from './support/browser.js';
import { looks, PAGES, shoot, signedIn, type Look } from './support/screens.js';

const browser: Browser | null = await startBrowser();

/** Two lots of one design: one that was weighed nine days ago, and one of which the first layer is poured. */
describe.skipIf(browser === null)('the shelf', { timeout: 60_000 }, () => {
  let bench: TestApi;
  let curing: string;
  let pieceG: number;

  beforeAll(async () => {
    const file = loadRunFile('ok', 'two-layer');
    bench = await openTestApi('2026-11-27T17:30:00Z', file, PAGES);
    const [order] = await bench.stock(file);
    curing = (await bench.call('POST', '/api/runs', order)).body.run.id;
    for (let next = await nextOf(curing); next !== undefined; next = await nextOf(curing))
      await done(curing, next);
    // What a piece weighs fresh, by the batch sheet.
    const { amounts } = (await bench.call('GET', `/api/runs/${curing}/amounts`)).body.runs[0];
    pieceG = amounts.reduce(
      (
        sum: number,
        { batch, perPiece }: { batch?: { densityGPerMl: number }; perPiece?: { meanMl: number } },
      ) => sum + (batch?.densityGPerMl ?? 0) * (perPiece?.meanMl ?? 0),
      0,
    );
    await bench.walkTo('2026-12-05T18:00:00Z', 1440);
    const weighed = {
      kind: 'weigh-in',
      pieces: 6,
      massG: Math.round(pieceG * 6),
      at: '2026-12-05T18:00:00Z',
    };
    expect((await bench.call('POST', `/api/runs/${curing}/log`, weighed)).status).toBe(201);
    const second = { ...order, key: 'second', title: 'Second cups', startAfter: '2026-12-11T18:00' };
    const poured = (await bench.call('POST', '/api/runs', second)).body.run.id;
    for (;;) {
      const next = await nextOf(poured);
      if (next === undefined) throw new Error('nothing was poured');
      await done(poured, next);
      if (next.kind === 'pour') break;
    }
    await bench.walkTo('2026-12-14T18:00:00Z', 1440);
  }, 120_000);

  afterAll(async () => {
    await browser?.close();
    await bench.close();
  });

  it.each(looks.flatMap((look) => (['en', 'de'] as const).map((language) => ({ ...look, language }))))(
    'tells of all that cures when it may be used, is cured and at its best: $width $colorScheme $language',
    async ({ language, ...look }) => {
      const { page, close } = await opened(language, look);
      const { shelf } = wordsOf[language];
      const cards = page.getByRole('article');
      await cards.nth(1).getByText(shelf.stillMade).waitFor();
      await page.getByText(shelf.weighThese(1)).waitFor();
      for (const card of await cards.all()) {
        const told = await card.locator('.cure-days > div').allInnerTexts();
        expect(told.map((line) => line.split('\n')[0])).toEqual([
          shelf.days.usable,
          shelf.days.cured,
          shelf.days.best,
        ]);
        for (const line of told)
          expect(line).toMatch(language === 'en' ? /likely .*count on/s : /wohl .*verlässlich/s);
      }
      await shoot(page, `shelf-${look.width}-${look.colorScheme}-${language}`);
      expect(await faults(page)).toEqual([]);
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(look.width);
      await close();
    },
  );

  it('asks for the weekly weigh-in, and of a slip of ten whether the likely mass was meant; by keyboard alone', async () => {
    const { page, close } = await opened('en', looks[0]!);
    const { shelf } = en;
    const { mass } = amountsIn('en', 'metric');
    const meant = Math.round(pieceG * 6 * 0.97);
    const [lot] = (await bench.call('GET', '/api/lots')).body;
    const ask = page.getByRole('button', { name: shelf.weighLot(lot.title) });
    await ask.focus();
    await page.keyboard.press('Enter');
    const field = page.getByLabel(shelf.together('g'));
    await field.focus();
    await page.keyboard.type(String(meant * 10));
    await page.keyboard.press('Enter');
    const offer = page.getByRole('button', { name: shelf.meant(mass(meant)) });
    await offer.waitFor();
    expect(await weighed()).toEqual([Math.round(pieceG * 6)]);
    await shoot(page, 'shelf-slip-360-light');
    expect(await faults(page)).toEqual([]);
    await offer.focus();
    await page.keyboard.press('Enter');
    await expect.poll(weighed, { timeout: 20_000 }).toEqual([Math.round(pieceG * 6), meant]);
    // It is not asked for again until the week is over.
    await page.reload();
    await page.getByText('Weigh it again').waitFor();
    expect(await page.getByText(shelf.weighThese(1)).count()).toBe(0);
    await close();
  });

  const wordsOf = { en, de } as const;

  interface Open {
    readonly key: string;
    readonly kind: string;
    readonly startAt: string;
    readonly endAt: string;
    readonly status: string;
  }

  async function nextOf(run: string): Promise<Open | undefined> {
    const stages: Open[] = (await bench.call('GET', `/api/runs/${run}/plan`)).body.document.runs[0].stages;
    const open = stages.filter(({ status }) => status === 'planned');
    return open.toSorted((a, b) => a.startAt.localeCompare(b.startAt))[0];
  }

  async function done(run: string, { key, startAt, endAt }: Open): Promise<void> {
    await bench.walkTo(endAt, 1440);
    const entry = { kind: 'done', stage: key, startedAt: startAt, at: endAt };
    const answer = await bench.call('POST', `/api/runs/${run}/log`, entry);
    expect(answer.status, JSON.stringify(answer.body)).toBe(201);
  }

  async function weighed(): Promise<number[]> {
    const { body } = await bench.call('GET', `/api/runs/${curing}/log`);
    return body.flatMap(({ entry }: { entry: { kind: string; massG: number } }) =>
      entry.kind === 'weigh-in' ? [entry.massG] : [],
    );
  }

  /** In full height, or what the bar at the bottom covers just now counts as too small to touch. */
  async function faults(page: Page): Promise<string[]> {
    const { width, height } = await page.evaluate(() => ({
      width: innerWidth,
      height: document.documentElement.scrollHeight,
    }));
    await page.setViewportSize({ width, height });
    return seriousFaults(page);
  }

  async function opened(
    language: Language,
    look: Look,
  ): Promise<{ readonly page: Page; readonly close: () => Promise<void> }> {
    const { context, page } = await signedIn(browser!, bench, look);
    page.setDefaultTimeout(20_000);
    await page.addInitScript((chosen) => {
      localStorage.setItem('benchtide.preferences', JSON.stringify({ language: chosen }));
    }, language);
    await page.goto('/shelf');
    await page.getByRole('heading', { level: 1 }).waitFor();
    return { page, close: () => context.close() };
  }
});

import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { PlannedStage } from '#contract';
import { de } from '../../apps/web/words/de/index.js';
import { openTestApi, type TestApi } from '../support/test-api.js';
import { startBrowser } from './support/browser.js';
import { Hand } from './support/hand.js';
import { PAGES, shoot, signedIn } from './support/screens.js';

const browser: Browser | null = await startBrowser();

const { library, patterns, form, plan } = de;
const MOST = 40;

/** A base, a coat, a glaze, a filling and decor: on a phone, in German, with nothing but fields, choices and buttons. */
describe.skipIf(browser === null)('a piece of five parts, entered by hand on a phone', () => {
  let api: TestApi;
  let page: Page;
  let complaints: string[];

  beforeAll(async () => {
    api = await openTestApi('2026-11-27T10:00:00Z', undefined, PAGES);
    ({ page, complaints } = await signedIn(browser!, api, { width: 360, colorScheme: 'light' }));
    page.setDefaultTimeout(20_000);
    await page.addInitScript(() =>
      localStorage.setItem('benchtide.preferences', JSON.stringify({ language: 'de' })),
    );
  });

  afterAll(async () => {
    await browser?.close();
    await api.close();
  });

  it(`takes at most ${String(MOST)} entries, recipe and mould among them, and is planned in the order in which soap allows it`, async () => {
    const hand = new Hand(page);
    await page.goto('/makings/designs/new');
    await hand.fill(library.name, 'Muschel mit Perle');
    await hand.tick(patterns.names.coated);
    // There is no recipe and no mould yet: described in between, and nothing of the piece is lost.
    const before = hand.entries;
    await hand.press(patterns.newRecipe, 'link');
    await page.getByRole('heading', { level: 1, name: library.newOf.recipes }).waitFor();
    await hand.fill(library.name, 'Muschelseife');
    for (const [i, [fat, share]] of (
      [
        ['Olivenöl', '45'],
        ['Kokosöl', '30'],
        ['Sheabutter, raffiniert', '25'],
      ] as const
    ).entries()) {
      if (i > 0) await hand.press(library.addFat);
      await hand.choose(`${library.fat} ${String(i + 1)}`, fat);
      if (i < 2) await hand.fill(`${library.share}: ${fat}`, share);
    }
    await hand.press(form.save);
    await page.getByText(patterns.title).first().waitFor();
    await hand.press(patterns.newMould, 'link');
    await page.getByRole('heading', { level: 1, name: library.newOf.moulds }).waitFor();
    await hand.fill(library.name, 'Muschelmulde');
    await hand.fill(library.cavitiesOwned, '12');
    await hand.fill(library.waterFill, '62');
    await hand.press(form.save);
    await page.getByText(patterns.title).first().waitFor();
    const forOthers = hand.entries - before;

    await shoot(page, 'piece-pattern-360-light');
    await hand.press(patterns.take);
    await hand.press(`+ ${patterns.additions.filling}`);
    await hand.fill(library.onePiece, '6');
    await hand.press(`+ ${patterns.additions.decor}`);
    await hand.press(`+ ${patterns.additions.glaze}`);
    await hand.fill(library.onePiece, '2');
    // The coat came with the pattern: its line is opened like any other.
    hand.entries += 1;
    await page.locator('summary', { hasText: patterns.roles.coat }).first().click();
    await hand.fill(library.onePiece, '9');
    await shoot(page, 'piece-editor-360-light');
    await hand.press(form.save);
    await page.waitForURL(/\/makings\/designs\/[\w-]{36}/);
    expect(hand.entries).toBeLessThanOrEqual(MOST);
    // Not a bar of its own: it says how much of it was recipe and mould.
    expect(hand.entries - forOthers).toBeLessThanOrEqual(16);

    await page.goto('/plan');
    await page.getByRole('radio', { name: /Muschel mit Perle/ }).check();
    await page.locator('.outcome h3').first().waitFor();
    await page.getByRole('button', { name: plan.save }).click();
    await page.waitForURL(/\/runs\/[\w-]{36}/);
    const [run] = (await api.call('GET', '/api/runs')).body;
    const { document } = (await api.call('GET', `/api/runs/${run.id}/plan`)).body;
    expect(document.status).toBe('planned');
    const stages: readonly PlannedStage[] = document.runs[0].stages;
    const of = (kind: PlannedStage['kind']): PlannedStage => {
      const found = stages.filter((stage) => stage.kind === kind);
      expect(found, kind).toHaveLength(1);
      return found[0] as PlannedStage;
    };
    const minutesBetween = (first: PlannedStage, then: PlannedStage): number =>
      (Date.parse(then.startAt) - Date.parse(first.endAt)) / 60_000;
    const [pour, unmould, dip, glaze] = [of('pour'), of('unmould'), of('dip'), of('glaze')];
    // No batter of these fats is firm within a day. Common practice, no source.
    expect(minutesBetween(pour, unmould)).toBeGreaterThanOrEqual(24 * 60);
    for (const [first, then] of [
      [unmould, of('pipe')],
      [of('pipe'), dip],
      [dip, of('set-in')],
      [of('press-decor'), of('set-in')],
      [dip, glaze],
      [glaze, of('turn')],
    ] as const) {
      expect(minutesBetween(first, then), `${first.title} → ${then.title}`).toBeGreaterThanOrEqual(0);
    }
    // What is half entered has no amounts yet, and the page asks for them all along.
    expect(complaints.filter((each) => !each.includes('status of 422'))).toEqual([]);
  }, 120_000);
});

import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { en } from '../../apps/web/words/en/index.js';
import { openTestApi, type TestApi } from '../support/test-api.js';
import { startBrowser } from './support/browser.js';
import { Hand } from './support/hand.js';
import { PAGES, shoot, signedIn } from './support/screens.js';

const browser: Browser | null = await startBrowser();

const { library, patterns, form, plan } = en;

/** Twelve coated and twelve piped, from one pour, by somebody who has entered nothing before: on a phone, in English. */
describe.skipIf(browser === null)('pieces that part ways, in an empty workshop on a phone', () => {
  let api: TestApi;
  let page: Page;
  let complaints: string[];
  let hand: Hand;

  beforeAll(async () => {
    api = await openTestApi('2026-11-27T10:00:00Z', undefined, PAGES);
    ({ page, complaints } = await signedIn(browser!, api, { width: 360, colorScheme: 'light' }));
    page.setDefaultTimeout(20_000);
    hand = new Hand(page);
  });

  afterAll(async () => {
    await browser?.close();
    await api.close();
  });

  it('are entered from nothing: recipe, mould, and a piece with a coat and a topping', async () => {
    await page.goto('/makings/designs/new');
    await hand.fill(library.name, 'Pebble');
    await hand.tick(patterns.names.coated);
    await hand.press(patterns.newRecipe, 'link');
    await page.getByRole('heading', { level: 1, name: library.newOf.recipes }).waitFor();
    await hand.fill(library.name, 'Pebble soap');
    for (const [i, fat] of ['Olive oil', 'Coconut oil', 'Lard'].entries()) {
      if (i > 0) await hand.press(library.addFat);
      await hand.choose(`${library.fat} ${String(i + 1)}`, fat);
      // Thirds, as people write them.
      await hand.fill(`${library.share}: ${fat}`, '33.3');
    }
    await hand.press(form.save);
    await page.getByText(patterns.title).first().waitFor();
    await hand.press(patterns.newMould, 'link');
    await page.getByRole('heading', { level: 1, name: library.newOf.moulds }).waitFor();
    await hand.fill(library.name, 'Pebble mould');
    await hand.fill(library.cavitiesOwned, '24');
    await hand.fill(library.waterFill, '40');
    await hand.press(form.save);
    await page.getByText(patterns.title).first().waitFor();
    await hand.press(patterns.take);
    await hand.press(`+ ${patterns.additions.piping}`);
    await hand.fill(library.onePiece, '7');
    hand.entries += 1;
    await page.locator('summary', { hasText: patterns.roles.coat }).first().click();
    await hand.fill(library.onePiece, '9');
    await hand.press(form.save);
    await page.waitForURL(/\/makings\/designs\/[\w-]{36}/);
    expect(hand.entries).toBeLessThanOrEqual(24);
  }, 120_000);

  it('are one pour for all, a coat for twelve and a topping for twelve, on the base', async () => {
    const before = hand.entries;
    await page.goto('/plan');
    await hand.tick('Pebble');
    hand.entries += 1;
    await page.getByRole('slider', { name: 'Pieces' }).fill('24');
    hand.entries += 1;
    await page.getByRole('radio', { name: 'Pieces part ways' }).click();
    for (const [i, [name, lacks]] of (
      [
        ['Coated', patterns.roles.piping],
        ['Piped', patterns.roles.coat],
      ] as const
    ).entries()) {
      const group = page.locator('[role=group]').nth(i);
      hand.entries += 2;
      await group.getByLabel('Name', { exact: true }).fill(name);
      await group.getByRole('checkbox', { name: lacks }).click();
    }
    await page.getByText(/tried 2,000 times/).waitFor();
    await shoot(page, 'parting-ways-by-hand');
    await hand.press(plan.save);
    await page.waitForURL(/\/runs\/[\w-]{36}/);
    console.info(
      `From an empty workshop: ${String(hand.entries)} entries, ${String(hand.entries - before)} of them for the run.`,
    );
    expect(hand.entries - before).toBeLessThanOrEqual(8);

    const [{ id }] = (await api.call('GET', '/api/runs')).body;
    const { document } = (await api.call('GET', `/api/runs/${id}/plan`)).body;
    expect(document.status).toBe('planned');
    const stages: { kind: string; pieces?: number; startAt: string; endAt: string }[] =
      document.runs[0].stages;
    expect(stages.map(({ kind, pieces }) => [kind, pieces ?? 24])).toEqual(
      expect.arrayContaining([
        ['pour', 24],
        ['unmould', 24],
        ['dip', 12],
        ['pipe', 12],
      ]),
    );
    const at = (kind: string, end: 'startAt' | 'endAt'): number =>
      Date.parse(stages.find((stage) => stage.kind === kind)?.[end] ?? '');
    // No batter of these fats is firm within a day. Common practice, no source.
    expect(at('unmould', 'startAt') - at('pour', 'endAt')).toBeGreaterThanOrEqual(24 * 3_600_000);
    expect(at('dip', 'startAt')).toBeGreaterThanOrEqual(at('unmould', 'endAt'));
    expect(at('pipe', 'startAt')).toBeGreaterThanOrEqual(at('unmould', 'endAt'));
    // A coat is turned after half a day; piping does not wait for it, as it is on other pieces.
    expect(Math.abs(at('pipe', 'startAt') - at('dip', 'startAt'))).toBeLessThan(3 * 3_600_000);
    expect(complaints.filter((each) => !each.includes('status of 422'))).toEqual([]);
  }, 120_000);
});

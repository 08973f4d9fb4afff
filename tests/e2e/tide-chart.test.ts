import type { Browser, CDPSession, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openTestApi, type TestApi } from '../support/test-api.js';
import { loadRunFile } from '../support/run-files.js';
import { startBrowser } from './support/browser.js';
import { PAGES, shoot, signedIn } from './support/screens.js';

const browser: Browser | null = await startBrowser();

/** The chart of a run on a phone, with a finger: nothing of it is looked up in the table below. */
describe.skipIf(browser === null)('the tide chart under a finger', () => {
  let bench: TestApi;
  let page: Page;
  let touch: CDPSession;
  let complaints: string[];

  beforeAll(async () => {
    const file = loadRunFile('ok', 'plain-tiles');
    bench = await openTestApi('2026-11-27T17:30:00Z', file, PAGES);
    await bench.stock(file);
    const made = await bench.call('POST', '/api/runs', file.runs[0]);
    expect(made.status).toBe(201);
    const opened = await signedIn(browser!, bench, { width: 360, colorScheme: 'light' });
    ({ page, complaints } = opened);
    page.setDefaultTimeout(20_000);
    touch = await opened.context.newCDPSession(page);
    await page.goto(`/runs/${String(made.body.run.id)}`);
    await flag('Mix and pour the deep').first().waitFor();
  });

  afterAll(async () => {
    await browser?.close();
    await bench.close();
  });

  const flag = (title: string): Locator => page.locator('[data-mark]').filter({ hasText: title });

  it('shows a day at first, names what is done next, and explains itself in sight', async () => {
    const shown = await page.locator('.tide-flag-name').allTextContents();
    expect(shown).toContain('Mix and pour the deep-blue layer');
    expect(shown.join(' ')).not.toMatch(/Turn/);
    const dates = await page.locator('.tide-date').allTextContents();
    expect(dates.length).toBeLessThanOrEqual(2);
    const { width, height } = await boxOf(page.getByText(/^Each ribbon is a part/));
    expect(Math.min(width, height)).toBeGreaterThan(30);
    await shoot(page, 'tide-day-360');
  });

  it('has no name over another', async () => {
    for (const view of ['A day', 'The making', 'With the cure']) {
      await page.getByRole('button', { name: view }).click();
      const boxes = await Promise.all(
        (await page.locator('.tide-flag').all()).map((each) => each.boundingBox()),
      );
      const some = boxes.flatMap((box) => box ?? []);
      expect(some.length).toBeGreaterThan(2);
      some.forEach((a, i) => {
        for (const b of some.slice(i + 1)) {
          const apart =
            a.x + a.width <= b.x || b.x + b.width <= a.x || a.y + a.height <= b.y || b.y + b.height <= a.y;
          expect(apart, `${view}: ${JSON.stringify([a, b])}`).toBe(true);
        }
      });
    }
  });

  it('answers to a tap what the stage is, until when it can start, why then and what is at risk', async () => {
    await page.getByRole('button', { name: 'The making' }).click();
    await tap(flag('Patch holes and edges').locator('.tide-flag'));
    const card = page.getByRole('group', { name: 'Patch holes and edges' });
    const told = await card.innerText();
    expect(told).toMatch(/Last call\s+\w{3} \d+ \w{3}, \d\d:\d\d/);
    expect(told).toMatch(/soft enough to patch/);
    expect(told).toMatch(/It goes wrong here in about \d+ in 10+ runs/);
    await expectInSight(card);
    await shoot(page, 'tide-card-360');
    await card.getByRole('button', { name: 'Close' }).click();
  });

  it('moves in time with a swipe', async () => {
    await page.getByRole('button', { name: 'A day' }).click();
    const before = await page.locator('.tide-date').allTextContents();
    const box = await middleOf(page.locator('.tide-box'));
    // Where no flag is: on the days above the water.
    const head = { x: box.x + 120, y: (await topOf(page.locator('.tide-box'))) + 10 };
    await drag(head, { x: head.x - 240, y: head.y });
    await expect.poll(() => page.locator('.tide-date').allTextContents()).not.toEqual(before);
  });

  it('tries a stage where a finger drags it, with the odds there, and moves nothing until told', async () => {
    await page.getByRole('button', { name: 'The making' }).click();
    const turn = flag('Turn the tiles').locator('.tide-buoy');
    await turn.scrollIntoViewIfNeeded();
    const from = await middleOf(turn);
    await drag(from, { x: from.x - 40, y: from.y });
    await page.getByText(/^Odds here: about|^It cannot be there/).waitFor();
    await page.getByRole('button', { name: 'Leave it where it was' }).click();
    await page.getByText(/^Odds here/).waitFor({ state: 'hidden' });
    expect(complaints).toEqual([]);
  });

  async function tap(target: Locator): Promise<void> {
    await target.scrollIntoViewIfNeeded();
    const at = await middleOf(target);
    await touches('touchStart', at);
    await touches('touchEnd');
  }

  async function drag(from: Point, to: Point): Promise<void> {
    await touches('touchStart', from);
    const steps = 8;
    for (let i = 1; i <= steps; i++) {
      const share = i / steps;
      await touches('touchMove', {
        x: from.x + share * (to.x - from.x),
        y: from.y + share * (to.y - from.y),
      });
    }
    await touches('touchEnd');
  }

  async function touches(type: 'touchStart' | 'touchMove' | 'touchEnd', at?: Point): Promise<void> {
    await touch.send('Input.dispatchTouchEvent', { type, touchPoints: at === undefined ? [] : [at] });
  }
});

interface Point {
  readonly x: number;
  readonly y: number;
}

async function boxOf(target: Locator): Promise<{ x: number; y: number; width: number; height: number }> {
  const box = await target.boundingBox();
  if (box === null) throw new Error('it is not drawn');
  return box;
}

async function middleOf(target: Locator): Promise<Point> {
  const { x, y, width, height } = await boxOf(target);
  return { x: x + width / 2, y: y + height / 2 };
}

const topOf = async (target: Locator): Promise<number> => (await boxOf(target)).y;

/** At least its upper part is on the screen without scrolling, or scrolled to by what shows it. */
async function expectInSight(target: Locator): Promise<void> {
  await target.waitFor();
  const visible = await target.evaluate(
    (element) =>
      new Promise<number>((tell) => {
        new IntersectionObserver(([entry]) => tell(entry!.intersectionRatio)).observe(element);
      }),
  );
  expect(visible).toBeGreaterThan(0);
}

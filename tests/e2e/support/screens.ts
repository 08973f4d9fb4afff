import { mkdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Browser, BrowserContext, Locator, Page } from 'playwright-core';
import type { TestApi } from '../../support/test-api.js';

export const PAGES = fileURLToPath(new URL('../../../dist/web', import.meta.url));
const SHOTS = fileURLToPath(new URL('../../output/screens/', import.meta.url));

export interface Look {
  readonly width: 360 | 1280;
  readonly colorScheme: 'light' | 'dark';
}

/** A phone and a laptop, by day and by night. */
export const looks: readonly Look[] = ([360, 1280] as const).flatMap((width) =>
  (['light', 'dark'] as const).map((colorScheme) => ({ width, colorScheme })),
);

/** A browser of one's own, signed in with the bench's key; what breaks in its pages ends up in `complaints`. */
export async function signedIn(
  browser: Browser,
  bench: Pick<TestApi, 'url' | 'key'>,
  { width, colorScheme }: Look = { width: 1280, colorScheme: 'light' },
): Promise<{ readonly context: BrowserContext; readonly page: Page; readonly complaints: string[] }> {
  const context = await browser.newContext({
    baseURL: bench.url,
    viewport: { width, height: width === 360 ? 740 : 900 },
    colorScheme,
    locale: 'en-GB',
    timezoneId: 'Europe/Dublin',
    hasTouch: width === 360,
  });
  const answer = await context.request.post('/api/session', { data: { key: bench.key } });
  if (!answer.ok()) throw new Error(`could not sign in: ${await answer.text()}`);
  const page = await context.newPage();
  const complaints: string[] = [];
  page.on('pageerror', (error) => complaints.push(String(error)));
  page.on('console', (message) => {
    if (message.type() === 'error') complaints.push(message.text());
  });
  return { context, page, complaints };
}

/** Writes a picture of the whole page, or of a piece of it, where git does not look. */
export async function shoot(shown: Page | Locator, name: string): Promise<void> {
  mkdirSync(SHOTS, { recursive: true });
  const path = `${SHOTS}${name}.png`;
  await ('goto' in shown ? shown.screenshot({ path, fullPage: true }) : shown.screenshot({ path }));
}

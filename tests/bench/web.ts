import type { Page } from 'playwright-core';
import { startBrowser } from '../e2e/support/browser.js';
import { atMost, median, type Figure } from '../support/figure.js';
import { freePort } from '../support/free-port.js';
import { accessKey, newHome, removeHome, startProgram } from '../support/program.js';

/** How many times slower than this machine the phone is taken to be. */
const CPU_THROTTLING = 4;
const ROUNDS = 5;
const screens = ['/', '/runs', '/plan', '/makings', '/shelf', '/hours', '/lessons', '/settings'];

/**
 * How soon the largest thing on each screen is there and how much moves about meanwhile, on a phone that is slow
 * (https://web.dev/articles/lcp, https://web.dev/articles/cls). Each load is a first one, with nothing cached.
 */
export async function figures(): Promise<Figure[]> {
  const browser = await startBrowser();
  if (browser === null) throw new Error('This bench needs a Chromium on the PATH.');
  const home = newHome();
  const program = await startProgram(home, await freePort());
  try {
    const figures: Figure[] = [];
    const authorization = `Bearer ${accessKey(home)}`;
    const demo = await openDemo(program.url, authorization);
    const run = await firstRun(program.url, { authorization, 'benchtide-workshop': demo });
    const paths = [...screens, `/runs/${run}`];
    for (const path of paths) {
      const loads: Load[] = [];
      for (let round = 0; round < ROUNDS; round++) {
        const context = await browser.newContext({
          baseURL: program.url,
          viewport: { width: 360, height: 740 },
          serviceWorkers: 'block',
        });
        await context.request.post('/api/session', { data: { key: accessKey(home) } });
        await context.addInitScript(`localStorage.setItem('benchtide.workshop', ${JSON.stringify(demo)})`);
        loads.push(await load(await context.newPage(), path));
        await context.close();
      }
      const of = `${path.replace(/[^/]{36}$/, 'one')}, ${CPU_THROTTLING} times slower`;
      figures.push(
        atMost(
          `largest contentful paint, median, ${of}`,
          median(loads.map((l) => l.paintMs)) / 1000,
          's',
          1.5,
        ),
        atMost(`layout shift, most of ${ROUNDS}, ${of}`, Math.max(...loads.map((l) => l.shift)), '', 0.05),
      );
    }
    return figures;
  } finally {
    program.child.kill('SIGTERM');
    await program.ended;
    await browser.close();
    removeHome(home);
  }
}

/** @returns its id */
async function openDemo(url: string, authorization: string): Promise<string> {
  const answer = await fetch(`${url}/api/demo`, { method: 'POST', headers: { authorization } });
  return ((await answer.json()) as { readonly id: string }).id;
}

/** Id of a run of the demo workshop that is planned. */
async function firstRun(url: string, headers: Readonly<Record<string, string>>): Promise<string> {
  const answer = await fetch(`${url}/api/runs`, { headers });
  const runs = (await answer.json()) as readonly { readonly id: string; readonly state: string }[];
  const planned = runs.find(({ state }) => state === 'planned');
  if (planned === undefined) throw new Error('the demo workshop has no planned run');
  return planned.id;
}

interface Load {
  readonly paintMs: number;
  readonly shift: number;
}

async function load(page: Page, path: string): Promise<Load> {
  const protocol = await page.context().newCDPSession(page);
  await protocol.send('Emulation.setCPUThrottlingRate', { rate: CPU_THROTTLING });
  await page.addInitScript({ content: OBSERVER });
  await page.goto(path);
  await page.getByRole('heading', { level: 1 }).waitFor();
  await page.getByText('Fetching …').first().waitFor({ state: 'hidden' });
  // What comes late counts too.
  await page.waitForTimeout(1500);
  return page.evaluate(() => (globalThis as unknown as { seen: Load }).seen);
}

/** Runs in the page, before anything of it. */
const OBSERVER = `
  globalThis.seen = { paintMs: 0, shift: 0 };
  new PerformanceObserver((list) => {
    for (const entry of list.getEntries()) seen.paintMs = entry.startTime;
  }).observe({ type: 'largest-contentful-paint', buffered: true });
  new PerformanceObserver((list) => {
    for (const entry of list.getEntries()) if (!entry.hadRecentInput) seen.shift += entry.value;
  }).observe({ type: 'layout-shift', buffered: true });
`;

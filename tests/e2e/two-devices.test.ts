import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { CreatedRun } from '#contract';
import { en } from '../../apps/web/words/en/index.js';
import { loadRunFile } from '../support/run-files.js';
import { openTestApi, type TestApi } from '../support/test-api.js';
import { startBrowser } from './support/browser.js';
import { PAGES, signedIn } from './support/screens.js';

const browser: Browser | null = await startBrowser();
const file = loadRunFile('ok', 'plain-tiles');
const { run: words } = en;

describe.skipIf(browser === null)('two devices', { timeout: 60_000 }, () => {
  let bench: TestApi;
  let second: Awaited<ReturnType<TestApi['another']>>;
  let id: string;
  let phone: Page;
  let laptop: Page;

  beforeAll(async () => {
    bench = await openTestApi('2026-11-27T19:00:00Z', file, PAGES);
    const [order] = await bench.stock(file);
    const made = await bench.call('POST', '/api/runs', { ...order, readyBy: undefined });
    id = (made.body as CreatedRun).run.id;
    second = await bench.another();
    phone = (await signedIn(browser!, bench, { width: 360, colorScheme: 'light' })).page;
    // The laptop asks another process over the same database.
    laptop = (await signedIn(browser!, { url: second.url, key: bench.key })).page;
    for (const page of [phone, laptop]) {
      await page.goto(`/runs/${id}/log`);
      await page.getByRole('heading', { name: words.log.title }).waitFor();
    }
    await laptop.getByText(words.log.none).waitFor();
  });
  afterAll(async () => {
    await browser?.close();
    await second.close();
    await bench.close();
  });

  it('show each other what was logged without being asked, whichever process wrote it', async () => {
    const title = file.designs[0]!.stages.find(({ key }) => key === 'pour-deep')!.title;
    const entry = { kind: 'done', stage: 'pour-deep', at: '2026-11-27T18:40:00Z' };
    expect((await bench.call('POST', `/api/runs/${id}/log`, entry)).status).toBe(201);
    const begun = performance.now();
    const line = words.log.entries.done(title);
    await Promise.all(
      [phone, laptop].map((page) => page.getByText(line).first().waitFor({ timeout: 10_000 })),
    );
    console.info(`Shown on both ${String(Math.round(performance.now() - begun))} ms after it was stored.`);
  });

  it('show on one what is written by a tap on the other', async () => {
    await phone.getByRole('button', { name: /^Write a note: Rockpool/ }).click();
    await phone.getByLabel('Note', { exact: true }).fill('Seen on the laptop');
    await phone.getByRole('button', { name: 'Keep the note' }).click();
    await laptop.getByText('Seen on the laptop').waitFor({ timeout: 10_000 });
    await laptop.getByRole('button', { name: /^Take it back: Seen on the laptop/ }).click();
    await laptop.getByRole('button', { name: 'Take it back', exact: true }).last().click();
    await phone.getByText('taken back').first().waitFor({ timeout: 10_000 });
  });

  it('tell why what was logged without a connection was not taken, until that was read', async () => {
    const stage = file.designs[0]!.stages.find(({ key }) => key === 'press-shells')!;
    const entry = { kind: 'done', stage: stage.key, at: '2026-11-27T18:55:00Z' };
    expect((await bench.call('POST', `/api/runs/${id}/log`, entry)).status).toBe(201);
    // As it was kept on the phone while that had no connection.
    await phone.evaluate(keepInQueue, { id: crypto.randomUUID(), runId: id, entry });
    await phone.goto(`/runs/${id}/log`);
    const told = phone.getByText(/was not taken\. .* already done/);
    await told.waitFor({ timeout: 20_000 });
    await phone.getByRole('button', { name: en.offline.wasRead }).click();
    await told.waitFor({ state: 'detached' });
    await phone.getByText(en.offline.refused(1)).waitFor({ state: 'detached' });
  });
});

/** Puts an entry where pages keep what waits to be sent. Runs in the page. */
async function keepInQueue(queued: object): Promise<void> {
  const database = await new Promise<IDBDatabase>((resolve, reject) => {
    const opening = indexedDB.open('benchtide');
    opening.onsuccess = () => resolve(opening.result);
    opening.onerror = () => reject(opening.error!);
  });
  await new Promise<void>((resolve) => {
    const writing = database.transaction('log-queue', 'readwrite');
    writing.objectStore('log-queue').add(queued);
    writing.oncomplete = () => resolve();
  });
  database.close();
}

import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { CreatedRun, LoggedView } from '#contract';
import { en } from '../../apps/web/words/en/index.js';
import { notes } from '../../apps/web/words/en/notes.js';
import { loadRunFile } from '../support/run-files.js';
import { withExif } from '../support/small-jpeg.js';
import { openTestApi, type TestApi } from '../support/test-api.js';
import { seriousFaults } from './support/accessibility.js';
import { startBrowser } from './support/browser.js';
import { PAGES, shoot } from './support/screens.js';

/** Not localhost, so that pages have no secure context, as on a phone at home. */
const HOST = 'bench.test';
const browser: Browser | null = await startBrowser(HOST);
const file = loadRunFile('ok', 'plain-tiles');
const WORDS = 'Swirled twice. Pretty.';

describe.skipIf(browser === null)('notes with photos, over plain http', { timeout: 90_000 }, () => {
  let bench: TestApi;
  let context: BrowserContext;
  let page: Page;
  let id: string;

  beforeAll(async () => {
    bench = await openTestApi('2026-11-27T19:00:00Z', file, PAGES, { anyHost: true });
    const [order] = await bench.stock(file);
    const made = await bench.call('POST', '/api/runs', { ...order, readyBy: undefined });
    id = (made.body as CreatedRun).run.id;
    await bench.call('POST', `/api/runs/${id}/log`, {
      kind: 'done',
      stage: 'pour-deep',
      at: '2026-11-27T18:40:00Z',
    });
    context = await browser!.newContext({
      baseURL: bench.url.replace('127.0.0.1', HOST),
      viewport: { width: 360, height: 780 },
      locale: 'en-GB',
    });
    context.setDefaultTimeout(20_000);
    page = await context.newPage();
    const { code } = await bench.storage.signInCodes.create(bench.workshopId);
    await page.goto(`/#sign-in=${code}`);
    await page.getByRole('heading', { level: 1, name: en.shell.now }).waitFor();
  });
  afterAll(async () => {
    await browser?.close();
    await bench.close();
  });

  const logged = async (): Promise<LoggedView[]> => (await bench.call('GET', `/api/runs/${id}/log`)).body;
  const step = (title: string) => page.getByRole('listitem').filter({ hasText: title }).first();

  it('are written at a stage of the bench sheet, the photo shrunk and without its place', async () => {
    await page.goto(`/runs/${id}/sheet`);
    const stage = file.designs[0]!.stages.find(({ key }) => key === 'pour-sand')!.title;
    await page.getByRole('button', { name: notes.writeAt(stage) }).click();
    await page.getByRole('button', { name: notes.keep }).click();
    await page.getByText(notes.empty).waitFor();
    await page.getByLabel(notes.note, { exact: true }).fill(WORDS);
    await page.getByLabel(notes.choosePhoto).setInputFiles({
      name: 'page.jpg',
      mimeType: 'image/jpeg',
      buffer: Buffer.from('<html>no picture</html>'),
    });
    await page.getByText(notes.unreadable('page.jpg')).waitFor();
    const taken = Buffer.from(await page.evaluate(drawLarge), 'base64');
    await page.getByLabel(notes.choosePhoto).setInputFiles({
      name: 'taken.jpg',
      mimeType: 'image/jpeg',
      buffer: withExif(taken, 'GPS 53.3498 N'),
    });
    await page.getByLabel(notes.alt).fill('Blue and sand, swirled');
    await shoot(page, 'note-form');
    await page.getByRole('button', { name: notes.keep }).click();
    await page.getByText(notes.kept).waitFor();
    await step(stage).getByText(WORDS).waitFor();
    const picture = page.getByRole('img', { name: 'Blue and sand, swirled' });
    await expect.poll(() => picture.evaluate((img: HTMLImageElement) => img.naturalWidth)).toBe(1600);
    const [photo] = (await bench.call('GET', `/api/runs/${id}/photos`)).body;
    expect(photo).toMatchObject({ width: 1600, height: 1067 });
    expect(photo.size).toBeLessThan(700_000);
    const bytes = await bench.storage.photos.bytes(bench.workshopId, photo.id);
    expect(bytes?.includes('Exif')).toBe(false);
    expect(await seriousFaults(page)).toEqual([]);
  });

  it('show a photo large, by keys, and give the focus back', async () => {
    const small = page.getByRole('button', { name: notes.large('Blue and sand, swirled') });
    await small.focus();
    await page.keyboard.press('Enter');
    const dialog = page.getByRole('dialog', { name: 'Blue and sand, swirled' });
    await dialog.getByRole('img').waitFor();
    await page.keyboard.press('Escape');
    await dialog.waitFor({ state: 'detached' });
    expect(await small.evaluate((button) => button === document.activeElement)).toBe(true);
  });

  it('are written about an entry of the log, corrected and taken back', async () => {
    await page.goto(`/runs/${id}/log`);
    const done = page.getByRole('listitem').filter({ hasText: 'done' }).last();
    await done.getByRole('button', { name: new RegExp(`^${notes.write}:`) }).click();
    await page.getByLabel(notes.note, { exact: true }).fill('A litle thick');
    await page.getByRole('button', { name: notes.keep }).click();
    await done.getByText('A litle thick').waitFor();
    await page.getByRole('button', { name: notes.correctThis('A litle thick') }).click();
    await page.getByLabel(notes.note, { exact: true }).fill('A little thick');
    await page.getByRole('button', { name: notes.keep }).click();
    await done.getByText('A little thick').waitFor();
    // It may still stand in the field, on its way.
    await expect.poll(async () => (await logged()).at(-1)?.entry.note).toBe('A little thick');
    const entries = await logged();
    expect(entries.at(-1)?.entry).toMatchObject({ about: entries[0]?.id });
    await shoot(page, 'log-notes');
    await page.getByRole('button', { name: notes.takeBackThis('A little thick') }).click();
    await page.getByRole('button', { name: notes.takeBackYes, exact: true }).click();
    await done.getByText('A little thick').waitFor({ state: 'detached' });
    await expect.poll(async () => (await logged()).at(-1)?.entry.kind).toBe('take-back');
  });

  it('wait on this device without a connection, photo and all, and are sent by themselves', async () => {
    await page.goto(`/runs/${id}/sheet`);
    await page
      .getByRole('button', { name: new RegExp(`^${notes.write}: `) })
      .first()
      .waitFor();
    const before = (await logged()).length;
    await context.setOffline(true);
    await page
      .getByRole('button', { name: new RegExp(`^${notes.write}: `) })
      .first()
      .click();
    await page.getByLabel(notes.note, { exact: true }).fill('Without a network');
    await page.getByLabel(notes.choosePhoto).setInputFiles({
      name: 'taken.jpg',
      mimeType: 'image/jpeg',
      buffer: Buffer.from(await page.evaluate(drawLarge), 'base64'),
    });
    await page.getByLabel(notes.alt).waitFor();
    await page.getByRole('button', { name: notes.keep }).click();
    await page.getByText(notes.waiting).waitFor();
    await page.getByText(notes.waits).waitFor();
    expect((await logged()).length).toBe(before);
    await context.setOffline(false);
    await expect.poll(async () => (await logged()).length, { timeout: 40_000 }).toBe(before + 1);
    const last = (await logged()).at(-1)?.entry;
    expect(last).toMatchObject({ kind: 'note', note: 'Without a network', photos: [{}] });
    await page.getByText(notes.waits).waitFor({ state: 'detached' });
  });
});

/** A picture as large as a camera takes it, in base64. Runs in the page. */
function drawLarge(): string {
  const canvas = document.createElement('canvas');
  [canvas.width, canvas.height] = [3000, 2000];
  const context = canvas.getContext('2d')!;
  const colours = context.createLinearGradient(0, 0, 3000, 2000);
  colours.addColorStop(0, '#123a5c');
  colours.addColorStop(1, '#e5c79a');
  context.fillStyle = colours;
  context.fillRect(0, 0, 3000, 2000);
  return canvas.toDataURL('image/jpeg', 0.9).split(',')[1]!;
}

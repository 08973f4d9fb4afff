import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { photoLimits, type CreatedRun } from '#contract';
import { loadRunFile } from '../support/run-files.js';
import { jpegOf, smallJpeg, withExif } from '../support/small-jpeg.js';
import { openTestApi, type TestApi } from '../support/test-api.js';

const file = loadRunFile('ok', 'plain-tiles');
const at = '2026-11-27T18:40:00Z';
let bench: TestApi;
let id: string;
let other: string;

beforeAll(async () => {
  bench = await openTestApi('2026-11-27T19:00:00Z', file);
  const [order] = await bench.stock(file);
  const made = async (key: string): Promise<string> =>
    ((await bench.call('POST', '/api/runs', { ...order, key, readyBy: undefined })).body as CreatedRun).run
      .id;
  [id, other] = [await made('one'), await made('two')];
});
afterAll(() => bench.close());

const send = (bytes: Buffer, photo: string = randomUUID(), run = id) =>
  bench.call('POST', `/api/runs/${run}/photos`, { id: photo, data: bytes.toString('base64') });
const get = (photo: string, headers: Record<string, string> = {}) =>
  fetch(`${bench.url}/api/photos/${photo}`, {
    headers: { authorization: `Bearer ${bench.key}`, ...headers },
  });
const note = (photos: object[], run = id) =>
  bench.call('POST', `/api/runs/${run}/log`, { kind: 'note', photos, at });

describe('a photo', () => {
  it('is kept without what it says of the place, and shown as a JPEG to nobody else', async () => {
    const photo = randomUUID();
    const sent = await send(withExif(smallJpeg, 'GPS 53.3498 N'), photo);
    expect(sent.status, JSON.stringify(sent.body)).toBe(201);
    expect(sent.body).toMatchObject({ id: photo, width: 16, height: 8, size: smallJpeg.length });
    const shown = await get(photo);
    expect(Object.fromEntries(shown.headers)).toMatchObject({
      'content-type': 'image/jpeg',
      'cache-control': 'private, no-cache',
      'x-content-type-options': 'nosniff',
      'cross-origin-resource-policy': 'same-origin',
    });
    expect(Buffer.from(await shown.arrayBuffer()).equals(smallJpeg)).toBe(true);
    expect((await fetch(`${bench.url}/api/photos/${photo}`)).status).toBe(401);
    expect((await get(photo, { 'if-none-match': shown.headers.get('etag') ?? '' })).status).toBe(304);
    expect((await bench.call('GET', `/api/runs/${id}/photos`)).body).toMatchObject([{ id: photo }]);
  });

  it('is kept once, however often it is sent, and never changes', async () => {
    const photo = randomUUID();
    const first = await send(smallJpeg, photo);
    const before = await bench.count('photo');
    expect((await send(smallJpeg, photo)).body).toEqual(first.body);
    expect(await bench.count('photo')).toBe(before);
    const changed = await send(jpegOf(2000), photo);
    expect(changed.body.issues).toMatchObject([{ code: 'photo.id-taken', path: 'id' }]);
    expect((await send(smallJpeg, photo, other)).status).toBe(422);
  });

  it.each([
    ['a drawing with a script in it', Buffer.from('<svg xmlns="http://www.w3.org/2000/svg"><script/></svg>')],
    ['a page', Buffer.from('<!doctype html><script>alert(1)</script>')],
  ])('that is really %s is refused, whatever it is called', async (_, bytes) => {
    const before = await bench.count('photo');
    const { status, body } = await send(bytes);
    expect(status).toBe(422);
    expect(body.issues).toMatchObject([{ code: 'photo.no-jpeg', path: 'data', accepted: 'a JPEG picture' }]);
    expect(JSON.stringify(body).length).toBeLessThan(2000);
    expect(await bench.count('photo')).toBe(before);
  });

  it('is refused over the most bytes, and over the most that is read at all', async () => {
    expect((await send(jpegOf(photoLimits.bytes))).status).toBe(201);
    const over = await send(jpegOf(photoLimits.bytes + 3));
    expect(over.status).toBe(422);
    expect(over.body.issues).toMatchObject([{ code: 'input.too-big', path: 'data' }]);
    expect((await send(jpegOf(3_000_000))).status).toBe(413);
  });

  it('finds no room in a run that has as much of them as a run may have', async () => {
    const fill = photoLimits.runBytes - photoLimits.bytes * 20;
    await bench.sql(
      `INSERT INTO photo (id, workshop_id, run_id, kept_at, width, height, size, bytes)
       SELECT gen_random_uuid(), '${bench.workshopId}', '${other}', '2026-11-27T18:55:00Z', 1, 1, s, decode(repeat('00', s), 'hex')
       FROM (SELECT ${String(photoLimits.bytes)} AS s FROM generate_series(1, 20) UNION ALL SELECT ${String(fill)}) sizes`,
    );
    const full = await send(smallJpeg, randomUUID(), other);
    expect(full.body.issues).toMatchObject([
      { code: 'photo.no-room', path: 'data', data: { of: 'run', mostMb: 40 } },
    ]);
    // Sent for notes that never came, they make room for others.
    bench.clock.advance(61);
    expect((await send(smallJpeg, randomUUID(), other)).status).toBe(201);
  });

  it('of another workshop is not there, nor is its run', async () => {
    const photo = randomUUID();
    await send(smallJpeg, photo);
    const demo = { 'benchtide-workshop': (await bench.call('POST', '/api/demo')).body.id as string };
    expect((await get(photo, demo)).status).toBe(404);
    const foreign = { id: randomUUID(), data: smallJpeg.toString('base64') };
    expect((await bench.call('POST', `/api/runs/${id}/photos`, foreign, demo)).status).toBe(404);
    // Ids are chosen by who sends them: the same one in two workshops is two photos.
    const [run] = (await bench.call('GET', '/api/runs', undefined, demo)).body;
    const own = await bench.call('POST', `/api/runs/${run.id}/photos`, { ...foreign, id: photo }, demo);
    expect(own.status).toBe(201);
    const before = await bench.count('photo');
    expect((await bench.call('DELETE', '/api/demo')).status).toBe(204);
    expect(await bench.count('photo')).toBe(before - 1);
    expect((await get(photo)).status).toBe(200);
  });
});

describe('a note with photos', () => {
  it('needs no words, and shows photos of its own run only', async () => {
    const [here, elsewhere] = [randomUUID(), randomUUID()];
    await send(smallJpeg, here);
    await send(smallJpeg, elsewhere, other);
    const answer = await note([{ photo: here, alt: 'A crack along the edge' }]);
    expect(answer.status, JSON.stringify(answer.body)).toBe(201);
    expect(answer.body.entry.entry.photos).toEqual([{ photo: here, alt: 'A crack along the edge' }]);
    const wrong = await note([{ photo: here }, { photo: elsewhere }]);
    expect(wrong.body.issues).toMatchObject([{ code: 'photo.unknown', path: 'photos[1].photo' }]);
    expect((await note(Array.from({ length: 7 }, () => ({ photo: here })))).status).toBe(422);
  });
});

import { afterAll, beforeAll, expect, it } from 'vitest';
import { loadRunFile } from '../support/run-files.js';
import { openTestApi, type TestApi } from '../support/test-api.js';

let bench: TestApi;
beforeAll(async () => {
  bench = await openTestApi('2026-11-27T12:00:00Z');
});
afterAll(() => bench.close());

it('answers 507 with a sentence when the database’s disk is full, and health says so until it works again', async () => {
  // What PostgreSQL raises when a file cannot grow (appendix A "Error Codes": 53100, disk_full).
  await bench.sql(`CREATE FUNCTION no_space() RETURNS trigger LANGUAGE plpgsql AS $$
    BEGIN RAISE EXCEPTION 'could not extend file "base/5/16384"' USING ERRCODE = 'disk_full'; END $$`);
  await bench.sql('CREATE TRIGGER full_disk BEFORE INSERT ON mould FOR EACH ROW EXECUTE FUNCTION no_space()');
  const mould = { key: 'cup', title: 'Cups', kind: 'silicone-cavity', cavityMl: 80, cavities: 12 };
  const refused = await bench.call('POST', '/api/moulds', mould);
  expect([refused.status, refused.headers.get('retry-after')]).toEqual([507, '60']);
  expect(refused.body).toMatchObject({
    type: 'urn:benchtide:problem:disk-full',
    detail: 'The disk of the database is full, so nothing was stored. Free some space there, then try again.',
  });
  const health = async () => bench.call('GET', '/api/health');
  expect(await health()).toMatchObject({
    status: 503,
    body: {
      disk: 'full',
      database: 'up',
      trouble: ['The disk of the database is full: nothing more can be stored.'],
    },
  });

  await bench.sql('DROP TRIGGER full_disk ON mould');
  const { earlier: _past, ...file } = loadRunFile('ok', 'two-layer');
  // What stores nothing says nothing of the disk.
  expect((await bench.call('POST', '/api/plan-preview', file)).status).toBe(200);
  expect((await health()).status).toBe(503);
  expect((await bench.call('POST', '/api/moulds', mould)).status).toBe(201);
  expect(await health()).toMatchObject({ status: 200, body: { disk: 'unknown', trouble: [] } });
});

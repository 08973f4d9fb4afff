import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Recipe } from '#contract';
import { loadRunFile } from '../support/run-files.js';
import { openTestApi, type Answer, type TestApi } from '../support/test-api.js';

const file = loadRunFile('ok', 'two-layer');
const [recipe] = file.recipes as [Recipe];
const [design] = file.designs;
const [order] = file.runs;
let bench: TestApi;

beforeAll(async () => {
  bench = await openTestApi('2026-11-27T17:00:00Z');
  await bench.stock(file);
});
afterAll(() => bench.close());

function expectProblem(answer: Answer, status: number, slug: string): void {
  expect(answer.status).toBe(status);
  expect(answer.headers.get('content-type')).toMatch(/^application\/problem\+json/);
  expect(answer.body).toMatchObject({ type: `urn:benchtide:problem:${slug}`, status });
  expect(JSON.stringify(answer.body)).not.toMatch(/\bat .*\.(js|ts):\d/);
}

describe('bad input: field, value and what is accepted; nothing is stored', () => {
  const cases: [what: string, path: string, body: unknown, table: string, issue: Record<string, unknown>][] =
    [
      [
        'a negative share',
        '/api/recipes',
        { ...recipe, key: 'bad', fats: [{ fat: 'olive', percent: -5 }] },
        'recipe',
        { path: 'fats[0].percent', value: -5, accepted: '0.01% to 100%' },
      ],
      [
        'an unknown fat',
        '/api/recipes',
        { ...recipe, key: 'bad', fats: [{ fat: 'unobtainium', percent: 100 }] },
        'recipe',
        { path: 'fats[0].fat', value: 'unobtainium' },
      ],
      [
        'a lye concentration of 60 %',
        '/api/recipes',
        { ...recipe, key: 'bad', lyeConcentrationPercent: 60 },
        'recipe',
        { path: 'lyeConcentrationPercent', value: 60, accepted: '20% to 50%' },
      ],
      [
        'links in a circle',
        '/api/designs',
        { ...design, key: 'bad', links: [...(design?.links ?? []), { from: 'turn', to: 'pour-under' }] },
        'piece_design',
        {
          path: 'links[1].to',
          value: 'pour-under',
          code: 'design.circular-links',
        },
      ],
      [
        'an unknown design',
        '/api/runs',
        { ...order, key: 'bad', design: 'teapot' },
        'run',
        { path: 'design', value: 'teapot', accepted: 'cup-soap', field: 'Design' },
      ],
      [
        'a field nobody knows',
        '/api/moulds',
        { ...file.moulds[0], key: 'bad', colour: 'red' },
        'mould',
        { path: 'colour', value: 'red' },
      ],
      [
        'text that no database keeps',
        '/api/moulds',
        { ...file.moulds[0], key: 'bad', title: 'a\u0000b' },
        'mould',
        { path: 'title', code: 'input.unstorable-text' },
      ],
    ];

  it.each(cases)('%s', async (_what, path, body, table, issue) => {
    const before = await bench.count(table);
    const answer = await bench.call('POST', path, body);
    expectProblem(answer, 422, 'invalid-input');
    expect(answer.body.issues).toMatchObject([issue]);
    expect(answer.body.issues[0].message.length).toBeGreaterThan(10);
    expect(await bench.count(table)).toBe(before);
  });

  it('hours that never open', async () => {
    const { body } = await bench.call('GET', '/api/workshop');
    const weekly = Object.fromEntries(Object.keys(body.facts.hours.weekly).map((day) => [day, []]));
    const facts = { ...body.facts, hours: { ...body.facts.hours, weekly } };
    const answer = await bench.call('PUT', '/api/workshop', { version: body.version, facts });
    expectProblem(answer, 422, 'invalid-input');
    expect(answer.body.issues).toMatchObject([
      { path: 'facts.hours.weekly', code: 'hours.never-open', field: 'Your week' },
    ]);
    expect((await bench.call('GET', '/api/workshop')).body).toEqual(body);
  });

  it('JSON that is none, bodies that are too large, routes that do not exist', async () => {
    expectProblem(await bench.call('POST', '/api/moulds', '{"key":'), 400, 'malformed');
    const large = await bench.call('POST', '/api/moulds', { title: 'x'.repeat(1_100_000) });
    expectProblem(large, 413, 'too-large');
    expect(large.body.detail).toBe('At most 256 kB are read here.');
    expectProblem(await bench.call('GET', '/api/teapots'), 404, 'not-found');
    expectProblem(await bench.call('GET', '/api/runs/no-uuid'), 422, 'invalid-input');
    expectProblem(
      await bench.call('GET', '/api/runs/01890000-0000-7000-8000-000000000000'),
      404,
      'not-found',
    );
  });
});

describe('what is made to be too much', () => {
  const nested = (depth: number): string => `${'['.repeat(depth)}${']'.repeat(depth)}`;
  const open = { authorization: '' };
  const fields = (many: number) =>
    Object.fromEntries(Array.from({ length: many }, (_, i) => [`f${String(i)}`, 0]));

  it('lists in lists without end', async () => {
    for (const [path, body] of [
      ['/api/moulds', nested(50_000)],
      ['/api/plan-preview', `{"workshop":${nested(50_000)}}`],
      ['/api/session', nested(900)],
    ] as const) {
      const answer = await bench.call('POST', path, body);
      expectProblem(answer, 422, 'invalid-input');
      expect(answer.body.issues).toMatchObject([{ code: 'input.too-deep' }]);
      expect(JSON.stringify(answer.body).length).toBeLessThan(2000);
    }
  });

  it('more at the door than anyone needs to come in', async () => {
    expectProblem(await bench.call('POST', '/api/session', fields(60_000), open), 413, 'too-large');
    const many = await bench.call('POST', '/api/session', fields(120), open);
    expectProblem(many, 422, 'invalid-input');
    expect(many.body.issues).toHaveLength(50);
    // 120 fields that are not known, and neither a code nor a key.
    expect(many.body.moreIssues).toBe(71);
  });

  it('more values and more issues than anyone reads', async () => {
    const numbers = await bench.call('POST', '/api/plan-preview', `[${'0,'.repeat(400_000)}0]`);
    expectProblem(numbers, 422, 'invalid-input');
    expect(numbers.body.issues).toMatchObject([{ code: 'input.too-many-values' }]);
    const answer = await bench.call('POST', '/api/recipes', { ...recipe, ...fields(9000) });
    expectProblem(answer, 422, 'invalid-input');
    expect(answer.body.issues).toHaveLength(50);
    expect(answer.body.moreIssues).toBe(8950);
    const long = await bench.call('POST', '/api/recipes', { ...recipe, title: 'x'.repeat(200_000) });
    expect(JSON.stringify([answer.body, long.body]).length).toBeLessThan(20_000);
  });

  it('versions that no column holds, and another type than JSON', async () => {
    const [mould] = (await bench.call('GET', '/api/moulds')).body;
    const put = await bench.call('PUT', `/api/moulds/${mould.id}`, {
      version: 8_283_820_753_158_143,
      content: mould.content,
    });
    expectProblem(put, 422, 'invalid-input');
    expect(put.body.issues).toMatchObject([{ path: 'version', accepted: 'at most 2,147,483,647' }]);
    const away = await bench.call('DELETE', `/api/moulds/${mould.id}?version=2147483648`);
    expectProblem(away, 422, 'invalid-input');
    const plain = { 'content-type': 'text/plain' };
    const typed = await bench.call('POST', '/api/moulds', '{}', plain);
    expectProblem(typed, 415, 'unsupported-media-type');
    const charset = { 'content-type': 'application/json; charset=latin1' };
    expectProblem(await bench.call('POST', '/api/moulds', '{}', charset), 415, 'unsupported-media-type');
  });

  it('shows what steers a terminal, and keeps none of it in what is read', async () => {
    const odd = await bench.call('POST', '/api/moulds', {
      ...file.moulds[0],
      key: 'odd',
      'a\u001b[2J\u202eb': 1,
    });
    expect(odd.body.issues[0].message).toBe('There is no field “a\\u001b[2J\\u202eb” here.');
    const title = 'Tray\u202e for\n two';
    const kept = await bench.call('POST', '/api/moulds', { ...file.moulds[0], key: 'odd', title });
    expect(kept.body.content.title).toBe('Tray for  two');
  });
});

describe('what was logged', () => {
  it('is kept even when the plan no longer makes sense, and equipment in use stays', async () => {
    const made = await bench.call('POST', '/api/runs', {
      ...order,
      key: 'kept',
      startAfter: '2026-11-27T17:00',
    });
    const path = `/api/runs/${made.body.run.id}/log`;
    const { body } = await bench.call('GET', '/api/workshop');
    const bare = { ...body.facts, equipment: [] };
    expectProblem(
      await bench.call('PUT', '/api/workshop', { version: body.version, facts: bare }),
      409,
      'in-use',
    );

    // Past the API, as another version of the program might have left it.
    await bench.storage.workshops.update(bench.workshopId, body.version, bare);
    const waiting = (await bench.call('GET', `/api/nudges?status=waiting&run=${made.body.run.id}`)).body;
    const answer = await bench.call('POST', path, {
      kind: 'done',
      stage: 'pour-under',
      at: '2026-11-27T17:00:00Z',
    });
    expect([answer.status, answer.body.plan.status]).toEqual([201, 'conflict']);
    expect(answer.body.plan.document.conflict[0].text).toContain('tray');
    expect((await bench.call('GET', path)).body).toHaveLength(1);
    const after = (await bench.call('GET', `/api/nudges?status=waiting&run=${made.body.run.id}`)).body;
    expect(after.length).toBeGreaterThan(0);
    expect(after.length).toBeLessThanOrEqual(waiting.length);
    await bench.storage.workshops.update(bench.workshopId, body.version + 1, body.facts);
  });

  it('cannot be of another age', async () => {
    const [run] = (await bench.call('GET', '/api/runs')).body;
    const old = { kind: 'done', stage: 'pour-under', at: '2026-09-01T00:00:00Z' };
    const answer = await bench.call('POST', `/api/runs/${run.id}/log`, old);
    expectProblem(answer, 422, 'invalid-input');
    expect(answer.body.issues).toMatchObject([{ code: 'log.long-ago', path: 'at' }]);
    expectProblem(
      await bench.call('POST', '/api/runs', { ...order, key: 'far', startAfter: '2126-01-01T18:00' }),
      422,
      'invalid-input',
    );
  });
});

describe('two devices', () => {
  it('cannot overwrite each other unseen', async () => {
    const [mould] = (await bench.call('GET', '/api/moulds')).body;
    const put = (cavities: number) =>
      bench.call('PUT', `/api/moulds/${mould.id}`, {
        version: mould.version,
        content: { ...mould.content, cavities },
      });
    expect((await put(14)).body).toMatchObject({ version: mould.version + 1, content: { cavities: 14 } });
    const late = await put(20);
    expectProblem(late, 409, 'stale-version');
    expect(late.body.current).toMatchObject({ version: mould.version + 1, content: { cavities: 14 } });
  });

  it('cannot take a key twice, change one, or remove what is in use', async () => {
    expectProblem(await bench.call('POST', '/api/recipes', recipe), 409, 'key-taken');
    const [stored] = (await bench.call('GET', '/api/recipes')).body;
    const renamed = { version: stored.version, content: { ...stored.content, key: 'other' } };
    expectProblem(await bench.call('PUT', `/api/recipes/${stored.id}`, renamed), 422, 'invalid-input');
    expectProblem(
      await bench.call('DELETE', `/api/recipes/${stored.id}?version=${stored.version}`),
      409,
      'in-use',
    );
  });
});

describe('the door', () => {
  const without = { authorization: '' };

  it('opens for a key, and for health and the description without one', async () => {
    const refused = await bench.call('GET', '/api/runs', undefined, without);
    expectProblem(refused, 401, 'key-needed');
    expect(refused.headers.get('www-authenticate')).toBe('Bearer');
    expectProblem(
      await bench.call('GET', '/api/runs', undefined, { authorization: `Bearer ${'x'.repeat(43)}` }),
      401,
      'key-needed',
    );
    const health = await bench.call('GET', '/api/health', undefined, without);
    expect([health.status, health.body]).toMatchObject([
      200,
      { status: 'ok', database: 'up', queue: { state: 'up', backend: 'postgres' } },
    ]);
    expect((await bench.call('GET', '/api/docs', undefined, without)).status).toBe(200);
  });

  it('closes for a key that was revoked', async () => {
    const key = await bench.storage.keys.create(bench.workshopId, 'lost phone');
    const authorization = `Bearer ${key.raw}`;
    expect((await bench.call('GET', '/api/lots', undefined, { authorization })).status).toBe(200);
    await bench.storage.keys.revoke(bench.workshopId, key.id);
    expectProblem(await bench.call('GET', '/api/lots', undefined, { authorization }), 401, 'key-needed');
  });

  it('shows one workshop nothing of another', async () => {
    const other = await bench.storage.workshops.create(file.workshop);
    const { raw } = await bench.storage.keys.create(other.id, 'other');
    const authorization = `Bearer ${raw}`;
    const made = await bench.call('POST', '/api/runs', { ...order, key: 'private' });
    for (const path of ['', '/plan', '/log', '/tide-table', '/odds', '/plans', '/plans/1']) {
      const answer = await bench.call('GET', `/api/runs/${made.body.run.id}${path}`, undefined, {
        authorization,
      });
      expect(answer.status, path).toBe(404);
    }
    expect((await bench.call('GET', '/api/moulds', undefined, { authorization })).body).toEqual([]);
    expect((await bench.call('GET', '/api/nudges', undefined, { authorization })).body).toEqual([]);
  });
});

import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { ApiDescription } from '../fuzz/api-description.js';
import { openTestApi, type Answer, type TestApi } from '../support/test-api.js';
import { foreignIn, namesIn } from '../support/one-language.js';
import { loadRunFile } from '../support/run-files.js';

const file = loadRunFile('ok', 'plain-tiles');
/** What the maker has named, in a title or, of a material that the shelf of the file has without one, in its key. */
const names = [...namesIn(file), 'Sea air', 'Blue mica', 'Sand clay'];
const NOBODY = '01890000-0000-7000-8000-000000000000';
const wanted = { language: 'de', units: 'us' } as const;
const headers = { 'Accept-Language': 'de', Prefer: 'units=us' };

let bench: TestApi;
let run: string;
/** What stands for a parameter of a path. */
let ids: Readonly<Record<string, string>>;
let description: ApiDescription;

beforeAll(async () => {
  bench = await openTestApi('2026-11-27T17:00:00Z', file);
  const [order] = await bench.stock(file);
  const made = await bench.call('POST', '/api/runs', order);
  run = made.body.run.id;
  const late = {
    kind: 'not-yet',
    stage: 'pour-deep',
    at: '2026-11-27T17:00:00Z',
  };
  await bench.call('POST', `/api/runs/${run}/log`, late, {
    'idempotency-key': 'one-language-1',
  });
  const first = async (path: string): Promise<string> => (await bench.call('GET', path)).body[0].id;
  ids = {
    '/api/moulds/{id}': await first('/api/moulds'),
    '/api/fats/{id}': NOBODY,
    // A picture says nothing in any language.
    '/api/photos/{id}': NOBODY,
    '/api/recipes/{id}': await first('/api/recipes'),
    '/api/designs/{id}': await first('/api/designs'),
  };
  description = (await bench.call('GET', '/api/docs')).body;
});
afterAll(() => bench.close());

/** Fields for programs and for whoever wrote them, and copies of what was sent. */
const NOT_READ = new Set([
  'type',
  'kind',
  'instance',
  'path',
  'value',
  'key',
  'inci',
  'soapInci',
  'aliases',
  'timeZone',
  'version',
  'supplier',
  'id',
]);
/** A field whose sentence in the language of the reader stands beside it. */
const BESIDE: Readonly<Record<string, string>> = {
  title: 'text',
  behaviour: 'behaviourText',
  source: 'text',
};

/** Every text of an answer that people read: what holds more than one word, and what is called so. Of a message it is its text. */
function textsOf(value: unknown, name = ''): string[] {
  if (typeof value === 'string') {
    const isRead = /\s/.test(value) || /^(text|title|detail|message|remedy|field|accepted)$/.test(name);
    return isRead && !NOT_READ.has(name) && !names.includes(value) ? [value] : [];
  }
  if (Array.isArray(value)) return value.flatMap((each) => textsOf(each, name));
  if (typeof value !== 'object' || value === null) return [];
  const isTold = 'code' in value && 'text' in value;
  const fields = Object.entries(value).filter(([field]) => !isTold || field === 'text' || field === 'remedy');
  return fields
    .filter(([field]) => field !== 'data')
    .filter(([field]) => BESIDE[field] === undefined || !Object.hasOwn(value, BESIDE[field]))
    .flatMap(([field, inner]) => textsOf(inner, field));
}

/** The path of the field stands before the sentence of a single issue; what can be chosen is as it must be sent. */
function foreign({ body }: Answer): string[] {
  const issues: {
    readonly path: string;
    readonly data: { readonly accepted?: { readonly values?: string[] } };
  }[] = body.issues ?? [];
  const sent = [...names, ...issues.flatMap(({ data }) => data.accepted?.values ?? [])];
  const paths = issues.map(({ path }) => `${path}: `);
  const read = textsOf(body).map((text) => {
    const path = paths.find((each) => text.startsWith(each));
    return path === undefined ? text : text.slice(path.length);
  });
  return [...new Set(read.flatMap((text) => foreignIn(text.replace('GET /', '/'), wanted, sent)))];
}

describe('in German, with US units', () => {
  it('every answer that can be read has no English and nothing metric', async () => {
    const queries: Readonly<Record<string, string>> = {
      '/api/gather': `?runs=${run}`,
      '/api/stock/moves': '?material=olive&unit=g',
    };
    const paths = Object.entries(description.paths)
      .filter(([path, item]) => 'get' in item && path !== '/api/inbox/stream')
      .map(([path]) => path);
    expect(paths.length).toBeGreaterThan(25);
    const found: string[] = [];
    for (const path of paths) {
      const id = ids[path] ?? run;
      const asked = path.replace('{id}', id).replace('{number}', '1') + (queries[path] ?? '');
      const answer = await bench.call('GET', asked, undefined, headers);
      const isThere = id === NOBODY ? answer.status === 404 : answer.status === 200;
      if (!isThere) found.push(`${asked} answers ${String(answer.status)}`);
      found.push(...foreign(answer).map((find) => `${asked} ${find}`));
    }
    expect(found).toEqual([]);
  });

  const mould = file.moulds[0]!;
  const recipe = file.recipes[0]!;
  const design = file.designs[0]!;
  const uneven = recipe.fats.map((each, i) =>
    i === 0 ? { ...each, percent: (each.percent ?? 0) + 1 } : each,
  );
  const refusals: readonly (readonly [string, string, unknown?, Record<string, string>?])[] = [
    ['GET', '/api/teapots'],
    ['GET', '/api/runs/no-uuid'],
    ['GET', `/api/runs/${NOBODY}`],
    ['GET', `/api/moulds/${NOBODY}`],
    ['GET', '/api/gather?runs=none'],
    ['GET', '/api/nudges?status=odd'],
    ['GET', '/api/workshop', undefined, { authorization: 'Bearer wrong' }],
    ['POST', '/api/moulds', '{"key":'],
    ['POST', '/api/moulds', 'x', { 'content-type': 'text/plain' }],
    ['POST', '/api/moulds', { title: 'x'.repeat(300_000) }],
    ['POST', '/api/moulds', mould],
    ['POST', '/api/moulds', { ...mould, key: 'bad', cavityMl: -1 }],
    ['POST', '/api/moulds', { ...mould, key: 'bad', colour: 'red' }],
    ['POST', '/api/moulds', { ...mould, key: 'Bad Key' }],
    ['POST', '/api/moulds', {}],
    ['POST', '/api/recipes', { ...recipe, key: 'bad', fats: uneven }],
    ['POST', '/api/recipes', { ...recipe, key: 'bad', lyeConcentrationPercent: 60 }],
    ['POST', '/api/recipes', { ...recipe, key: 'bad', batterTemperatureC: 200 }],
    ['POST', '/api/recipes', { ...recipe, key: 'bad', fats: [{ fat: 'unobtainium', percent: 100 }] }],
    ['POST', '/api/designs', { ...design, key: 'bad', stages: [] }],
    ['POST', '/api/runs', { ...file.runs[0], key: 'bad', design: 'teapot' }],
    ['POST', '/api/runs', { ...file.runs[0], key: 'bad', count: 100_000 }],
    ['POST', '/api/runs', { ...file.runs[0], key: 'bad', startAfter: 'soon' }],
    ['POST', '/api/session', { code: 'XXXX-XXXX' }],
    ['PUT', '/api/workshop', { version: 77, facts: file.workshop }],
    ['POST', '/api/latest-start', {}],
  ];
  for (const [method, path, body, more = {}] of refusals) {
    it(`${method} ${path} ${(JSON.stringify(body) ?? '').slice(0, 60)} is refused in no other`, async () => {
      const answer = await bench.call(method, path, body, {
        ...headers,
        ...more,
      });
      expect(answer.status).toBeGreaterThanOrEqual(400);
      expect(answer.status).toBeLessThan(500);
      expect(textsOf(answer.body).length).toBeGreaterThan(0);
      expect(foreign(answer)).toEqual([]);
    });
  }
});

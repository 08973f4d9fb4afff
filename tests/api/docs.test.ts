import { Validator } from '@seriousme/openapi-schema-validator';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { openTestApi, type TestApi } from '../support/test-api.js';

interface Operation {
  readonly operationId: string;
  readonly parameters?: readonly { readonly name: string }[];
  readonly responses: Record<string, { content?: Record<string, unknown> }>;
  readonly security?: unknown[];
}
interface Document {
  readonly openapi: string;
  readonly paths: Record<string, Record<string, Operation>>;
  readonly components: { schemas: Record<string, unknown> };
}

let bench: TestApi;
let document: Document;
beforeAll(async () => {
  bench = await openTestApi('2026-11-27T17:00:00Z');
  document = (await bench.call('GET', '/api/docs')).body as Document;
});
afterAll(() => bench.close());

function operations(): [path: string, method: string, operation: Operation][] {
  return Object.entries(document.paths).flatMap(([path, item]) =>
    Object.entries(item).map(([method, operation]): [string, string, Operation] => [path, method, operation]),
  );
}

/** Oracle: the schema of OpenAPI 3.1 as the package @seriousme/openapi-schema-validator brings it. */
it('is a valid OpenAPI 3.1 document', async () => {
  expect(document.openapi).toBe('3.1.0');
  expect(await new Validator().validate({ ...document })).toMatchObject({ valid: true });
  expect(await new Validator().validate({ ...document, info: undefined })).toMatchObject({ valid: false });
});

/** OpenAPI 3.1.0, section 4.8.10.1: operationId “MUST be unique among all operations described in the API”. */
it('gives each operation a name of its own', () => {
  const names = operations().map(([, , { operationId }]) => operationId);
  expect(names.filter((name, index) => names.indexOf(name) !== index)).toEqual([]);
});

it('refers only to components that it has', () => {
  const used = [...JSON.stringify(document).matchAll(/#\/components\/schemas\/([\w.-]+)/g)].map(
    (m) => m[1] ?? '',
  );
  expect(used.length).toBeGreaterThan(50);
  expect([...new Set(used)].filter((name) => !(name in document.components.schemas))).toEqual([]);
});

/** A query whose schema has a name becomes a component, and its parameters are then told nowhere. */
it('has no component that nothing refers to', () => {
  const text = JSON.stringify(document);
  const names = Object.keys(document.components.schemas);
  expect(names.filter((name) => !text.includes(`"#/components/schemas/${name}"`))).toEqual([]);
  expect(document.paths['/api/gather']?.['get']?.parameters?.map(({ name }) => name)).toEqual(['runs']);
});

/** What answers without a key, and how it answers when nothing is sent. */
const open: Record<string, number> = { 'GET /api/health': 200, 'POST /api/session': 422 };

it('describes routes that exist, each behind the key but for health and signing in', async () => {
  const id = '01890000-0000-7000-8000-000000000000';
  expect(operations().length).toBeGreaterThan(30);
  for (const [path, method, operation] of operations()) {
    const where = `${method.toUpperCase()} ${path}`;
    const url = path.replace('{id}', id).replace('{number}', '1');
    const closed = await bench.call(method.toUpperCase(), url, undefined, { authorization: '' });
    expect(closed.status, where).toBe(open[where] ?? 401);
    expect(operation.security === undefined, where).toBe(where in open);
  }
});

it('describes every failure as a problem document', () => {
  for (const [path, method, { responses }] of operations()) {
    const failures = Object.entries(responses).filter(([status]) => Number(status) >= 400);
    expect(failures.length, `${method} ${path}`).toBeGreaterThan(0);
    for (const [, { content }] of failures)
      expect(Object.keys(content ?? {})).toEqual(['application/problem+json']);
  }
});

it('says that the disk may be full wherever the database is asked', () => {
  for (const [path, method, { responses }] of operations())
    expect('507' in responses, `${method} ${path}`).toBe(path !== '/api/health');
});

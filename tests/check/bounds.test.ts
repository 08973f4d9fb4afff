import { afterAll, beforeAll, expect, it } from 'vitest';
import { z } from 'zod';
import { instant, runFile } from '#contract';
import { apiDocument } from '../../apps/api/docs/api-document.js';
import { createRoutes } from '../../apps/api/create-app.js';
import type { Services } from '../../apps/api/services.js';
import { unboundedIn, type JsonSchema } from '../support/unbounded.js';

interface Operation {
  readonly parameters?: readonly {
    readonly name: string;
    readonly in: string;
    readonly schema: JsonSchema;
  }[];
  readonly requestBody?: { readonly content: Readonly<Record<string, { readonly schema: JsonSchema }>> };
}

// Only what decorators say is read, so the routes need no parts to work with.
const routes = createRoutes({} as Services);
let paths: Record<string, Record<string, Operation>>;
let schemas: Record<string, JsonSchema>;
beforeAll(async () => {
  const document = apiDocument(await routes, 'test') as unknown as {
    paths: typeof paths;
    components: { schemas: typeof schemas };
  };
  ({ paths } = document);
  ({ schemas } = document.components);
});
afterAll(async () => (await routes).close());

/** Headers are read by the routes themselves, which say what they take; the server limits all of them together. */
const isPlace = ({ in: place }: { readonly in: string }): boolean => place !== 'header';

it('bounds every body, query and path of the API', () => {
  let looked = 0;
  const faults = Object.entries(paths).flatMap(([path, item]) =>
    Object.entries(item).flatMap(([method, { parameters = [], requestBody }]) => {
      const places: [string, JsonSchema][] = parameters
        .filter(isPlace)
        .map(({ name, schema }) => [`${method} ${path} ${name}`, schema]);
      const bodies = Object.values(requestBody?.content ?? {}).map(({ schema }): [string, JsonSchema] => [
        `${method} ${path} body`,
        schema,
      ]);
      looked += places.length + bodies.length;
      return [...places, ...bodies].flatMap(([where, schema]) => unboundedIn(schema, schemas, where));
    }),
  );
  expect(faults).toEqual([]);
  expect(looked).toBeGreaterThan(45);
});

it('bounds everything in a run file', () => {
  const { $defs = {}, ...schema } = z.toJSONSchema(runFile, { io: 'input', unrepresentable: 'any' });
  expect(unboundedIn(schema, $defs as Record<string, JsonSchema>, 'file')).toEqual([]);
});

it('finds what has no bound, wherever it is', () => {
  const tree: z.ZodType = z.lazy(() => z.strictObject({ name: z.string().max(9), in: z.array(tree).max(2) }));
  const loose = z.strictObject({
    count: z.int().min(1),
    share: z.number().max(3),
    title: z.string().min(1),
    code: z.string().regex(/^[a-z]+$/),
    spans: z.array(z.boolean()),
    acids: z.record(z.string(), z.number().min(0).max(1)),
    day: z.iso.date(),
    when: instant,
    what: z.union([z.literal('a'), z.string()]),
    extra: z.unknown(),
    more: z.looseObject({}),
    tree,
    fine: z.strictObject({ a: z.enum(['b']), c: z.string().regex(/^[a-z]{1,3}$/), d: z.uuid(), e: z.null() }),
  });
  const { $defs = {}, ...schema } = z.toJSONSchema(loose, { io: 'input', unrepresentable: 'any' });
  expect(unboundedIn(schema, $defs as Record<string, JsonSchema>)).toEqual([
    '.count: a number without a most',
    '.share: a number without a least',
    '.title: a text without maxLength',
    '.code: a text without maxLength',
    '.spans: a list without maxItems',
    '.acids: a record without maxProperties',
    '.acids{name}: a text without maxLength',
    '.day: a date of any age, such as 0001-01-01',
    '.when: a text without maxLength',
    '.when: a date of any age, such as 0001-01-01T00:00:00Z',
    '.what|1: a text without maxLength',
    '.extra: anything at all',
    '.more: a record without maxProperties',
    '.more{name}: anything at all',
    '.more{}: anything at all',
    '.tree.in[]: contains itself by __schema0',
  ]);
});

import type { Random } from '#units';
import type { JsonSchema } from '../support/unbounded.js';
import { pick } from './odd-values.js';

/** Texts of every form the contract asks for; a pattern gets those that it takes. */
const TEXTS = [
  'deep-water',
  'a',
  '06:00',
  '18:30',
  '24:00',
  '2026-11-28',
  '2000-01-01',
  '2199-12-31',
  '2026-11-27T18:00',
  '2000-01-01T00:00',
  '2199-12-31T23:59',
  '2026-11-27T16:00:00Z',
  '2199-12-31T23:59:59.999+14:00',
  'EUR',
  '018f0000-0000-7000-8000-000000000001',
];

/** What schemas of this document are filled with. */
export interface SchemaFiller {
  readonly random: Random;
  readonly definitions: Readonly<Record<string, JsonSchema>>;
  /** Keys and ids that are known to the workshop. */
  readonly known: readonly string[];
  /** How often a value lies just outside what its schema allows. */
  readonly outside: number;
}

/** A value by its schema, at its bounds as often as between them, and now and then just outside. */
export function valueOf(schema: JsonSchema, filler: SchemaFiller): unknown {
  const { random, definitions } = filler;
  const ref = schema['$ref'];
  if (typeof ref === 'string') return valueOf(definitions[ref.split('/').at(-1) ?? ''] ?? {}, filler);
  const choices = (schema['anyOf'] ?? schema['oneOf']) as readonly JsonSchema[] | undefined;
  if (choices !== undefined) return valueOf(pick(random, choices), filler);
  if ('const' in schema) return schema['const'];
  if (Array.isArray(schema['enum'])) return pick(random, schema['enum'] as unknown[]);
  switch (schema['type']) {
    case 'boolean':
      return random.next() < 0.5;
    case 'number':
    case 'integer':
      return numberOf(schema, filler);
    case 'string':
      return textOf(schema, filler);
    case 'array':
      return listOf(schema, filler);
    case 'object':
      return objectOf(schema, filler);
    default:
      return null;
  }
}

function numberOf(schema: JsonSchema, { random, outside }: SchemaFiller): number {
  const least = Number(schema['minimum'] ?? schema['exclusiveMinimum'] ?? 0);
  const most = Number(schema['maximum'] ?? schema['exclusiveMaximum'] ?? 1e6);
  const step = schema['type'] === 'integer' ? 1 : Math.max(1e-9, Math.abs(most) * 1e-9);
  if (random.next() < outside) return pick(random, [least - step, most + step]);
  if (random.next() < 0.3) return pick(random, [least, most]);
  const between = least + random.next() * Math.min(most - least, 200);
  return schema['type'] === 'integer' ? Math.round(between) : between;
}

function textOf(schema: JsonSchema, { random, known, outside }: SchemaFiller): string {
  const patterns = [schema, ...((schema['allOf'] ?? []) as JsonSchema[])].flatMap(({ pattern }) =>
    typeof pattern === 'string' ? [new RegExp(pattern, 'u')] : [],
  );
  const most = Number(schema['maxLength'] ?? 40);
  if (random.next() < outside) return 'x'.repeat(Math.min(most, 4000) + 1);
  if (patterns.length === 0) {
    const length = random.next() < 0.2 ? most : Math.min(most, 12);
    return random.next() < 0.5 && known.length > 0 ? pick(random, known) : 'ä'.repeat(length);
  }
  const fitting = [...known, ...TEXTS].filter((text) => patterns.every((pattern) => pattern.test(text)));
  return fitting.length === 0 ? 'x' : pick(random, fitting);
}

function listOf(schema: JsonSchema, filler: SchemaFiller): unknown[] {
  const { random, outside } = filler;
  const most = Number(schema['maxItems'] ?? 3);
  const least = Number(schema['minItems'] ?? 0);
  const usual = least + Math.floor(random.next() * 3);
  const length = random.next() < outside ? most + 1 : Math.min(most, usual);
  const items = (schema['items'] ?? {}) as JsonSchema;
  // Longer lists repeat what they hold, or a single request would take megabytes.
  const few = Array.from({ length: Math.min(length, 3) }, () => valueOf(items, filler));
  return Array.from({ length: Math.min(length, 600) }, (_, i) => few[i % few.length]);
}

function objectOf(schema: JsonSchema, filler: SchemaFiller): Record<string, unknown> {
  const { random } = filler;
  const required = new Set((schema['required'] ?? []) as string[]);
  const properties = Object.entries((schema['properties'] ?? {}) as Record<string, JsonSchema>);
  const named = properties
    .filter(([name]) => required.has(name) || random.next() < 0.4)
    .map(([name, each]) => [name, valueOf(each, filler)]);
  const more = schema['additionalProperties'];
  const acids = more === false || more === undefined ? [] : [['C18:1', valueOf(more as JsonSchema, filler)]];
  return Object.fromEntries([...named, ...acids]) as Record<string, unknown>;
}

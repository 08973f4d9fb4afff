import { z } from 'zod';
import * as contract from '#contract';
import type { Message } from '#contract';

/** A schema as JSON Schema, of which only some words are read. */
interface Shape {
  readonly $ref?: string;
  readonly const?: unknown;
  readonly enum?: readonly unknown[];
  readonly anyOf?: readonly Shape[];
  readonly oneOf?: readonly Shape[];
  readonly type?: string;
  readonly format?: string;
  readonly pattern?: string;
  readonly minimum?: number;
  readonly maximum?: number;
  readonly properties?: Readonly<Record<string, Shape>>;
  readonly required?: readonly string[];
  readonly items?: Shape;
  readonly $defs?: Readonly<Record<string, Shape>>;
}

const made = new Map<string, readonly Message[]>();

/**
 * Every message of the contract in several forms made up from its schema: each word of a list, each kind of what it refers to,
 * one and many, what may be left out there and not. One thing changes at a time.
 * @param key stands wherever a key is told, as it is a name for programs
 */
export function messageSamples(key = 'Xx'): readonly Message[] {
  const known = made.get(key);
  if (known !== undefined) return known;
  keyText = key;
  const samples = [...shapesByCode()].flatMap(([, { shape, root }]) => variantsOf(shape, root) as Message[]);
  made.set(key, samples);
  return samples;
}

let keyText = 'Xx';
const KEY_PATTERN = (z.toJSONSchema(contract.key) as Shape).pattern;

/** The schema of each message, by its code. Only those that have a code of their own are turned: all take a second. */
function shapesByCode(): Map<string, { readonly shape: Shape; readonly root: Shape }> {
  const found = new Map<string, { readonly shape: Shape; readonly root: Shape }>();
  for (const schema of Object.values(contract)) {
    const isOne = schema instanceof z.ZodObject && 'code' in schema.shape;
    if (!isOne && !(schema instanceof z.ZodDiscriminatedUnion && schema.def.discriminator === 'code'))
      continue;
    const root = z.toJSONSchema(schema, { unrepresentable: 'any' }) as Shape;
    const top = resolved(root, root);
    for (const way of top.oneOf ?? top.anyOf ?? [top]) {
      const shape = resolved(way, root);
      const code = shape.properties?.['code']?.const;
      if (typeof code === 'string' && !found.has(code)) found.set(code, { shape, root });
    }
  }
  return found;
}

function resolved(shape: Shape, root: Shape): Shape {
  if (shape.$ref === undefined) return shape;
  return shape.$ref === '#' ? root : (root.$defs?.[shape.$ref.slice('#/$defs/'.length)] ?? {});
}

/** Fields of which a schema does not tell what they hold: a currency’s code, and the value of an input that is a number. */
const chosen: Readonly<Record<string, unknown>> = { currency: 'EUR', value: 33 };
/** Made where an answer is written. */
const WRITTEN = new Set(['text', 'remedy']);

function variantsOf(given: Shape, root: Shape): unknown[] {
  const shape = resolved(given, root);
  if (shape.const !== undefined) return [shape.const];
  if (shape.enum !== undefined) return [...shape.enum];
  const ways = shape.anyOf ?? shape.oneOf;
  if (ways !== undefined) return ways.flatMap((way) => variantsOf(way, root));
  switch (shape.type) {
    case 'object':
      return objectsOf(shape, root);
    case 'array': {
      const items = variantsOf(shape.items ?? {}, root);
      return [
        ...items.map((item) => [item]),
        ...(items.length > 1 ? [items.slice(0, 2)] : [[items[0], items[0]]]),
      ];
    }
    case 'integer':
      return [2, 1].map((count) => Math.max(count, shape.minimum ?? count));
    case 'number':
      return shape.maximum === 1 ? [0.4, 0.999, 0.001] : [0.4, 33];
    case 'boolean':
      return [true, false];
    case 'null':
      return [null];
    default:
      return [textOf(shape)];
  }
}

function textOf({ format, pattern }: Shape): string {
  if (pattern !== undefined && pattern === KEY_PATTERN) return keyText;
  if (format === 'date-time') return '2026-11-27T18:00:00.000Z';
  return format === 'date' ? '2026-11-27' : 'Xx';
}

function objectsOf({ properties = {}, required = [] }: Shape, root: Shape): object[] {
  const fields = Object.entries(properties)
    .filter(([name]) => !WRITTEN.has(name))
    .map(
      ([name, inner]) =>
        [name, Object.hasOwn(chosen, name) ? [chosen[name]] : variantsOf(inner, root)] as const,
    );
  const first = Object.fromEntries(fields.map(([name, [value]]) => [name, value]));
  const others = fields.flatMap(([name, [, ...more]]) => more.map((value) => ({ ...first, [name]: value })));
  const optional = fields.map(([name]) => name).filter((name) => !required.includes(name));
  const without = (names: readonly string[]): object =>
    Object.fromEntries(Object.entries(first).filter(([name]) => !names.includes(name)));
  const fewer = [
    ...optional.map((name) => without([name])),
    ...(optional.length > 1 ? [without(optional)] : []),
  ];
  return [first, ...others, ...fewer];
}

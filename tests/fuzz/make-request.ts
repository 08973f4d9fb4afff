import type { Random } from '#units';
import type { JsonSchema } from '../support/unbounded.js';
import type { Operation } from './api-description.js';
import type { Corpus } from './corpus.js';
import { mutated, oddValue, pick } from './odd-values.js';
import { valueOf } from './schema-value.js';
import type { Workshop } from './workshop-model.js';

/** A request as it goes out; what is no text is sent as bytes. */
export interface FuzzRequest {
  readonly operation: Operation;
  readonly url: string;
  readonly headers: Readonly<Record<string, string>>;
  readonly body: string | Buffer | undefined;
  /** The id in the path, where there is one. */
  readonly id: string | undefined;
}

/** What requests are made from. */
export interface Material {
  readonly random: Random;
  readonly corpus: Corpus;
  readonly definitions: Readonly<Record<string, JsonSchema>>;
  readonly workshop: Workshop;
}

/** Routes whose sound requests plan; they are sent as they should be more seldom, or a run would take hours. */
const DEAR = /\/(plan|what-if|change|latest-start|plan-preview|log)$|POST \/api\/runs$|remedies$/;

/** How many runs there may be before new ones are made but seldom: every plan reads all of them. */
const MANY_RUNS = 20;

const ODD_IDS = [
  '0',
  'x',
  'null',
  '%00',
  '%zz',
  '%ff',
  '018f0000-0000-7000-8000-000000000001',
  'e\u202e',
  'a'.repeat(900),
];

/** The same request with a body of lists in each other without end. */
export function nestedRequest(request: FuzzRequest): FuzzRequest {
  const { operation, headers } = request;
  if (operation.body === undefined) return request;
  const body = `${'['.repeat(50_000)}${']'.repeat(50_000)}`;
  return { ...request, headers: { ...headers, 'content-type': 'application/json' }, body };
}

/** A request for an operation: as it should be, or wrong in its path, query, headers, body or encoding. */
export function makeRequest(operation: Operation, material: Material): FuzzRequest {
  const { random, workshop } = material;
  const sound = random.next() < shareOfSound(operation, workshop);
  const id = operation.path.includes('{id}') ? anId(operation, material, sound) : undefined;
  const number = sound
    ? '1'
    : pick(random, ['1', '2', '0', '-1', '1e9', '2147483648', '1.5', 'NaN', '9'.repeat(30)]);
  const path = operation.path.replace('{id}', id ?? '').replace('{number}', number);
  const body = operation.body === undefined ? undefined : aBody(operation, material, sound, id);
  return {
    operation,
    url: `${path}${aQuery(operation, material, sound, id)}`,
    headers: headersFor(body, material, sound, workshop),
    body,
    id,
  };
}

function shareOfSound({ name }: Operation, { runs }: Workshop): number {
  if (name === 'POST /api/runs') return runs.size < MANY_RUNS ? 0.5 : 0.01;
  // What is logged is what there is most to lose of.
  if (name.endsWith('/log')) return 0.4;
  return DEAR.test(name) ? 0.04 : 0.3;
}

function anId({ method, path, name }: Operation, { random, workshop }: Material, sound: boolean): string {
  const known = workshop.idsUnder(path);
  // What is taken out of use, and remedies, which nothing but the id can make cheap, are for few.
  const share = name.endsWith('remedies') ? 0.1 : method === 'DELETE' ? 0.4 : sound ? 1 : 0.85;
  if (known.length > 0 && random.next() < share) return pick(random, known);
  return pick(random, ODD_IDS);
}

function aQuery(
  { query, name }: Operation,
  material: Material,
  sound: boolean,
  id: string | undefined,
): string {
  const { random, workshop } = material;
  const parts = query.flatMap(({ name: field, schema }) => {
    if (!sound && random.next() < 0.2) return [];
    // Of a version, one that may be right: what is taken out of use is to be taken out now and then.
    const filler = {
      random,
      definitions: material.definitions,
      known: workshop.keys(),
      outside: sound ? 0 : 0.3,
    };
    const value =
      name.startsWith('DELETE') && random.next() < 0.8 ? workshop.versionOf(id) : valueOf(schema, filler);
    const odd = !sound && random.next() < 0.3 ? oddValue(random) : value;
    const text = (typeof odd === 'string' ? odd : (JSON.stringify(odd) ?? '')).slice(0, 3000);
    return [`${field}=${encodeURIComponent(text.replace(/\p{Surrogate}/gu, '\ufffd'))}`];
  });
  if (!sound && random.next() < 0.05) parts.push('what=%00', 'after[]=1&after[x]=2');
  return parts.length === 0 ? '' : `?${parts.join('&')}`;
}

function aBody(
  operation: Operation,
  material: Material,
  sound: boolean,
  id: string | undefined,
): string | Buffer {
  const { random, corpus, definitions, workshop } = material;
  const examples = corpus[operation.name] ?? [];
  const filler = { random, definitions, known: workshop.keys(), outside: sound ? 0 : 0.05 };
  const fromSchema = examples.length === 0 || (!sound && random.next() < 0.25);
  let value = fromSchema
    ? valueOf(operation.body ?? {}, filler)
    : workshop.fitted(pick(random, examples), operation, id, random);
  if (sound) return JSON.stringify(value);
  for (let times = pick(random, [1, 1, 1, 2, 4]); times > 0; times -= 1) value = mutated(value, random);
  const text = JSON.stringify(value) ?? 'undefined';
  const roll = random.next();
  if (roll < 0.02) return text.slice(0, Math.floor(text.length * random.next()));
  if (roll < 0.03) return `${'['.repeat(50_000)}${']'.repeat(50_000)}`;
  if (roll < 0.04) return Buffer.from(text.replace(/[a-z]/, 'ü'), 'latin1');
  if (roll < 0.05) return Buffer.from(`\ufeff${text}`, random.next() < 0.5 ? 'utf16le' : 'utf8');
  if (roll < 0.055) return `{"x":"${'y'.repeat(pick(random, [2048, 300_000, 1_100_000]))}"}`;
  if (roll < 0.06) return `{"a":[${'0,'.repeat(110_000)}0]}`;
  return text;
}

function headersFor(
  body: string | Buffer | undefined,
  { random }: Material,
  sound: boolean,
  { key }: Workshop,
): Record<string, string> {
  const headers: Record<string, string> = { authorization: `Bearer ${key}` };
  if (body !== undefined) headers['content-type'] = 'application/json';
  if (sound) return headers;
  const roll = random.next();
  if (roll < 0.02)
    headers['authorization'] = pick(random, ['', 'Bearer', 'Basic eDp5', `Bearer ${'x'.repeat(43)}`]);
  else if (roll < 0.04)
    headers['content-type'] = pick(random, [
      'text/plain',
      'application/json; charset=latin1',
      ';;',
      'multipart/form-data',
    ]);
  else if (roll < 0.05) headers['content-encoding'] = pick(random, ['gzip', 'br', 'none']);
  else if (roll < 0.08)
    headers['idempotency-key'] = pick(random, ['same-key-1', 'same-key-2', 'x', 'y'.repeat(201), 'a b']);
  else if (roll < 0.09) headers['sec-fetch-site'] = 'cross-site';
  else if (roll < 0.1) headers['last-event-id'] = pick(random, ['-1', 'x', '9'.repeat(15), '9'.repeat(40)]);
  return headers;
}

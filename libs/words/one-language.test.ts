import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import * as contract from '#contract';
import type { Message } from '#contract';
import type { Issue } from '#units';
import { en, textsFor, type Language } from '#words';
import { wordsOf } from '#words/all';
import { foreignIn, type Wanted } from '../../tests/support/one-language.js';

/** A schema as JSON Schema, of which only some words are read. */
interface Shape {
  readonly $ref?: string;
  readonly const?: unknown;
  readonly enum?: readonly unknown[];
  readonly anyOf?: readonly Shape[];
  readonly oneOf?: readonly Shape[];
  readonly type?: string;
  readonly format?: string;
  readonly minimum?: number;
  readonly properties?: Readonly<Record<string, Shape>>;
  readonly items?: Shape;
  readonly $defs?: Readonly<Record<string, Shape>>;
}

/** Every message of the contract with parameters made up from its schema. */
function samples(): Message[] {
  const found = new Map<string, Message>();
  for (const schema of Object.values(contract)) {
    if (!(schema instanceof z.ZodType)) continue;
    const root = z.toJSONSchema(schema, { unrepresentable: 'any' }) as Shape;
    visit(root, (shape) => {
      const code = shape.properties?.['code']?.const;
      if (typeof code === 'string' && Object.hasOwn(en.messages, code) && !found.has(code)) {
        found.set(code, valueOf(shape, root) as Message);
      }
    });
  }
  return [...found.values()];
}

function visit(shape: unknown, see: (shape: Shape) => void): void {
  if (typeof shape !== 'object' || shape === null) return;
  if (!Array.isArray(shape)) see(shape);
  Object.values(shape).forEach((inner) => visit(inner, see));
}

/** Fields of which a schema does not tell what they hold: a currency’s code, and the value of an input that is a number. */
const chosen: Readonly<Record<string, unknown>> = { currency: 'EUR', value: 33 };

function valueOf(shape: Shape, root: Shape): unknown {
  if (shape.$ref !== undefined) {
    return shape.$ref === '#' ? valueOf(root, root) : valueOf(root.$defs?.[shape.$ref.slice(8)] ?? {}, root);
  }
  if (shape.const !== undefined) return shape.const;
  if (shape.enum !== undefined) return shape.enum[0];
  const [way] = shape.anyOf ?? shape.oneOf ?? [];
  if (way !== undefined) return valueOf(way, root);
  switch (shape.type) {
    case 'object':
      return Object.fromEntries(
        Object.entries(shape.properties ?? {})
          .filter(([name]) => name !== 'text')
          .map(([name, inner]) => [name, chosen[name] ?? valueOf(inner, root)]),
      );
    case 'array':
      return [valueOf(shape.items ?? {}, root)];
    case 'integer':
      return Math.max(2, shape.minimum ?? 2);
    case 'number':
      return 0.4;
    case 'boolean':
      return true;
    default:
      return shape.format === 'date-time'
        ? '2026-11-27T18:00:00.000Z'
        : shape.format === 'date'
          ? '2026-11-27'
          : 'Xx';
  }
}

function said(language: Language, units: 'metric' | 'us'): string[] {
  const texts = textsFor({ language, units, timeZone: 'Europe/Dublin' }, wordsOf[language]);
  return samples().map((message) => `${message.code}: ${texts.of(message)}`);
}
/** Finds of each line, after its code. */
function wrong(lines: readonly string[], wanted: Wanted): string[] {
  return lines.flatMap((line) => {
    const colon = line.indexOf(': ');
    return foreignIn(line.slice(colon + 2), wanted).map((find) => `${line.slice(0, colon)}: ${find}`);
  });
}
const systems = ['metric', 'us'] as const;

/** What the sentences of issues ask for, by its name; every issue gets all of it. */
const told = {
  ...{
    path: ['fats'],
    value: 33,
    accepted: { kind: 'range', low: 20, high: 50, unit: 'g' },
    rule: 'one-wish',
  },
  ...{
    nearest: ['Xx'],
    fat: 'Xx',
    title: 'Xx',
    name: 'Xx',
    field: 'Xx',
    stage: 'Xx',
    mould: 'Xx',
    key: 'xx',
  },
  ...{
    known: ['Xx'],
    missing: ['Xx'],
    way: ['Xx', 'Yy', 'Xx'],
    fields: ['Xx'],
    states: ['firm'],
    state: 'firm',
  },
  ...{ sum: 90, found: 33, unit: 'g', percent: 60, low: 180, used: 190, high: 200, most: 150, share: 12 },
  ...{
    expected: 192.5,
    asKoh: 189.9,
    shipped: 190,
    differsByPercent: 6,
    waterG: 20,
    lyeG: 30,
    acid: 'citric-acid',
  },
  ...{
    foundMm: 30,
    tubeMm: 30,
    outerMm: 40,
    holdsMl: 70,
    filledMl: 75,
    batterC: 20,
    roomC: 34,
    isCalled: 'C18:1',
  },
  ...{
    massG: 900,
    mostG: 800,
    leastG: 500,
    days: 3,
    count: 2,
    stages: 400,
    alkali: 'naoh',
    dimension: 'mass',
  },
  ...{
    input: 'saltPercent',
    inputs: ['saltPercent', 'sugarPercent'],
    readyBy: '2027-01-16',
    day: '2027-01-16',
  },
  ...{ startAfter: '2026-11-27T18:00', startedAt: '2026-11-27T18:00:00Z', at: '2026-11-27T17:00:00Z' },
  ...{
    afterMin: 900,
    leastMin: 30,
    mostMin: 600,
    pieces: 6,
    expectedEachG: 90,
    usedG: 900,
    expectedG: 90,
    made: 4,
  },
  ...{
    because: { code: 'log.already-done', path: [], title: 'Xx' },
    isAsNaoh: false,
    isExcessIntended: false,
  },
};

function saidOfIssues(language: Language, units: 'metric' | 'us'): string[] {
  const texts = textsFor({ language, units, timeZone: 'Europe/Dublin' }, wordsOf[language]);
  return Object.keys(en.issues).map(
    (code) => `${code}: ${texts.issue({ ...told, code } as unknown as Issue)}`,
  );
}

describe.each(['en', 'de'] as const)('in %s', (language) => {
  it.each(systems)('every issue is whole, and in one language and %s units', (units) => {
    expect(wrong(saidOfIssues(language, units), { language, units })).toEqual([]);
  });
  it.each(systems)('every message is whole, and in one language and %s units', (units) => {
    expect(wrong(said(language, units), { language, units })).toEqual([]);
  });
});

it('makes up a sample of every message of the contract', () => {
  expect(samples().length).toBeGreaterThan(100);
});

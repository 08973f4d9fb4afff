import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Message, Risk } from '#contract';
import type { Issue } from '#units';
import { textsFor } from '#words';
import { wordsOf } from '#words/all';
import { issueSample, issueVariants } from '../../tests/support/issue-samples.js';
import { messageSamples } from '../../tests/support/message-samples.js';

fc.configureGlobal({ seed: 1843 });

/** A key, as programs call a part. */
const KEY = 'part-2';
/** A field, as the contract calls it. */
const FIELD = 'supplierLimitPercent';

/** What no sentence for people may hold: how a program names things, and figures and days as it keeps them. */
const RAW: readonly (readonly [string, RegExp])[] = [
  ['key', new RegExp(`\\b${KEY}\\b`)],
  ['field name', /\b[a-z]+(?:[A-Z][a-z]+)+\b/],
  ['path', /\w\[\d+\]|\b[a-z]+\.\d+\.[a-z]/],
  ['ISO day', /\d{4}-\d{2}-\d{2}/],
  ['ISO time', /\dT\d{2}:\d{2}/],
  ['raw figure', /\d[.,]\d{7,}/],
  ['exponent', /\de[+-]?\d/],
];

/** Told only to who writes a file or asks the API, in the names that they wrote themselves. */
const ASKED_BY_PROGRAMS = new Set(['input.unknown-field', 'library.key-changed', 'run.which']);

const rawIn = (code: string, text: string): string[] =>
  (ASKED_BY_PROGRAMS.has(code) ? [] : RAW).flatMap(([what, shape]) =>
    shape.test(text) ? [`${code}: ${what}: ${text}`] : [],
  );

/** Figures as arithmetic leaves them, small and large. */
const share = fc.double({ min: 1e-9, max: 0.999999, noNaN: true });
const figure = fc.oneof(
  fc.double({ min: 0.001, max: 1, noNaN: true }),
  fc.double({ min: 1, max: 1000, noNaN: true }),
  fc.double({ min: 1000, max: 1e7, noNaN: true }),
  fc.constantFrom(84.16666666666667, 20.96875, 0.1 + 0.2, 1e-7, 1 / 3),
);

/** How many batches of the log taught something, and what a maker wrote, stand where figures may. */
function isCount(value: object): boolean {
  return ('input' in value && value.input === 'log') || ('code' in value && value.code === 'conflict.input');
}

/** The same value with other figures; counts stay whole, and texts are as they were. */
function withFigures(value: unknown, chance: number, amount: number): unknown {
  if (typeof value === 'number') {
    if (value > 0 && value < 1) return chance;
    return value === 33 ? amount : value;
  }
  if (Array.isArray(value)) return value.map((each) => withFigures(each, chance, amount));
  if (typeof value !== 'object' || value === null || isCount(value)) return value;
  return Object.fromEntries(
    Object.entries(value).map(([name, each]) => [name, withFigures(each, chance, amount)]),
  );
}

/** Of an issue every figure may be anything; its counts are whole all the same. */
const COUNTS = new Set([
  'value',
  'most',

  'pieces',
  'count',
  'days',
  'stages',
  'made',
  'share',
  'path',
  'afterMin',
  'leastMin',
  'mostMin',
]);
function withAnyFigures(sample: object, amount: number): object {
  return Object.fromEntries(
    Object.entries(sample).map(([name, value]) => {
      if (COUNTS.has(name)) return [name, value];
      if (typeof value === 'number') return [name, amount];
      return [name, name === 'accepted' && value ? withAnyFigures(value as object, amount) : value];
    }),
  );
}

const keyed = {
  ...{ key: KEY, known: [KEY], nearest: ['Xx'], path: ['parts', 1, FIELD], field: FIELD },
  ...{ fields: [FIELD, 'fats'] },
};

const variants = [{}, ...issueVariants];

const isRisk = (message: Message): message is Risk => Object.hasOwn(wordsOf.en.riskRemedies, message.code);
const systems = ['metric', 'us'] as const;

describe.each(['en', 'de'] as const)('in %s', (language) => {
  const words = wordsOf[language];
  const in_ = (units: 'metric' | 'us') => textsFor({ language, units, timeZone: 'Europe/Dublin' }, words);

  it.each(systems)('no issue shows how a program writes, whatever its figures, in %s units', (units) => {
    const texts = in_(units);
    const codes = Object.keys(words.issues);
    expect(codes.length).toBeGreaterThan(100);
    const found = new Map<string, string>();
    fc.assert(
      fc.property(figure, (amount) => {
        for (const code of codes)
          for (const other of variants) {
            const issue = { ...withAnyFigures({ ...issueSample, ...keyed, ...other }, amount), code };
            for (const raw of rawIn(code, texts.issue(issue as unknown as Issue)))
              found.set(raw.slice(0, raw.indexOf(': ', raw.indexOf(': ') + 1)), raw);
          }
      }),
      { numRuns: 2 },
    );
    expect([...found.values()]).toEqual([]);
  });

  it.each(systems)('no message shows how a program writes, whatever its figures, in %s units', (units) => {
    const texts = in_(units);
    const found = new Map<string, string>();
    fc.assert(
      fc.property(share, figure, (chance, amount) => {
        for (const sample of messageSamples(KEY)) {
          const message = withFigures(sample, chance, amount) as Message;
          const said = [texts.of(message), ...(isRisk(message) ? [texts.remedyOf(message)] : [])];
          for (const text of said)
            for (const raw of rawIn(message.code, text))
              found.set(raw.slice(0, raw.indexOf(': ', raw.indexOf(': ') + 1)), raw);
        }
      }),
      { numRuns: 3 },
    );
    expect([...found.values()]).toEqual([]);
  });
});

it('has words for every issue in both languages, so that a new one cannot go without', () => {
  expect(Object.keys(wordsOf.de.issues).sort()).toEqual(Object.keys(wordsOf.en.issues).sort());
});

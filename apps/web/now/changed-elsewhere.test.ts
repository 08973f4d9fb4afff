import { expect, it } from 'vitest';
import { keysOf } from './changed-elsewhere.js';

const known: Readonly<Record<string, unknown>> = { 'plan a': { number: 3 }, 'log a': [{ id: 'one' }] };
const queries = { getQueryData: (key: readonly unknown[]) => known[key.join(' ')] as never };
const names = (...given: Parameters<typeof keysOf> extends [unknown, infer C] ? [C] : never) =>
  keysOf(queries, ...given).map((key) => key.join(' '));

it('asks anew for what was planned elsewhere, and not for a plan that came with an answer', () => {
  expect(names({ changed: 'a', plan: 4 })).toEqual(
    expect.arrayContaining(['plan a', 'odds a', 'runs', 'stock']),
  );
  expect(names({ changed: 'a', plan: 3 })).toEqual([]);
  expect(names({ changed: 'b', plan: 1 })).toContain('plan b');
});

it('asks anew for a log that has an entry more', () => {
  expect(names({ changed: 'a', entry: 'two' })).toEqual(['log a', 'cure a']);
  expect(names({ changed: 'a', entry: 'one' })).toEqual([]);
});

it('asks for the stock alone, for a run whose state changed, and for everything once something was missed', () => {
  expect(names({ changed: 'stock' })).toEqual(['stock']);
  expect(names({ changed: 'a' })).toEqual(['run a', 'runs', 'lots']);
  expect(names(null)).toEqual(expect.arrayContaining(['plan', 'log', 'runs', 'stock']));
});

import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { clearAll, keepClearing, type KeepClearingOptions } from './keep-clearing.js';
import type { Cleared } from './repositories/clearing.js';

// Its timers go by the test's clock, too, which the pauses of Node do not do by themselves.
vi.mock('node:timers/promises', () => ({
  setTimeout: (ms: number, value?: unknown, { signal }: { signal?: AbortSignal } = {}) =>
    new Promise((resolve, reject) => {
      const end = () => {
        reject(new DOMException('', 'AbortError'));
      };
      if (signal?.aborted === true) end();
      signal?.addEventListener('abort', end);
      setTimeout(() => {
        resolve(value);
      }, ms);
    }),
}));

const DAY_MS = 24 * 60 * 60_000;
const START = new Date('2027-02-01T12:00:00Z');
const none: Cleared = { idempotencyKeys: 0, nudges: 0, planRevisions: 0, signInCodes: 0, photos: 0 };
const one = (kind: keyof Cleared): Cleared => ({ ...none, [kind]: 1 });

/** What each call clears, by workshop, in order; after that nothing. */
let steps: Map<string, Cleared[]>;
let calls: { workshop: string; before: Date; atMost: number; at: Date }[];
let lines: { level: 'info' | 'warn'; details: unknown }[];
let failing: Error | null;
beforeEach(() => {
  vi.useFakeTimers({ now: START });
  [steps, calls, lines, failing] = [new Map(), [], [], null];
});
afterEach(() => vi.useRealTimers());

const storage = {
  workshops: { list: async () => [...steps.keys()].map((id) => ({ id })) },
  clearing: {
    clear: async (workshop: string, before: Date, atMost: number) => {
      calls.push({ workshop, before, atMost, at: new Date() });
      if (failing !== null) throw failing;
      return steps.get(workshop)?.shift() ?? none;
    },
  },
} as unknown as KeepClearingOptions['storage'];
const options: KeepClearingOptions = {
  storage,
  now: () => new Date(),
  log: {
    info: (_, details) => void lines.push({ level: 'info', details }),
    warn: (_, details) => void lines.push({ level: 'warn', details }),
  },
};

describe('clearing all workshops', () => {
  it('goes on in each until nothing is left to go, and counts each kind', async () => {
    steps = new Map([
      ['one', [one('idempotencyKeys'), one('nudges'), one('planRevisions'), one('signInCodes'), none]],
      ['two', [{ idempotencyKeys: 4, nudges: 30, planRevisions: 200, signInCodes: 1000, photos: 3 }]],
      ['three', []],
    ]);
    const cleared = clearAll(options);
    await vi.runAllTimersAsync();
    expect(await cleared).toEqual({
      idempotencyKeys: 5,
      nudges: 31,
      planRevisions: 201,
      signInCodes: 1001,
      photos: 3,
    });
    const visits = calls.map(({ workshop }) => workshop);
    expect(visits).toEqual([...['one', 'one', 'one', 'one', 'one'], ...['two', 'two'], 'three']);
  });

  it('asks for what is older than 30 days, in steps of 500, and rests between them', async () => {
    steps = new Map([['one', [one('nudges')]]]);
    const cleared = clearAll(options);
    await vi.runAllTimersAsync();
    await cleared;
    const before = new Date(START.getTime() - 30 * DAY_MS);
    expect(calls).toEqual([
      { workshop: 'one', before, atMost: 500, at: START },
      { workshop: 'one', before, atMost: 500, at: new Date(START.getTime() + 100) },
    ]);
  });

  it('stops between two steps when it is told to', async () => {
    steps = new Map([
      ['one', [one('nudges'), one('nudges'), one('nudges')]],
      ['two', [one('nudges')]],
    ]);
    const ending = new AbortController();
    const cleared = clearAll(options, ending.signal);
    await vi.advanceTimersByTimeAsync(100);
    ending.abort();
    await vi.runAllTimersAsync();
    expect(await cleared).toEqual({ ...none, nudges: 2 });
    expect(calls.map(({ workshop }) => workshop)).toEqual(['one', 'one']);
  });
});

describe('clearing day by day', () => {
  it('begins at once, comes again a day later, and says how much went when something did', async () => {
    steps = new Map([['one', []]]);
    const end = keepClearing(options);
    await vi.advanceTimersByTimeAsync(DAY_MS - 1);
    expect([calls.length, lines]).toEqual([1, []]);
    steps.set('one', [one('signInCodes')]);
    await vi.advanceTimersByTimeAsync(1_000);
    expect(calls).toHaveLength(3);
    expect(lines).toEqual([{ level: 'info', details: one('signInCodes') }]);
    await end();
  });

  it('outlives a failure, says why, and tries again the next day', async () => {
    steps = new Map([['one', []]]);
    failing = new Error('connection refused');
    const end = keepClearing(options);
    await vi.advanceTimersByTimeAsync(1);
    expect(lines).toEqual([{ level: 'warn', details: { reason: 'Error: connection refused' } }]);
    failing = null;
    await vi.advanceTimersByTimeAsync(DAY_MS);
    expect(calls).toHaveLength(2);
    expect(lines).toHaveLength(1);
    await end();
  });

  it('ends at once between two days, and does not come again', async () => {
    steps = new Map([['one', []]]);
    const end = keepClearing(options);
    await vi.advanceTimersByTimeAsync(1);
    await end();
    await vi.advanceTimersByTimeAsync(3 * DAY_MS);
    expect(calls).toHaveLength(1);
  });

  it('lets the step under way be done when it is ended, and does no other', async () => {
    steps = new Map([['one', [one('nudges'), one('nudges')]]]);
    const end = keepClearing(options);
    await vi.advanceTimersByTimeAsync(1);
    const ended = end();
    await vi.advanceTimersByTimeAsync(3 * DAY_MS);
    await ended;
    expect(calls).toHaveLength(1);
    expect(lines).toEqual([{ level: 'info', details: one('nudges') }]);
  });
});

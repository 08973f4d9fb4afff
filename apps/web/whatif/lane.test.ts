import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Lane, nextScenarios, QUICK } from './lane.js';

/** Answers only when told to. */
class SlowSquarer {
  readonly begun: number[] = [];
  private pending: (() => void)[] = [];

  ask(what: number, done: (answer: number) => void): void {
    this.begun.push(what);
    this.pending.push(() => done(what * what));
  }

  finish(): void {
    this.pending.shift()?.();
  }

  get isIdle(): boolean {
    return this.pending.length === 0;
  }
}

describe('a lane', () => {
  it('drops what was overtaken before it was begun', () => {
    const squarer = new SlowSquarer();
    const heard: unknown[] = [];
    const lane = new Lane<number, number>(squarer, (...told) => heard.push(told));
    for (const what of [1, 2, 3, 4]) lane.ask(what);
    squarer.finish();
    squarer.finish();
    expect(squarer.begun).toEqual([1, 4]);
    expect(heard).toEqual([
      [1, 1, false],
      [16, 4, true],
    ]);
  });

  it('never begins what was dropped', () => {
    const squarer = new SlowSquarer();
    const lane = new Lane<number, number>(squarer, () => undefined);
    lane.ask(1);
    lane.ask(2);
    lane.drop();
    squarer.finish();
    expect(squarer.begun).toEqual([1]);
    expect(squarer.isIdle).toBe(true);
  });

  it('answers asks in rising order, one at a time, and the last of all', () => {
    // true: an ask comes; false: an answer.
    fc.assert(
      fc.property(fc.array(fc.boolean(), { maxLength: 60 }), (events) => {
        const squarer = new SlowSquarer();
        const heard: number[] = [];
        const lane = new Lane<number, number>(squarer, (_answer, what) => heard.push(what));
        let asked = 0;
        for (const isAsk of events) {
          if (isAsk) lane.ask(++asked);
          else squarer.finish();
        }
        while (!squarer.isIdle) squarer.finish();
        expect(heard).toEqual([...new Set(heard)].sort((a, b) => a - b));
        expect(heard).toEqual(squarer.begun);
        expect(heard.at(-1) ?? 0).toBe(asked);
      }),
    );
  });
});

it('takes fewer scenarios where answers are slow, more where they are fast, within bounds', () => {
  expect(nextScenarios(400, QUICK.slowMs + 1)).toBe(200);
  expect(nextScenarios(200, QUICK.fastMs - 1)).toBe(400);
  expect(nextScenarios(200, (QUICK.slowMs + QUICK.fastMs) / 2)).toBe(200);
  fc.assert(
    fc.property(
      fc.integer({ min: QUICK.least, max: QUICK.most }),
      fc.double({ min: 0, max: 1e4 }),
      (now, took) => {
        const next = nextScenarios(now, Number.isNaN(took) ? 0 : took);
        expect(next).toBeGreaterThanOrEqual(QUICK.least);
        expect(next).toBeLessThanOrEqual(QUICK.most);
      },
    ),
  );
});

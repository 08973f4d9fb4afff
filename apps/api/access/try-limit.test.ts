import fc from 'fast-check';
import { expect, it } from 'vitest';
import { TryLimit } from './try-limit.js';

function limitAt(start = 0, most = 3, spanMs = 60_000) {
  const clock = { ms: start };
  return { clock, limit: new TryLimit(() => new Date(clock.ms), most, spanMs) };
}

it('allows so many tries, then says how long to wait, to the second', () => {
  const { clock, limit } = limitAt();
  for (const at of [0, 10_000, 20_000]) {
    clock.ms = at;
    expect(limit.take()).toBeTypeOf('function');
  }
  clock.ms = 20_500;
  expect(limit.take()).toBe(40);
  clock.ms = 59_999;
  expect(limit.take()).toBe(1);
  clock.ms = 60_000;
  expect(limit.take()).toBeTypeOf('function');
  expect(limit.take()).toBe(10);
});

it('gives right tries back, each once', () => {
  const { limit } = limitAt(0, 1);
  for (let i = 0; i < 5; i += 1) {
    const giveBack = limit.take();
    expect(giveBack).toBeTypeOf('function');
    if (typeof giveBack === 'function') giveBack();
  }
  const [first] = [limit.take()];
  expect(limit.take()).toBe(60);
  if (typeof first === 'function') {
    first();
    first();
  }
  expect(limit.take()).toBeTypeOf('function');
  expect(limit.take()).toBe(60);
});

it('never allows more within any span, whenever the tries come', () => {
  fc.assert(
    fc.property(
      fc.array(fc.integer({ min: 0, max: 40_000 }), { minLength: 1, maxLength: 60 }),
      fc.integer({ min: 1, max: 5 }),
      (gaps, most) => {
        const { clock, limit } = limitAt(0, most);
        const taken: number[] = [];
        for (const gap of gaps) {
          clock.ms += gap;
          const wait = limit.take();
          if (typeof wait === 'function') taken.push(clock.ms);
          else expect(wait).toBeGreaterThan(0);
        }
        for (const from of taken) {
          const within = taken.filter((at) => at >= from && at < from + 60_000);
          expect(within.length).toBeLessThanOrEqual(most);
        }
      },
    ),
  );
});

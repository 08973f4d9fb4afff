import { describe, expect, it } from 'vitest';
import { compileProblem } from './compile-problem.js';
import { loadsOf } from './loads.js';
import type { Problem } from './problem.js';
import { reduceSittings } from './reduce-sittings.js';
import { sittings } from './sittings.js';

/** Stages of ten minutes, one every hundred minutes, that could all be done in a row. */
function scattered(count: number): { p: Problem; starts: Float64Array } {
  const until = 100 * count;
  const stages = Array.from({ length: count }, (_, i) => {
    return { id: `${i}`, duration: 10, calendar: 'hours', uses: [{ resource: 'hands', amount: 1 }] };
  });
  const p: Problem = {
    ...{ stages, lags: [], holds: [], draws: {}, from: 0, until },
    resources: [{ id: 'hands', capacity: 1, busy: [] }],
    calendars: { hours: [{ from: 0, to: until }] },
  };
  return { p, starts: Float64Array.from(stages, (_, i) => 100 * i) };
}

function sittingsAfter(count: number, stop?: () => boolean): number {
  const { p, starts } = scattered(count);
  const x = reduceSittings(p, compileProblem(p, 0.5), loadsOf(p), starts, new Set(), stop);
  return sittings(p, new Map(p.stages.map(({ id }, i) => [id, x[i]!]))).length;
}

describe('reducing sittings', () => {
  it('joins what can be done in a row, and is done with that before a stop counts where little is to be tried', () => {
    expect(sittingsAfter(12)).toBe(1);
    expect(sittingsAfter(12, () => true)).toBe(1);
  });

  it('ends where it is once it is told, where much is to be tried', () => {
    const whole = sittingsAfter(160);
    const stopped = sittingsAfter(160, () => true);
    expect(whole).toBeLessThan(stopped);
    expect(stopped).toBeLessThan(160);
  });

  /** One stage that could be done at once, and one whose only hour comes some days later. */
  const startWith = (laterMin: number): number => {
    const { p, starts } = scattered(2);
    const until = laterMin + 60;
    const calendars = {
      hours: [{ from: 0, to: until }],
      then: [{ from: laterMin, to: until }],
    };
    const [soon, late] = p.stages as [Problem['stages'][0], Problem['stages'][0]];
    const stages = [soon, { ...late, calendar: 'then', earliest: laterMin + 20 }];
    const problem = { ...p, stages, until, calendars };
    starts[1] = laterMin + 20;
    const net = compileProblem(problem, 0.5);
    return reduceSittings(problem, net, loadsOf(problem), starts, new Set())[0]!;
  };

  it('puts nothing off by more than a week', () => {
    const week = 7 * 1440;
    expect(startWith(week - 30)).toBe(week - 20);
    expect(startWith(week)).toBe(0);
  });
});

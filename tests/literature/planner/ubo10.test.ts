import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { schedule, type Problem } from '#planner';
import { scheduleFaults } from '../../support/check-schedule.js';

interface Instance {
  readonly name: string;
  readonly n: number;
  readonly dur: readonly number[];
  readonly cap: readonly number[];
  readonly req: readonly (readonly number[])[];
  readonly lags: readonly (readonly [number, number, number])[];
  readonly expected: { readonly status: 'optimal' | 'infeasible'; readonly makespan?: number };
}

const { instances } = JSON.parse(readFileSync(new URL('ubo10.json', import.meta.url), 'utf8')) as {
  instances: readonly Instance[];
};

/** Source: CITATION.md beside this file. */
describe('RCPSP/max, set UBO10', () => {
  it('has all ten instances', () => expect(instances).toHaveLength(10));

  it.each(instances)('$name: $expected.status $expected.makespan', (instance) => {
    const p = problemOf(instance);
    const outcome = schedule(p, { certainty: 0.5, seed: 1, limit: 20_000 });
    if (instance.expected.status === 'infeasible') {
      expect(outcome.status).toBe('conflict');
      return;
    }
    if (outcome.status !== 'planned') throw new Error(outcome.status);
    expect(scheduleFaults(p, outcome.schedule)).toEqual([]);
    expect(outcome.schedule.starts.get(`${instance.n + 1}`)).toBe(instance.expected.makespan);
  });
});

function problemOf({ n, dur, cap, req, lags }: Instance): Problem {
  const total = dur.reduce((sum, d) => sum + d, 0);
  const longest = lags.reduce((sum, [, , w]) => sum + Math.max(w, 0), total);
  return {
    stages: dur.map((duration, i) => ({
      id: `${i}`,
      duration,
      uses: cap.map((_, r) => ({ resource: `${r}`, amount: req[i]![r]! })),
      ...(i === 0 && { fixed: 0 }),
    })),
    lags: [
      ...lags.map(([i, j, w], k) => ({
        id: `l${k}`,
        from: `${i}`,
        point: 'start' as const,
        to: `${j}`,
        atLeast: { kind: 'known' as const, minutes: w },
      })),
      ...dur.map((_, i) => ({
        id: `end${i}`,
        from: `${i}`,
        point: 'end' as const,
        to: `${n + 1}`,
        atLeast: { kind: 'known' as const, minutes: 0 },
      })),
    ].filter(({ from, to }) => from !== to),
    holds: [],
    resources: cap.map((capacity, r) => ({ id: `${r}`, capacity, busy: [] })),
    calendars: {},
    draws: {},
    from: 0,
    until: longest,
  };
}

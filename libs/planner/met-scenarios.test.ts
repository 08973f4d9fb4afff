import lognormalCdf from '@stdlib/stats-base-dists-lognormal-cdf';
import { describe, expect, it } from 'vitest';
import { odds, plan, type Problem, type Schedule } from '#planner';
import { tileProblem } from '../../tests/support/tile-problem.js';
import { metScenarios } from './odds.js';

const mean = (values: readonly number[]): number => values.reduce((sum, v) => sum + v, 0) / values.length;

describe('scenarios that are met', () => {
  it('are as many as the odds say', () => {
    const p = tileProblem();
    const { outcome } = plan(p, { seed: 3, scenarios: 400 });
    if (outcome.status !== 'planned') throw new Error(outcome.status);
    const options = { seed: 3, scenarios: 700 };
    const met = metScenarios(p, outcome.schedule, options);
    expect(met).toHaveLength(700);
    expect(mean([...met])).toBeCloseTo(odds(p, outcome.schedule, options).onTime, 12);
  });

  /**
   * Two plans with one closing time, one an hour after the other. Whoever keeps the later keeps the earlier, so in
   * pairs the difference d has the variance d (1 − d); its size is that of the log-normal of @stdlib.
   */
  it('are the same weather for two plans: who is in time later is in time earlier', () => {
    const closing = { kind: 'uncertain', median: 600, sigma: 0.4, draw: 'soap' } as const;
    const p: Problem = {
      stages: [
        { id: 'pour', duration: 0, uses: [] },
        { id: 'patch', duration: 0, uses: [] },
      ],
      lags: [{ id: 'close', from: 'pour', point: 'end', to: 'patch', atMost: closing }],
      ...{ holds: [], resources: [], calendars: {}, draws: {}, from: 0, until: 100_000 },
    };
    const at = (patch: number): Schedule => ({
      starts: new Map([
        ['pour', 0],
        ['patch', patch],
      ]),
      precedences: [],
      certainty: 0.5,
    });
    const n = 4000;
    const [early, late] = [500, 560].map((patch) => metScenarios(p, at(patch), { seed: 1, scenarios: n }));
    const gains = [...(early ?? [])].map((met, k) => met - (late?.[k] ?? 0));
    expect(gains.every((gain) => gain >= 0)).toBe(true);
    const cdf = (x: number): number => lognormalCdf(x, Math.log(600), 0.4);
    const d = cdf(560) - cdf(500);
    expect(Math.abs(mean(gains) - d)).toBeLessThan(4 * Math.sqrt((d * (1 - d)) / n));
  });
});

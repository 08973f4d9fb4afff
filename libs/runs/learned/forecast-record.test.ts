import lognormalQuantile from '@stdlib/stats-base-dists-lognormal-quantile';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { RunTeachings } from '#contract';
import { normalQuantile } from '#units';
import { forecastRecord } from './forecast-record.js';

fc.configureGlobal({ seed: 24 });

type Observation = RunTeachings['observations'][number];
const SIGMA = 0.2;
const DOUBT = 0.1;

const seen = (fromDay: number, over: Partial<Observation>): Observation => ({
  ...{ pace: 'set', recipe: 'tiles', sigma: SIGMA, doubt: DOUBT, looks: 1, missed: 0, entries: [] },
  ...{ fromDay, day: fromDay + 3, ...over },
});
const run = (...observations: Observation[]): RunTeachings => ({ observations, earliest: [], weighings: [] });
const verdicts = (teachings: readonly RunTeachings[]): string[] =>
  forecastRecord(teachings)?.forecasts.map(({ verdict }) => verdict) ?? [];

/** How far the band of a workshop without a log reaches either way. Oracle: the log-normal distribution of @stdlib. */
const EDGE = Math.log(lognormalQuantile(0.9, 0, Math.sqrt(SIGMA ** 2 + 0.35 ** 2 + 0.15 ** 2 + DOUBT ** 2)));

describe('the record of past forecasts', () => {
  it('says inside or outside only where the looks leave no doubt', () => {
    const of = (over: Partial<Observation>): string => verdicts([run(seen(100, over))])[0] ?? 'none';
    expect(of({ exact: EDGE - 0.01 })).toBe('inside');
    expect(of({ exact: EDGE + 0.01 })).toBe('later');
    expect(of({ exact: -EDGE - 0.01 })).toBe('earlier');
    expect(of({ above: -EDGE + 0.01, below: EDGE - 0.01 })).toBe('inside');
    expect(of({ above: EDGE - 0.01, below: EDGE + 0.01 })).toBe('unknown');
    expect(of({ above: -2 * EDGE, below: 2 * EDGE })).toBe('unknown');
    expect(of({ above: EDGE + 0.01, below: EDGE + 1 })).toBe('later');
    // Ready at the first look: only that it was not late is known, unless that look was very early.
    expect(of({ below: 0 })).toBe('unknown');
    expect(of({ below: -EDGE - 0.01 })).toBe('earlier');
  });

  it('leaves out what is not ready yet, and tells of the latest thirty', () => {
    expect(forecastRecord([])).toBeUndefined();
    expect(forecastRecord([run(seen(100, { above: 1 }))])).toBeUndefined();
    const many = Array.from({ length: 40 }, (_, i) => run(seen(100 + i, { exact: 0 })));
    const record = forecastRecord(many);
    expect(record?.forecasts).toHaveLength(30);
    expect(record?.forecasts.at(-1)?.day).toBe(142);
    expect(record?.expectedInside).toBe(24);
  });

  const logs = fc.array(
    fc.record({
      recipe: fc.constantFrom('tiles', 'loaf'),
      fromDay: fc.integer({ min: 0, max: 60 }),
      exact: fc.integer({ min: -10, max: 10 }).map((n) => n / 10),
    }),
    { minLength: 1, maxLength: 7 },
  );

  /** What came later must not be known: with it taken away, what is said of the earlier ones stays. */
  it('knows of each batch only what was seen before it began', () => {
    fc.assert(
      fc.property(logs, fc.integer({ min: 0, max: 63 }), (log, until) => {
        const all = log.map(({ fromDay, ...rest }) => seen(fromDay, rest));
        const told = forecastRecord(all.map((each) => run(each)))?.forecasts ?? [];
        const early = all.filter(({ day }) => day <= until);
        const before = forecastRecord(early.map((each) => run(each)))?.forecasts ?? [];
        expect(before).toEqual(told.slice(0, before.length));
      }),
      { numRuns: 25 },
    );
  });

  it('learns: what surprised at first is expected once it came often', () => {
    const slow = Array.from({ length: 9 }, (_, i) => run(seen(100 + 10 * i, { exact: EDGE + 0.1 })));
    expect(verdicts(slow)[0]).toBe('later');
    expect(verdicts(slow).at(-1)).toBe('inside');
    // All begun on one day, none could teach another.
    const atOnce = slow.map((each) => run({ ...each.observations[0]!, fromDay: 100, day: 103 }));
    expect(new Set(verdicts(atOnce))).toEqual(new Set(['later']));
  });

  /** Batches that do vary as forecast: four of five inside, within four standard deviations of a binomial. */
  it('comes to what is expected where batches vary as forecast', () => {
    let [inside, count] = [0, 0];
    for (let workshop = 1; workshop <= 12; workshop++) {
      const offset = 0.35 * normalQuantile((workshop - 0.5) / 12);
      const recipe = 0.18 * normalQuantile(((workshop * 5) % 12) / 12 + 1 / 24);
      const teachings = Array.from({ length: 12 }, (_, i) => {
        const luck = SIGMA * normalQuantile(((i * 7 + workshop * 5) % 12) / 12 + 1 / 24);
        return run(seen(100 + 10 * i, { exact: offset + recipe + luck }));
      });
      for (const verdict of verdicts(teachings)) {
        count++;
        if (verdict === 'inside') inside++;
      }
    }
    const spread = Math.sqrt(count * 0.8 * 0.2);
    expect(Math.abs(inside - 0.8 * count)).toBeLessThan(4 * spread);
  });
});

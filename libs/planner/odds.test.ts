import lognormalCdf from '@stdlib/stats-base-dists-lognormal-cdf';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkProblem, odds, schedule, type Length, type Problem, type Schedule } from '#planner';
import { scheduleFaults } from '../../tests/support/check-schedule.js';
import { randomProblem } from '../../tests/support/random-problem.js';
import { tileProblem } from '../../tests/support/tile-problem.js';

const plain = { holds: [], resources: [], calendars: {}, draws: {}, from: 0, until: 100_000 };
const uncertain = (median: number, sigma: number, draw: string): Length => ({
  kind: 'uncertain',
  median,
  sigma,
  draw,
});
const at = (starts: Record<string, number>, certainty = 0.5): Schedule => ({
  starts: new Map(Object.entries(starts)),
  precedences: [],
  certainty,
});
const pourThenUnmould = [
  { id: 'pour', duration: 0, uses: [] },
  { id: 'unmould', duration: 10, uses: [] },
];

describe('odds', () => {
  /** Oracle: P(not too late) = 1 - F(planned start), F the log-normal of @stdlib. Within four standard errors. */
  it.each([400, 600, 800])('has the closed form of a single closing time, planned at %d', (planned) => {
    const p: Problem = {
      ...plain,
      stages: pourThenUnmould,
      lags: [{ id: 'l', from: 'pour', point: 'end', to: 'unmould', atMost: uncertain(700, 0.4, 'close') }],
    };
    const found = odds(p, at({ pour: 0, unmould: planned }), { seed: 5, scenarios: 20_000 });
    const expected = 1 - lognormalCdf(planned, Math.log(700), 0.4);
    expect(Math.abs(found.onTime - expected)).toBeLessThan(4 * found.standardError);
    expect(found.losses).toHaveLength(1);
    expect(found.losses[0]).toMatchObject({ stage: 'unmould', missed: { kind: 'lag-at-most', lag: 'l' } });
    expect(found.losses[0]?.share).toBeCloseTo(1 - found.onTime, 12);
  });

  /** The same with all of the work to be done in time: F at the planned end, 200 minutes after the start. */
  it('counts a closing time to the end where the last piece must be done in time', () => {
    const p: Problem = {
      ...plain,
      stages: [pourThenUnmould[0]!, { id: 'unmould', duration: 200, uses: [] }],
      lags: [
        {
          ...{ id: 'l', from: 'pour', point: 'end', to: 'unmould', until: 'end' },
          atMost: uncertain(700, 0.4, 'close'),
        },
      ],
    };
    const found = odds(p, at({ pour: 0, unmould: 400 }), { seed: 5, scenarios: 20_000 });
    const expected = 1 - lognormalCdf(600, Math.log(700), 0.4);
    expect(Math.abs(found.onTime - expected)).toBeLessThan(4 * found.standardError);
  });

  /**
   * One opening of the hours and tests every 30 minutes from 600 to 690: ready by the last test, or lost. Oracle: F at the
   * last test, 690, by @stdlib.
   */
  it('tests again while the hours last, and loses the scenario when they do not come again', () => {
    const p: Problem = {
      ...plain,
      stages: pourThenUnmould.map((stage) =>
        stage.id === 'unmould' ? { ...stage, calendar: 'hours' } : stage,
      ),
      lags: [{ id: 'l', from: 'pour', point: 'end', to: 'unmould', atLeast: uncertain(600, 0.3, 'set') }],
      calendars: { hours: [{ from: 600, to: 710 }] },
    };
    const found = odds(p, at({ pour: 0, unmould: 600 }), { seed: 6, scenarios: 20_000 });
    const expected = lognormalCdf(690, Math.log(600), 0.3);
    expect(Math.abs(found.onTime - expected)).toBeLessThan(4 * found.standardError);
    expect(found.losses[0]?.missed).toEqual({ kind: 'lag-at-least', lag: 'l' });
  });

  /**
   * The same after a pour of 40 minutes, from whose end the lag counts: the test at 690 comes 650 minutes into it. Oracle:
   * F(650) by @stdlib.
   */
  it('tests what has set since the end of a pour, not since its start', () => {
    const p: Problem = {
      ...plain,
      stages: [
        { id: 'pour', duration: 40, uses: [] },
        { id: 'unmould', duration: 10, uses: [], calendar: 'hours' },
      ],
      lags: [{ id: 'l', from: 'pour', point: 'end', to: 'unmould', atLeast: uncertain(600, 0.3, 'set') }],
      calendars: { hours: [{ from: 600, to: 710 }] },
    };
    const found = odds(p, at({ pour: 0, unmould: 600 }), { seed: 6, scenarios: 20_000 });
    const expected = lognormalCdf(650, Math.log(600), 0.3);
    expect(Math.abs(found.onTime - expected)).toBeLessThan(4 * found.standardError);
  });

  /**
   * What was seen counts: still not ready at 1 standard deviation. Oracle: (F(t) - F(seen)) / (1 - F(seen)) at the only
   * test the horizon leaves.
   */
  it('conditions on what was observed', () => {
    const p: Problem = {
      ...plain,
      until: 1000,
      stages: pourThenUnmould,
      lags: [{ id: 'l', from: 'pour', point: 'end', to: 'unmould', atLeast: uncertain(600, 0.3, 'set') }],
      draws: { set: { above: 1 } },
    };
    const found = odds(p, at({ pour: 0, unmould: 1000 }), { seed: 7, scenarios: 20_000 });
    const cdf = (t: number): number => lognormalCdf(t, Math.log(600), 0.3);
    const seen = cdf(600 * Math.exp(0.3));
    expect(Math.abs(found.onTime - (cdf(1000) - seen) / (1 - seen))).toBeLessThan(4 * found.standardError);
  });

  /**
   * The batch must be used within 35 minutes, and the base may not be firm. The maker touches the base before making the
   * batch; while it is soft it will, more likely than not, stay soft for longer than 35 minutes (the median of what is
   * left at 590 is about 120), so the maker waits and loses nothing. Planned blindly, F(630) = 0.56 would be kept.
   */
  it('looks ahead for what hangs rigidly on the stage at hand', () => {
    const p: Problem = {
      ...plain,
      stages: [
        ...pourThenUnmould.slice(0, 1),
        ...['batch', 'pipe'].map((id) => ({ id, duration: 5, uses: [] })),
      ],
      lags: [
        { id: 'firm', from: 'pour', point: 'end', to: 'pipe', atLeast: uncertain(600, 0.3, 'set') },
        {
          id: 'use',
          from: 'batch',
          point: 'end',
          to: 'pipe',
          atLeast: { kind: 'known', minutes: 5 },
          atMost: { kind: 'known', minutes: 35 },
        },
      ],
    };
    const found = odds(p, at({ pour: 0, batch: 590, pipe: 600 }), { seed: 8, scenarios: 4000 });
    expect(found.onTime).toBe(1);
  });

  /**
   * The glaze must be mixed 35 minutes before the piping at the latest, and is mixed at 610. The base was soft at 600, and
   * half of what is soft at 610 is firm by 628 (F(628) - F(610) = 1 - F(628)), so nothing speaks against it; but nobody knows
   * at 610 what the next test will show. That comes at 630, and the one after too late. Oracle: F(630) by @stdlib.
   */
  it('does not know at one stage what a later test of another will show', () => {
    const p: Problem = {
      ...plain,
      stages: [pourThenUnmould[0]!, ...['pipe', 'mix'].map((id) => ({ id, duration: 5, uses: [] }))],
      lags: [
        { id: 'firm', from: 'pour', point: 'end', to: 'pipe', atLeast: uncertain(600, 0.05, 'set') },
        { id: 'use', from: 'mix', point: 'start', to: 'pipe', atMost: { kind: 'known', minutes: 35 } },
      ],
    };
    const found = odds(p, at({ pour: 0, pipe: 600, mix: 610 }), { seed: 10, scenarios: 20_000 });
    const expected = lognormalCdf(630, Math.log(600), 0.05);
    expect(Math.abs(found.onTime - expected)).toBeLessThan(4 * found.standardError);
  });

  it('keeps a promise fixed in the future: what is not ready by then is lost', () => {
    const p: Problem = {
      ...plain,
      stages: [pourThenUnmould[0]!, { ...pourThenUnmould[1]!, fixed: 700 }],
      lags: [{ id: 'l', from: 'pour', point: 'end', to: 'unmould', atLeast: uncertain(600, 0.3, 'set') }],
    };
    const found = odds(p, at({ pour: 0, unmould: 700 }), { seed: 9, scenarios: 20_000 });
    const expected = lognormalCdf(700, Math.log(600), 0.3);
    expect(Math.abs(found.onTime - expected)).toBeLessThan(4 * found.standardError);
  });

  it('is certain where nothing is uncertain', () => {
    const found = odds({ ...plain, stages: pourThenUnmould, lags: [] }, at({ pour: 0, unmould: 9 }), {
      seed: 1,
      scenarios: 10,
    });
    expect(found).toEqual({
      atAll: 1,
      onTime: 1,
      asPlanned: 1,
      countOn: new Map([['unmould', 9]]),
      standardError: 0,
      scenarios: 10,
      seed: 1,
      losses: [],
    });
  });

  /** Nothing is left to chance, so the schedule, valid by the independent checker, is simply carried out. */
  it('is 1 for every valid schedule of known lags, whatever its resources and hours', () => {
    let planned = 0;
    fc.assert(
      fc.property(randomProblem({ stages: 6, until: 40, calendars: true, resources: true }), (p) => {
        fc.pre(checkProblem(p).length === 0);
        const outcome = schedule(p, { certainty: 0.5, seed: 1 });
        if (outcome.status !== 'planned') return;
        planned++;
        expect(scheduleFaults(p, outcome.schedule)).toEqual([]);
        expect(odds(p, outcome.schedule, { seed: 1, scenarios: 1 }).losses).toEqual([]);
      }),
      { numRuns: 300, seed: 31 },
    );
    expect(planned).toBeGreaterThan(60);
  });

  const tiles = tileProblem();
  const planned = schedule(tiles, { certainty: 0.7, seed: 1 });
  const tilePlan = planned.status === 'planned' ? planned.schedule : at({});

  it('answers the same for the same seed, another for another', () => {
    const ask = (seed: number) => odds(tiles, tilePlan, { seed, scenarios: 500 });
    expect(ask(3)).toEqual(ask(3));
    expect(ask(3).onTime).not.toBe(ask(4).onTime);
  });

  /** Over 40 seeds the spread of the answers must be the standard error they state: chi-square with 39 degrees, 0.1 %. */
  it('states its standard error truly', () => {
    const scenarios = 400;
    const answers = Array.from({ length: 40 }, (_, seed) => odds(tiles, tilePlan, { seed, scenarios }));
    const mean = answers.reduce((sum, { onTime }) => sum + onTime, 0) / 40;
    expect(mean).toBeGreaterThan(0.05);
    expect(mean).toBeLessThan(0.95);
    const variance = answers.reduce((sum, { onTime }) => sum + (onTime - mean) ** 2, 0);
    const statistic = variance / ((mean * (1 - mean)) / scenarios);
    // Quantiles 0.0005 and 0.9995 of chi-square with 39 degrees of freedom, from memory rounded outwards.
    expect(statistic).toBeGreaterThan(14);
    expect(statistic).toBeLessThan(76);
  });
});

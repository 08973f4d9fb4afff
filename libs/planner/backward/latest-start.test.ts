import lognormalQuantile from '@stdlib/stats-base-dists-lognormal-quantile';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkProblem, latestStart, plan, type Length, type Problem } from '#planner';
import { sampleDraws } from '../draws.js';
import { hindsightBegins, shareFrom } from './hindsight-bound.js';
import { randomProblem } from '../../../tests/support/random-problem.js';

const scenarios = 60;

/** Work in a row with waits between, as it is with soap: ready after a while, often too late after another. */
const row: fc.Arbitrary<Problem> = fc
  .record({
    waits: fc.array(
      fc.record({
        duration: fc.integer({ min: 1, max: 3 }),
        opens: fc.integer({ min: 1, max: 14 }),
        closes: fc.option(fc.integer({ min: 8, max: 30 }), { nil: undefined }),
        sigma: fc.constantFrom(0.15, 0.4, 0.8),
      }),
      { minLength: 1, maxLength: 3 },
    ),
    hours: fc.uniqueArray(fc.integer({ min: 0, max: 60 }), { minLength: 8, maxLength: 16 }),
    cure: fc.integer({ min: 2, max: 15 }),
    due: fc.integer({ min: 40, max: 90 }),
    aside: fc.boolean(),
  })
  .map(({ waits, hours, cure, due, aside }): Problem => {
    const bench = { uses: [{ resource: 'hands', amount: 1 }], calendar: 'hours' };
    const marks = [...hours].sort((a, b) => a - b);
    const length = (median: number, sigma: number, draw: string): Length => ({
      kind: 'uncertain',
      median,
      sigma,
      draw,
    });
    return {
      stages: [
        { id: 's0', duration: 2, ...bench },
        ...waits.map(({ duration }, k) => ({ id: `s${String(k + 1)}`, duration, ...bench })),
        ...(aside ? [{ id: 'aside', duration: 1, ...bench }] : []),
        { id: 'ready', duration: 0, uses: [], latest: due },
      ],
      lags: [
        ...waits.map(({ opens, closes, sigma }, k) => ({
          id: `w${String(k)}`,
          from: `s${String(k)}`,
          point: 'end' as const,
          to: `s${String(k + 1)}`,
          atLeast: length(opens, sigma, 'set'),
          ...(closes !== undefined && { atMost: length(closes + opens, sigma, k === 1 ? 'other' : 'set') }),
        })),
        {
          id: 'cure',
          from: `s${String(waits.length)}`,
          point: 'end',
          to: 'ready',
          atLeast: length(cure, 0.3, 'cure'),
        },
      ],
      holds: [],
      resources: [{ id: 'hands', capacity: 1, busy: [{ from: 20, to: 24, amount: 1 }] }],
      calendars: {
        hours: marks.flatMap((to, i) => (i % 2 === 1 ? [{ from: marks[i - 1]!, to }] : [])),
      },
      draws: {},
      from: 0,
      until: 90,
    };
  });

/** Anything at all, with lags of both signs, all of them known. */
const any = randomProblem({ stages: 4, until: 40, calendars: true, resources: true })
  .map((p) => ({
    ...p,
    stages: p.stages.map(({ fixed: _done, ...stage }) => ({
      ...stage,
      duration: Math.max(1, stage.duration),
    })),
  }))
  .filter((p) => checkProblem(p).length === 0);

/** Every minute tried, the latest first, by nothing but `plan`. */
function byTryingAll(p: Problem, level: number): { begin: number; probability: number }[] {
  return Array.from({ length: p.until - p.from + 1 }, (_, k) => p.until - k).flatMap((from) => {
    const { outcome, odds } = plan({ ...p, from }, { seed: 1, scenarios, oddsAlone: true });
    if (outcome.status !== 'planned' || odds === null || odds.onTime < level) return [];
    return [{ begin: beginOf(p, outcome.schedule.starts), probability: odds.onTime }];
  });
}

function beginOf(p: Problem, starts: ReadonlyMap<string, number>): number {
  return Math.min(...p.stages.flatMap(({ id, duration }) => (duration > 0 ? [starts.get(id)!] : [])));
}

describe('latest start', () => {
  it('is the one that trying every minute finds, or the best odds where the level is out of reach', () => {
    const seen = { found: 0, 'out-of-reach': 0, 'no-plan': 0 };
    let uncertain = 0;
    fc.assert(
      fc.property(fc.oneof(row, row, row, any), fc.constantFrom(0.5, 0.8, 0.95), (p, level) => {
        const options = { level, seed: 1, scenarios, stepMin: 1, mostTried: Infinity, lookBackMin: Infinity };
        const answer = latestStart(p, options);
        if (answer.status === 'not-settled') throw new Error('nothing told it to stop');
        seen[answer.status]++;
        const all = byTryingAll(p, 0);
        const last = all.find(({ probability }) => probability >= level);
        if (answer.status === 'found') {
          expect(answer.found.begin).toBe(last?.begin);
          expect(answer.found.odds.onTime).toBe(last?.probability);
          if (answer.found.odds.onTime < 1) uncertain++;
          return;
        }
        expect(last).toBeUndefined();
        if (answer.status === 'no-plan') expect(all).toEqual([]);
        else {
          const most = Math.max(...all.map(({ probability }) => probability));
          expect(answer.best.odds.onTime).toBe(most);
          expect(answer.best.begin).toBe(all.find(({ probability }) => probability === most)?.begin);
          expect(answer.bound).toBeGreaterThanOrEqual(most);
        }
      }),
      { numRuns: 60, seed: 61 },
    );
    expect(Math.min(...Object.values(seen), uncertain)).toBeGreaterThan(5);
  });

  it('keeps its promise at coarse steps too, and is exact to the minute within the hours it found', () => {
    let overlooked = 0;
    fc.assert(
      fc.property(row, (p) => {
        const level = 0.7;
        const coarse = latestStart(p, { level, seed: 1, scenarios, stepMin: 7 });
        const all = byTryingAll(p, level);
        if (coarse.status !== 'found') {
          if (all.length > 0) overlooked++;
          return;
        }
        const { found } = coarse;
        expect(found.odds.onTime).toBeGreaterThanOrEqual(level);
        const hours = p.calendars['hours']!.find(({ from, to }) => from <= found.begin && found.begin < to)!;
        expect(found.begin).toBe(all.find(({ begin }) => begin < hours.to)?.begin);
        if (all[0]!.begin !== found.begin) overlooked++;
      }),
      { numRuns: 40, seed: 62 },
    );
    expect(overlooked).toBeLessThan(4);
  });

  it('is not settled once it is told to stop, and ends soon after', () => {
    const many = { level: 0.9, seed: 1, scenarios: 400 };
    let settled = 0;
    fc.assert(
      fc.property(row, fc.integer({ min: 1, max: 400 }), (p, most) => {
        let asked = 0;
        const answer = latestStart(p, { ...many, stop: () => ++asked > most });
        // Once for each requirement that a conflict might do without.
        expect(asked).toBeLessThan(most + 60);
        if (asked > most) expect(answer).toEqual({ status: 'not-settled' });
        else {
          settled++;
          expect(answer).toEqual(latestStart(p, many));
        }
      }),
      { numRuns: 40, seed: 64 },
    );
    expect(settled).toBeLessThan(35);
  });

  it('never promises more than hindsight allows', () => {
    fc.assert(
      fc.property(row, fc.integer({ min: 0, max: 60 }), (p, from) => {
        const { outcome, odds } = plan({ ...p, from }, { seed: 3, scenarios });
        fc.pre(outcome.status === 'planned' && odds !== null);
        const begins = hindsightBegins(p, sampleDraws(p, 3), scenarios);
        expect(shareFrom(begins, from)).toBeGreaterThanOrEqual(odds?.onTime ?? 1);
      }),
      { numRuns: 200, seed: 63 },
    );
  });

  /**
   * One pour, then a cure to a day, at any hour: begun t before the day, the odds are the distribution function of the
   * log-normal at t less the pour. Oracle: quantile of @stdlib/stats-base-dists-lognormal-quantile.
   */
  it.each([0.5, 0.8, 0.9, 0.99])('at odds of %f lies one quantile of the cure before the day', (level) => {
    const [median, sigma, due, duration] = [50_000, 0.2, 200_000, 60];
    const answer = latestStart(cureOnly({ median, sigma, due, duration }), {
      level,
      seed: 5,
      scenarios: 4000,
    });
    if (answer.status !== 'found') throw new Error(answer.status);
    const before = due - duration - answer.found.begin;
    // Four standard errors of the share either way.
    const error = 4 * Math.sqrt((level * (1 - level)) / 4000);
    expect(before).toBeGreaterThan(lognormalQuantile(level - error, Math.log(median), sigma));
    expect(before).toBeLessThan(lognormalQuantile(Math.min(level + error, 1), Math.log(median), sigma));
    expect(answer.tooLate?.from).toBe(answer.found.begin + 1);
    expect(answer.tooLate?.odds?.onTime ?? 0).toBeLessThan(level);
  });

  /** Ready 600 minutes later, give or take nothing much, and too late after 700: only hours at that distance will do. */
  it('goes back past hours from which the next step would fall into the night', () => {
    const length = (median: number): Length => ({ kind: 'uncertain', median, sigma: 0.01, draw: 'set' });
    const open = (from: number, to: number) => ({ from, to });
    const base = cureOnly({ median: 100, sigma: 0.01, due: 10_000, duration: 20 });
    const p: Problem = {
      ...base,
      stages: [
        { id: 'pour', duration: 20, uses: [], calendar: 'hours' },
        { id: 'unmould', duration: 20, uses: [], calendar: 'hours' },
      ],
      lags: [
        { id: 'set', from: 'pour', point: 'end', to: 'unmould', atLeast: length(600), atMost: length(700) },
      ],
      calendars: { hours: [open(0, 200), open(700, 800), open(2000, 2200), open(2300, 2500)] },
    };
    const answer = latestStart(p, { level: 0.8, seed: 1, scenarios: 200, lookBackMin: Infinity });
    // Firm about 620 after the start, and the last start of the unmoulding in those hours is at 780.
    if (answer.status !== 'found') throw new Error(answer.status);
    expect(answer.found.begin).toBeGreaterThan(140);
    expect(answer.found.begin).toBeLessThanOrEqual(160);
    expect(answer.tooLate?.from).toBe(answer.found.begin + 1);
  });

  it('says so where nothing is left to begin, and refuses odds that are none', () => {
    const p = cureOnly({ median: 100, sigma: 0.1, due: 1000, duration: 10 });
    const done = { ...p, stages: p.stages.map((s) => (s.id === 'pour' ? { ...s, fixed: 0 } : s)) };
    expect(() => latestStart(done, { level: 0.9, seed: 1, scenarios: 10 })).toThrow(
      'nothing is left to begin',
    );
    expect(() => latestStart(p, { level: 1.2, seed: 1, scenarios: 10 })).toThrow('odds of 1.2');
  });
});

function cureOnly(given: { median: number; sigma: number; due: number; duration: number }): Problem {
  const { median, sigma, due, duration } = given;
  return {
    stages: [
      { id: 'pour', duration, uses: [] },
      { id: 'ready', duration: 0, uses: [], latest: due },
    ],
    lags: [
      {
        id: 'cure',
        from: 'pour',
        point: 'end',
        to: 'ready',
        atLeast: { kind: 'uncertain', median, sigma, draw: 'cure' },
      },
    ],
    holds: [],
    resources: [],
    calendars: {},
    draws: {},
    from: 0,
    until: due,
  };
}

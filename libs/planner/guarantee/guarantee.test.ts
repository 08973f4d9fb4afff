import quantile from '@stdlib/stats-base-dists-lognormal-quantile';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { schedule, type Lag, type Length, type Problem, type Requirement, type Schedule } from '#planner';
import { winsAgainstSoap } from '../../../tests/support/soap-game.js';
import { uncertainProblem } from '../../../tests/support/uncertain-problem.js';
import { requirementsOf, restrict, restrictPrecedences } from '../requirements.js';
import { guarantee } from './guarantee.js';

const known = (minutes: number): Length => ({ kind: 'known', minutes });
const soap = (median: number, sigma: number, draw: string): Length => ({
  kind: 'uncertain',
  median,
  sigma,
  draw,
});
const plain: Problem = {
  ...{ stages: [], lags: [], holds: [], resources: [], calendars: {}, draws: {} },
  ...{ from: 0, until: 10_000 },
};

/** The order of a plan made at likely values, in which all stages find a place. */
function planned(p: Problem, certainty = 0.5): Schedule {
  const outcome = schedule(p, { certainty, seed: 1 });
  if (outcome.status !== 'planned') throw new Error(outcome.status);
  return outcome.schedule;
}

const pour = { id: 'pour', duration: 20, uses: [] };
const unmould = { id: 'unmould', duration: 15, uses: [] };
const patch = { id: 'patch', duration: 30, uses: [] };
const firm: Lag = {
  ...{ id: 'firm', from: 'pour', point: 'end', to: 'unmould' },
  atLeast: soap(2160, 0.35, 'set'),
};
const pliable: Lag = {
  ...{ id: 'pliable', from: 'pour', point: 'end', to: 'patch', until: 'end' },
  atMost: soap(3300, 0.35, 'set'),
};
const after: Lag = { id: 'after', from: 'unmould', point: 'end', to: 'patch', atLeast: known(0) };

describe('guarantee', () => {
  it('holds up to the day that the 90th percentile of the cure leaves, and not a minute less', () => {
    // Outside check: quantile of the log-normal by @stdlib/stats-base-dists-lognormal-quantile.
    const slow = Math.ceil(quantile(0.9, Math.log(5000), 0.3));
    const ready = (latest: number): Problem => ({
      ...{ ...plain, until: 100_000 },
      stages: [
        { ...pour, fixed: 100 },
        { id: 'cured', duration: 0, uses: [], latest },
      ],
      lags: [{ id: 'cure', from: 'pour', point: 'end', to: 'cured', atLeast: soap(5000, 0.3, 'cure') }],
    });
    const [kept, missed] = [ready(120 + slow), ready(120 + slow - 1)];
    expect(guarantee(kept, planned(kept))).toEqual({ holds: true });
    expect(guarantee(missed, planned(missed))).toEqual({
      holds: false,
      requirements: [
        { kind: 'latest', stage: 'cured' },
        { kind: 'lag-at-least', lag: 'cure' },
      ],
    });
  });

  it('knows that a batch slow to firm is slow to stiffen, but only of one batch', () => {
    // Firm at the 90th percentile (3383) is past pliable at the 10th (2107), but never of one draw.
    const one: Problem = { ...plain, stages: [pour, unmould, patch], lags: [firm, pliable, after] };
    expect(guarantee(one, planned(one))).toEqual({ holds: true });
    const two: Problem = { ...one, lags: [firm, { ...pliable, atMost: soap(3300, 0.35, 'other') }, after] };
    expect(guarantee(two, planned(two))).toEqual({
      holds: false,
      requirements: [
        { kind: 'lag-at-most', lag: 'pliable' },
        { kind: 'lag-at-least', lag: 'after' },
        { kind: 'lag-at-least', lag: 'firm' },
      ],
    });
  });

  it('leaves no room where unmoulding and patching outlast what lies between the two states', () => {
    // At the 10th percentile the states lie 2107 − 1379 = 728 minutes apart; 15 + 713 just fit.
    const lasting = (duration: number): Problem => ({
      ...plain,
      stages: [pour, unmould, { ...patch, duration }],
      lags: [firm, pliable, after],
    });
    expect(guarantee(lasting(712), planned(lasting(712))).holds).toBe(true);
    expect(guarantee(lasting(714), planned(lasting(714))).holds).toBe(false);
  });

  it('knows how far apart two states of one draw come at most', () => {
    const p = (atMost: number): Problem => ({
      ...plain,
      stages: [pour, unmould, patch],
      lags: [
        { ...firm, atMost: soap(2400, 0.35, 'set'), until: 'end' },
        { id: 'hard', from: 'pour', point: 'end', to: 'patch', atLeast: soap(3000, 0.35, 'set') },
        { ...after, atMost: known(atMost) },
      ],
    });
    // Unmoulding can end 153 after the soap is firm, not later; it is hard 1316 after that at most.
    expect(guarantee(p(1316 - 153), planned(p(1316 - 153))).holds).toBe(true);
    expect(guarantee(p(1315 - 153), planned(p(1315 - 153))).holds).toBe(false);
  });

  it('tells a layer from another of the same recipe that was poured at another time', () => {
    const second = { ...pour, id: 'second' };
    const layers = (atMost: number): Problem => ({
      ...plain,
      stages: [pour, second, unmould, patch],
      lags: [
        { id: 'soon', from: 'pour', point: 'end', to: 'second', atLeast: known(0), atMost: known(atMost) },
        firm,
        { ...firm, id: 'second firm', from: 'second' },
        pliable,
        after,
      ],
    });
    // The first is pliable until 728 minutes after the second is firm, less the 20 + 600 between their ends.
    expect(guarantee(layers(600), planned(layers(600))).holds).toBe(true);
    expect(guarantee(layers(700), planned(layers(700))).holds).toBe(false);
    const poured = layers(700);
    const done = { ...poured, stages: [{ ...pour, fixed: 0 }, { ...second, fixed: 60 }, unmould, patch] };
    expect(guarantee(done, planned(done)).holds).toBe(true);
  });

  it('names hands that two short windows ask for at once', () => {
    const hands = [{ resource: 'hands', amount: 1 }];
    const tray = (name: string): Problem['stages'] => [
      { id: `pour ${name}`, duration: 10, uses: [], fixed: 0 },
      { id: `glaze ${name}`, duration: 40, uses: hands },
    ];
    const glazes = (name: string): Lag => ({
      ...{ id: name, from: `pour ${name}`, point: 'end', to: `glaze ${name}`, until: 'end' },
      ...{ atLeast: soap(30, 0.2, `${name} skins`), atMost: soap(150, 0.2, `${name} sets`) },
    });
    const p: Problem = {
      ...plain,
      stages: [...tray('a'), ...tray('b')],
      lags: [glazes('a'), glazes('b')],
      resources: [{ id: 'hands', capacity: 1, busy: [] }],
    };
    // Skinned by 39 at most, set from 116 on: 39 + 40 + 40 > 116.
    const found = guarantee(p, planned(p));
    expect(found).toMatchObject({ holds: false });
    expect(found.holds ? [] : found.requirements.map(({ kind }) => kind).toSorted()).toEqual([
      ...['lag-at-least', 'lag-at-most', 'resource'],
    ]);
    const two = { ...p, resources: [{ id: 'hands', capacity: 2, busy: [] }] };
    expect(guarantee(two, planned(two)).holds).toBe(true);
  });

  it('keeps clear of what others hold', () => {
    const p = (to: number): Problem => ({
      ...plain,
      stages: [{ ...pour, uses: [{ resource: 'tray', amount: 1 }], latest: 50 }],
      resources: [{ id: 'tray', capacity: 1, busy: [{ from: 0, to, amount: 1 }] }],
    });
    const order: Schedule = { starts: new Map([['pour', 60]]), precedences: [], certainty: 0.5 };
    expect(guarantee(p(50), order)).toEqual({ holds: true });
    expect(guarantee(p(51), order)).toEqual({
      holds: false,
      requirements: [
        { kind: 'latest', stage: 'pour' },
        { kind: 'resource', resource: 'tray', stages: ['pour'] },
      ],
    });
  });

  it('goes by what was observed', () => {
    const due: Problem = {
      ...plain,
      stages: [
        { ...pour, fixed: 0 },
        { ...unmould, latest: 3300 },
      ],
      lags: [firm],
    };
    expect(guarantee(due, planned(due)).holds).toBe(false);
    const early = { ...due, draws: { set: { below: 0.5 } } };
    expect(guarantee(early, planned(early)).holds).toBe(true);
    const late = {
      ...due,
      stages: [
        { ...pour, fixed: 0 },
        { ...unmould, latest: 3500 },
      ],
    };
    expect(guarantee(late, planned(late)).holds).toBe(true);
    const notYet = { ...late, draws: { set: { above: 0.5 } } };
    expect(guarantee(notYet, planned(notYet)).holds).toBe(false);
  });

  it('takes a band of one minute, and one that begins at once, as they are', () => {
    const p = (median: number, sigma: number, latest: number): Problem => ({
      ...plain,
      stages: [
        { ...pour, fixed: -500 },
        { ...unmould, latest },
      ],
      lags: [{ ...firm, atLeast: soap(median, sigma, 'set') }],
      from: -500,
    });
    expect(guarantee(p(60, 1e-12, -420), planned(p(60, 1e-12, -420))).holds).toBe(true);
    expect(guarantee(p(60, 1e-12, -421), { ...planned(p(60, 1e-12, -420)) }).holds).toBe(false);
    // From 0.2 to 1.9 minutes: within 0 and 2.
    expect(guarantee(p(0.6, 0.9, -478), planned(p(0.6, 0.9, -478))).holds).toBe(true);
    expect(guarantee(p(0.6, 0.9, -479), planned(p(0.6, 0.9, -478))).holds).toBe(false);
  });

  /** A plan that is certain to its minutes is a way to carry its order through. */
  it('holds for every plan made at the same certainty', () => {
    let plans = 0;
    const problems = uncertainProblem({
      stages: 6,
      until: 90,
      medians: { min: 2, max: 20 },
      draws: ['x', 'y'],
    });
    fc.assert(
      fc.property(problems, (p) => {
        const outcome = schedule(p, { certainty: 0.9, seed: 1 });
        if (outcome.status !== 'planned') return;
        plans++;
        expect(guarantee(p, outcome.schedule)).toEqual({ holds: true });
      }),
      { seed: 31, numRuns: 700 },
    );
    expect(plans).toBeGreaterThan(50);
  });

  it('still holds where the soap is allowed less', () => {
    const seen = { kept: 0, gained: 0 };
    const problems = uncertainProblem({ stages: 6, until: 60, medians: { min: 2, max: 20 } });
    fc.assert(
      fc.property(problems, (p) => {
        const outcome = schedule(p, { certainty: 0.5, seed: 1 });
        if (outcome.status !== 'planned') return;
        const [wide, narrow] = [0.9, 0.7].map((certainty) => guarantee(p, outcome.schedule, certainty).holds);
        if (wide === true) expect(narrow).toBe(true);
        if (narrow === true) seen[wide === true ? 'kept' : 'gained']++;
      }),
      { seed: 35, numRuns: 700 },
    );
    expect(seen.kept).toBeGreaterThan(50);
    expect(seen.gained).toBeGreaterThan(5);
  });

  /** Oracle: exhaustive game in tests/support/soap-game.ts. */
  it('agrees with the game against the soap played out, where every length has a draw of its own', () => {
    const seen = { won: 0, lost: 0 };
    const problems = uncertainProblem({ stages: 4, until: 14, medians: { min: 2, max: 5 } });
    fc.assert(
      fc.property(problems, (p) => {
        const outcome = schedule(p, { certainty: 0.5, seed: 1 });
        if (outcome.status !== 'planned') return;
        const wins = winsAgainstSoap(p, outcome.schedule.precedences, 0.9);
        seen[wins ? 'won' : 'lost']++;
        expect(guarantee(p, outcome.schedule).holds).toBe(wins);
      }),
      { seed: 32, numRuns: 600 },
    );
    expect(Math.min(seen.won, seen.lost)).toBeGreaterThan(60);
  });

  it('names requirements that cannot all be kept, none of which can be left out', () => {
    let lost = 0;
    const problems = uncertainProblem({ stages: 6, until: 60, medians: { min: 2, max: 20 } });
    fc.assert(
      fc.property(problems, (p) => {
        const outcome = schedule(p, { certainty: 0.5, seed: 1 });
        if (outcome.status !== 'planned') return;
        const found = guarantee(p, outcome.schedule);
        if (found.holds) return;
        lost++;
        const left = (kept: readonly Requirement[]): boolean => {
          // What uses hands no longer matters: the order of the schedule says it all.
          const order = restrictPrecedences(outcome.schedule.precedences, kept);
          return guarantee(restrict(p, kept), { ...outcome.schedule, precedences: order }).holds;
        };
        expect(left(requirementsOf(p).concat(ordered(outcome.schedule)))).toBe(false);
        expect(left(found.requirements)).toBe(false);
        for (const each of found.requirements) {
          expect(left(found.requirements.filter((other) => other !== each))).toBe(true);
        }
      }),
      { seed: 33, numRuns: 1500 },
    );
    expect(lost).toBeGreaterThan(50);
  });
});

function ordered({ precedences }: Schedule): Requirement[] {
  return precedences.map(({ before, after, resource }) => ({
    ...{ kind: 'resource', resource },
    stages: [before, after],
  }));
}

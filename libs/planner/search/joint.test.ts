import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { plan, schedule, type Problem } from '#planner';
import { seededRandom } from '#units';
import { scheduleFaults } from '../../../tests/support/check-schedule.js';
import { randomProblem } from '../../../tests/support/random-problem.js';
import { tenRunsProblem } from '../../../tests/support/ten-runs-problem.js';
import { tileProblem } from '../../../tests/support/tile-problem.js';
import { compileProblem } from '../compile-problem.js';
import { deliveriesOf, totalEnd } from '../deliveries.js';
import { contains } from '../domains.js';
import { firstOverload, loadsOf } from '../loads.js';
import { closeBusyTimes } from './close-busy-times.js';
import { componentsOf } from './components.js';
import { nodeStarts } from './node-starts.js';
import { placePart } from './place-part.js';

const tiny = { stages: 5, until: 14, calendars: true, resources: true };

/** So many copies of the invented run that share hands and moulds. */
function copies(count: number, days = 60): Problem {
  const one = tileProblem();
  const names = Array.from({ length: count }, (_, k) => (id: string) => `run-${k}/${id}`);
  const hours = Array.from({ length: days }, (_, day) => ({
    from: day * 1440 + ([1, 2].includes(day % 7) ? 540 : 1080),
    to: day * 1440 + 1320,
  }));
  return {
    ...one,
    stages: names.flatMap((name) => one.stages.map((s) => ({ ...s, id: name(s.id) }))),
    lags: names.flatMap((name) =>
      one.lags.map((lag) => ({ ...lag, id: name(lag.id), from: name(lag.from), to: name(lag.to) })),
    ),
    holds: names.flatMap((name) =>
      one.holds.map((hold) => ({ ...hold, id: name(hold.id), from: name(hold.from), to: name(hold.to) })),
    ),
    deliveries: names.map((name) => one.stages.map(({ id }) => name(id))),
    calendars: { hours },
    until: days * 1440,
  };
}

describe('closeBusyTimes', () => {
  /** Oracle: every start tried against what cannot move, by `firstOverload`. */
  it('takes away just the starts at which a stage meets what cannot move', () => {
    let closed = 0;
    fc.assert(
      fc.property(randomProblem({ ...tiny, stages: 8 }), (p) => {
        const net = compileProblem(p, 0.5);
        const all = loadsOf(p);
        const { domains } = closeBusyTimes(net, all);
        p.stages.forEach(({ fixed }, i) => {
          if (fixed !== undefined) return;
          const alone = all.map(({ loads, ...resource }) => ({
            ...resource,
            loads: loads.filter((load) => load.constant || (load.first === i && load.last === i)),
          }));
          const startOf = p.stages.map((stage) => stage.fixed ?? 0);
          for (let at = 0; at <= p.until; at++) {
            if (!contains(net.domains[i]!, at)) {
              expect(contains(domains[i]!, at)).toBe(false);
              continue;
            }
            const x = nodeStarts(net, startOf.with(i, at));
            const meets = alone.some((resource) => meetsConstant(resource, i, x, net.duration));
            if (meets) closed++;
            expect(contains(domains[i]!, at)).toBe(!meets);
          }
        });
      }),
      { seed: 41, numRuns: 300 },
    );
    expect(closed).toBeGreaterThan(100);
  });
});

/** Whether the stage and what cannot move overload the resource while it lasts. */
function meetsConstant(
  { capacity, loads }: ReturnType<typeof loadsOf>[number],
  i: number,
  x: Float64Array,
  duration: Float64Array,
): boolean {
  return loads.some((mine) => {
    if (mine.constant) return false;
    const beside = loads.filter((load) => load.constant || load === mine);
    const shown = [{ resource: '', capacity, loads: beside }];
    return duration[i]! > 0 && firstOverload(shown, x, duration) !== undefined;
  });
}

describe('componentsOf', () => {
  it('keeps apart what only a fixed stage ties together', () => {
    const known = { kind: 'known', minutes: 1 } as const;
    const stage = (id: string) => ({ id, duration: 1, uses: [] });
    const p: Problem = {
      ...tileProblem(),
      stages: [stage('a'), { ...stage('done'), fixed: 0 }, stage('b'), stage('c')],
      lags: [
        { id: '1', from: 'done', point: 'end', to: 'a', atLeast: known },
        { id: '2', from: 'done', point: 'end', to: 'b', atLeast: known },
      ],
      holds: [{ id: 'h', resource: 'moulds', amount: 1, from: 'b', to: 'c' }],
    };
    expect(componentsOf(p)).toEqual([[0], [2, 3]]);
  });
});

describe('placePart', () => {
  it('puts stages where the others, which stay, leave room', () => {
    let placed = 0;
    fc.assert(
      fc.property(
        randomProblem({ ...tiny, until: 30 }),
        fc.array(fc.boolean(), { minLength: 5 }),
        (random, chosen) => {
          const p = { ...random, lags: random.lags.slice(0, 2) };
          const before = schedule(p, { certainty: 0.5, seed: 1 });
          if (before.status !== 'planned') return;
          const starts = Float64Array.from(p.stages, ({ id }) => before.schedule.starts.get(id)!);
          const free = [...p.stages.keys()].filter((i) => p.stages[i]!.fixed === undefined && chosen[i]);
          if (free.length === 0) return;
          for (const i of free) starts[i] = NaN;
          const budget = { left: 1000, stop: () => false };
          const found = placePart(p, 0.5, free, starts, seededRandom(1), budget, 500);
          // Where they were there is room, so there must be some.
          expect(found).not.toBeNull();
          for (const [i, at] of found!) starts[i] = at;
          const now = new Map(p.stages.map(({ id }, i) => [id, starts[i]!]));
          expect(scheduleFaults(p, { starts: now, certainty: 0.5 })).toEqual([]);
          placed++;
        },
      ),
      { seed: 42, numRuns: 400 },
    );
    expect(placed).toBeGreaterThan(20);
  });
});

describe('joint plans', () => {
  const p = copies(5);

  it('have a first plan that is pushed forward and backward: of ten, hardly later than one long searched for', () => {
    const p = tenRunsProblem();
    const total = (limits: { readonly limit: number; readonly stop?: () => boolean }): number => {
      const outcome = schedule(p, { certainty: 0.6, seed: 1, ...limits });
      if (outcome.status !== 'planned') throw new Error(outcome.status);
      expect(scheduleFaults(p, outcome.schedule)).toEqual([]);
      const startOf = (i: number): number => outcome.schedule.starts.get(p.stages[i]!.id)!;
      return totalEnd(deliveriesOf(p), startOf, (i) => p.stages[i]!.duration);
    };
    expect(total({ limit: Infinity, stop: () => true })).toBeLessThanOrEqual(1.01 * total({ limit: 4000 }));
  });

  it('have a first plan at once, which nothing is wrong with', () => {
    const { outcome, odds } = plan(p, { seed: 1, scenarios: 80, stop: () => true });
    if (outcome.status !== 'planned') throw new Error(outcome.status);
    expect(scheduleFaults(p, outcome.schedule)).toEqual([]);
    // The paired simulation ends after its first batch.
    expect(odds?.scenarios).toBe(10);
  });

  it('only get better until they are stopped', () => {
    const totalOf = (steps: number): number => {
      let asked = 0;
      const stop = (): boolean => ++asked > steps;
      const outcome = schedule(p, { certainty: 0.5, seed: 1, stop, limit: 700 });
      if (outcome.status !== 'planned') throw new Error(outcome.status);
      expect(scheduleFaults(p, outcome.schedule)).toEqual([]);
      const { starts } = outcome.schedule;
      return p.deliveries!.reduce((sum, ids) => sum + Math.max(...ids.map((id) => starts.get(id)!)), 0);
    };
    const totals = [0, 10, 200].map(totalOf);
    expect(totals.toSorted((a, b) => b - a)).toEqual(totals);
    expect(totals.at(-1)).toBeLessThan(totals[0]!);
  });

  it('are the same each time as long as no deadline strikes', () => {
    const options = { certainty: 0.6, seed: 3, limit: 300 };
    expect(schedule(p, options)).toEqual(schedule(p, options));
  });

  it('are undecided without any effort', () => {
    expect(schedule(p, { certainty: 0.5, seed: 1, limit: 0 }).status).toBe('undecided');
  });
});

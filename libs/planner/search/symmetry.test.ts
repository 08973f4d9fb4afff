import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Problem, Stage } from '#planner';
import { seededRandom } from '#units';
import { scheduleFaults } from '../../../tests/support/check-schedule.js';
import { randomProblem } from '../../../tests/support/random-problem.js';
import { compileProblem } from '../compile-problem.js';
import { componentsOf } from './components.js';
import { EarlySearch } from './early-search.js';
import { LagPaths } from './lag-paths.js';
import { StageSearch } from './stage-search.js';
import { symmetryOrders } from './symmetry.js';

const bound = fc.option(fc.integer({ min: 0, max: 12 }), { nil: undefined });

/** Copies of a small random problem beside each other, each with bounds of its own on all of its stages. */
const copies = (resources: boolean): fc.Arbitrary<Problem> =>
  fc
    .tuple(
      randomProblem({ stages: 3, until: resources ? 16 : 24, calendars: resources, resources }),
      fc.array(fc.tuple(bound, bound), { minLength: 2, maxLength: 3 }),
      fc.boolean(),
    )
    .map(([random, bounds, apart]): Problem => {
      const one = { ...random, lags: random.lags.slice(0, 3) };
      const name = (k: number, id: string): string => `${k}/${id}`;
      const all = <T>(of: (k: number) => readonly T[]): T[] => bounds.flatMap((_, k) => of(k));
      return {
        ...one,
        stages: all((k) =>
          one.stages.map(({ fixed: _, earliest, latest, ...stage }): Stage => {
            const [first = earliest, last = latest] = bounds[k]!;
            return {
              ...{ ...stage, id: name(k, stage.id) },
              ...(first !== undefined && { earliest: first }),
              ...(last !== undefined && { latest: last }),
            };
          }),
        ),
        lags: all((k) =>
          one.lags.map((lag) => ({
            ...lag,
            id: name(k, lag.id),
            from: name(k, lag.from),
            to: name(k, lag.to),
          })),
        ),
        holds: all((k) =>
          one.holds.map((hold) => ({
            ...{ ...hold, id: name(k, hold.id), from: name(k, hold.from), to: name(k, hold.to) },
          })),
        ),
        ...(apart && { deliveries: bounds.map((_, k) => one.stages.map(({ id }) => name(k, id))) }),
      };
    });

function best(p: Problem, breaksSymmetry: boolean): number | null {
  const net = compileProblem(p, 0.5);
  const search = StageSearch.over(p, net, seededRandom(1), breaksSymmetry);
  if (search === null) return null;
  const early = new EarlySearch(search, []);
  const outcome = early.run({ left: 20_000, stop: () => false });
  expect(outcome).not.toBe('limit');
  if (early.best === undefined) return null;
  const starts = new Map(p.stages.map(({ id }, i) => [id, early.best![i]!]));
  expect(scheduleFaults(p, { starts, certainty: 0.5 })).toEqual([]);
  return early.lowerBound;
}

describe('symmetryOrders', () => {
  it('leave the optimum as it is, whatever bounds the copies have', () => {
    let ordered = 0;
    let differing = 0;
    fc.assert(
      fc.property(copies(true), (p) => {
        const net = compileProblem(p, 0.5);
        const orders = symmetryOrders(p, net, new LagPaths(net));
        ordered += orders.length;
        const bounds = (i: number): string => `${p.stages[i]!.earliest} ${p.stages[i]!.latest}`;
        differing += orders.filter(({ before, after }) => bounds(before) !== bounds(after)).length;
        expect(best(p, true)).toBe(best(p, false));
      }),
      { seed: 51, numRuns: 1500 },
    );
    expect(ordered).toBeGreaterThan(200);
    expect(differing).toBeGreaterThan(20);
  });

  /** What the optimum hardly ever shows: any schedule against the order becomes one along it. */
  it('are only given to copies whose schedules can be exchanged', () => {
    let exchanged = 0;
    fc.assert(
      fc.property(copies(false), fc.nat(12), fc.nat(12), fc.nat(2), (p, begun, late, chosen) => {
        const net = compileProblem(p, 0.5);
        for (const { before, after } of symmetryOrders(p, net, new LagPaths(net))) {
          const search = StageSearch.over(p, net, seededRandom(1), false);
          const groups = componentsOf(p);
          const [a, b] = [before, after].map((i) => groups.find((group) => group.includes(i))!);
          const found = search?.place(
            [
              search.notBefore(before, begun),
              search.notAfter(after, begun - 1),
              search.notBefore(b![chosen % b!.length]!, late),
            ],
            { left: 1000, stop: () => false },
          );
          if (found?.status !== 'placed') continue;
          const starts = found.starts.slice(0, p.stages.length);
          for (const [k, i] of a!.entries()) {
            starts[i] = found.starts[b![k]!]!;
            starts[b![k]!] = found.starts[i]!;
          }
          exchanged++;
          const swapped = new Map(p.stages.map(({ id }, i) => [id, starts[i]!]));
          expect(scheduleFaults(p, { starts: swapped, certainty: 0.5 })).toEqual([]);
        }
      }),
      { seed: 52, numRuns: 4000 },
    );
    expect(exchanged).toBeGreaterThan(30);
  });

  /** Two pairs of stages, `first` listed first, the one that is done later tied to the other by a lag. */
  it.each([
    { later: 'second', bound: 'earliest', ordered: true },
    // The second stage of A may lie before B may begin, though its first comes late.
    { later: 'first', bound: 'earliest', ordered: false },
    { later: 'first', bound: 'latest', ordered: true },
    // The second stage of B may lie after A has to end, though its first comes early.
    { later: 'second', bound: 'latest', ordered: false },
  ])('with a later $bound and the $later stage later: $ordered', ({ later, bound, ordered }) => {
    const minutes = { kind: 'known', minutes: 0 } as const;
    const names = ['A', 'B'] as const;
    const p: Problem = {
      stages: names.flatMap((run, k) =>
        ['first', 'second'].map((id) => ({
          ...{ id: `${run} ${id}`, duration: 1, uses: [] },
          [bound]: 10 + 5 * k,
        })),
      ),
      lags: names.map((run) => ({
        ...{ id: run, point: 'start', atLeast: minutes, to: `${run} ${later}` },
        from: `${run} ${later === 'first' ? 'second' : 'first'}`,
      })),
      ...{ holds: [], resources: [], calendars: {}, draws: {}, from: 0, until: 40 },
    };
    const net = compileProblem(p, 0.5);
    expect(symmetryOrders(p, net, new LagPaths(net))).toEqual(ordered ? [{ before: 0, after: 2 }] : []);
  });
});

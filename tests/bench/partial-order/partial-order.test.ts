import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { controllability } from '#planner';
import { seededRandom } from '#units';
import { executePolicy } from './execute-policy.js';
import { chooseOrder } from './choose-order.js';
import { orderNetwork } from './order-network.js';
import { partialOrder } from './partial-order.js';
import type { OrderLink, UncertainProject } from './uncertain-project.js';

const ACTIVITIES = 7;

/** A project, made around a schedule so that there is one for its longest durations. */
const scheduled = fc
  .record({
    seed: fc.integer(),
    resources: fc.integer({ min: 1, max: 3 }),
    minimumLags: fc.nat(4),
    maximumLags: fc.nat(3),
  })
  .map(({ seed, resources, minimumLags, maximumLags }) => {
    const random = seededRandom(seed);
    const below = (limit: number): number => Math.floor(random.next() * limit);
    const sink = ACTIVITIES + 1;
    const inner = (of: () => number): number[] => [0, ...Array.from({ length: ACTIVITIES }, of), 0];
    const shortest = inner(() => 1 + below(3));
    const longest = shortest.map((low, i) => (i === 0 || i === sink ? 0 : low + below(4)));
    const req = shortest.map((_, i) =>
      Array.from({ length: resources }, () => (i === 0 || i === sink ? 0 : below(4))),
    );
    const starts = inner(() => below(15));
    starts[sink] = Math.max(...starts.map((start, i) => start + longest[i]!));
    const peak = (r: number): number => Math.max(...starts.map((now) => load(starts, longest, req, r, now)));
    const cap = Array.from({ length: resources }, (_, r) =>
      Math.max(peak(r), ...req.map((each) => each[r]!)),
    );
    const lag = (slack: number): [number, number, number] => {
      const [i, j] = [1 + below(ACTIVITIES), 1 + below(ACTIVITIES)];
      return [i, j, starts[j]! - starts[i]! - slack];
    };
    const lags = Array.from({ length: minimumLags + maximumLags }, () => lag(below(6)));
    const project: UncertainProject = { shortest, longest, cap, req, lags };
    return { project, starts, draw: () => shortest.map((low, i) => low + below(longest[i]! + 1 - low)) };
  });

/** All of a resource in use at a moment, counted one activity after the other. */
function load(
  starts: ArrayLike<number>,
  dur: readonly number[],
  req: UncertainProject['req'],
  r: number,
  now: number,
): number {
  return dur.reduce((sum, d, i) => sum + (starts[i]! <= now && now < starts[i]! + d ? req[i]![r]! : 0), 0);
}

function faults(project: UncertainProject, dur: readonly number[], starts: ArrayLike<number>): string[] {
  const { cap, req, lags } = project;
  return [
    ...lags.filter(([i, j, w]) => starts[j]! < starts[i]! + w).map(([i, j]) => `lag ${i} ${j}`),
    ...cap.flatMap((capacity, r) =>
      Array.from(starts)
        .filter((now) => load(starts, dur, req, r, now) > capacity)
        .map((now) => `resource ${r} at ${now}`),
    ),
    ...dur.flatMap((d, i) => (starts[i]! + d > starts[dur.length - 1]! ? [`end of ${i}`] : [])),
  ];
}

/** The earliest times under lags and links alone; null when there are none. */
function earliest(
  { lags }: UncertainProject,
  links: readonly OrderLink[],
  dur: readonly number[],
): number[] | null {
  const starts = dur.map(() => 0);
  const arcs = [
    ...lags,
    ...links.map(([i, j]) => [i, j, dur[i]!] as const),
    ...dur.slice(0, -1).map((d, i) => [i, dur.length - 1, d] as const),
  ];
  for (let round = 0; round <= dur.length; round++) {
    let isMoved = false;
    for (const [i, j, w] of arcs) {
      if (starts[j]! >= starts[i]! + w) continue;
      starts[j] = starts[i]! + w;
      isMoved = true;
    }
    if (!isMoved) return starts;
  }
  return null;
}

describe('partialOrder', () => {
  it('hands units on from those that must come before anyway', () => {
    // Two of two units: 1 and 2 run together, then 3 takes one unit, from 2, which it must follow in any case.
    const project = {
      dur: [0, 3, 2, 1, 0],
      cap: [2],
      req: [[0], [1], [1], [1], [0]],
      lags: [[2, 3, 2]] as const,
    };
    expect(partialOrder(project, [0, 0, 0, 3, 4])).toEqual([[2, 3]]);
  });

  it('refuses a schedule that overloads a resource', () => {
    const project = { dur: [0, 3, 2, 0], cap: [1], req: [[0], [1], [1], [0]], lags: [] };
    expect(() => partialOrder(project, [0, 0, 1, 3])).toThrow(RangeError);
  });

  it('keeps the resources whatever the durations', () => {
    let checked = 0;
    fc.assert(
      fc.property(scheduled, ({ project, starts, draw }) => {
        const links = partialOrder({ ...project, dur: project.longest }, starts);
        for (let trial = 0; trial < 10; trial++) {
          const dur = draw();
          const times = earliest(project, links, dur);
          // What is feasible at the longest durations is feasible at any.
          expect(times).not.toBeNull();
          expect(faults(project, dur, times!)).toEqual([]);
          checked += links.length;
        }
      }),
      { seed: 7, numRuns: 200 },
    );
    expect(checked).toBeGreaterThan(1000);
  });
});

describe('orderNetwork', () => {
  it('is controllable just when the longest durations can be met', () => {
    let controllable = 0;
    fc.assert(
      fc.property(scheduled, ({ project, starts }) => {
        // Made for the shortest durations, the order may ask too much of the longest.
        const links = partialOrder({ ...project, dur: project.shortest }, starts);
        const expected = earliest(project, links, project.longest) !== null;
        expect(controllability(orderNetwork(project, links)).controllable).toBe(expected);
        if (expected) controllable += 1;
      }),
      { seed: 8, numRuns: 300 },
    );
    expect(controllable).toBeGreaterThan(30);
    expect(controllable).toBeLessThan(299);
  });
});

describe('executePolicy', () => {
  it('never fails when the order is controllable, and keeps lags and resources', () => {
    fc.assert(
      fc.property(scheduled, ({ project, starts, draw }) => {
        const links = partialOrder({ ...project, dur: project.longest }, starts);
        for (let trial = 0; trial < 5; trial++) {
          const dur = draw();
          const outcome = executePolicy(project, links, dur);
          if (outcome.status !== 'done') throw new Error(`failed at ${outcome.at}`);
          expect(faults(project, dur, outcome.starts)).toEqual([]);
          expect(outcome.makespan).toBeLessThanOrEqual(starts.at(-1)!);
        }
      }),
      { seed: 9 },
    );
  });

  it('decides nothing by what has not ended', () => {
    let compared = 0;
    fc.assert(
      fc.property(scheduled, fc.integer({ min: 1, max: 12 }), ({ project, starts, draw }, moment) => {
        const links = partialOrder({ ...project, dur: project.longest }, starts);
        const dur = draw();
        const other = draw();
        const first = executePolicy(project, links, dur);
        if (first.status !== 'done') throw new Error(`failed at ${first.at}`);
        // Whatever runs at the moment or starts later may turn out otherwise, if only after the moment.
        const changed = dur.map((d, i) =>
          first.starts[i]! + d <= moment
            ? d
            : Math.max(other[i]!, Math.min(d, moment + 1 - first.starts[i]!)),
        );
        const second = executePolicy(project, links, changed);
        if (second.status !== 'done') throw new Error(`failed at ${second.at}`);
        first.starts.forEach((start, i) => {
          if (start > moment) return;
          expect(second.starts[i]).toBe(start);
          if (dur[i] !== changed[i]) compared += 1;
        });
      }),
      { seed: 10, numRuns: 200 },
    );
    expect(compared).toBeGreaterThan(100);
  });

  it('says when no start is left that keeps all lags', () => {
    // 2 follows 1 on the one unit there is, at most 2 after its start; 1 may take 3.
    const project: UncertainProject = {
      ...{ shortest: [0, 1, 1, 0], longest: [0, 3, 1, 0], cap: [1], req: [[0], [1], [1], [0]] },
      lags: [[2, 1, -2]],
    };
    const order: OrderLink[] = [[1, 2]];
    expect(executePolicy(project, order, [0, 2, 1, 0])).toMatchObject({ status: 'done', makespan: 3 });
    expect(executePolicy(project, order, [0, 3, 1, 0])).toEqual({ status: 'failed', at: 2 });
    expect(controllability(orderNetwork(project, order)).controllable).toBe(false);
  });
});

describe('chooseOrder', () => {
  it('takes the controllable order although another is shorter', () => {
    // One unit. 1 starts at most 2 before 2 and may take 3, so that 2 is safe only if it comes first.
    const project: UncertainProject = {
      ...{ shortest: [0, 1, 1, 0], longest: [0, 3, 1, 0], cap: [1], req: [[0], [1], [1], [0]] },
      lags: [[2, 1, -2]],
    };
    const solve = (dur: readonly number[]): number[] =>
      dur[1]! > 2 ? [0, 1, 0, 1 + dur[1]!] : [0, 0, dur[1]!, dur[1]! + 1];
    const options = { seed: 1, drawnSchedules: 2, trials: 50 };
    expect(chooseOrder(project, solve, options)).toMatchObject({
      links: [[2, 1]],
      controllable: true,
      share: 1,
    });
    expect(chooseOrder(project, () => null, options)).toBeNull();
  });
});

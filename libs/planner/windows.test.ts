import fc from 'fast-check';
import { DirectedGraph } from 'graphology';
import { dijkstra } from 'graphology-shortest-path';
import { describe, expect, it } from 'vitest';
import {
  checkProblem,
  lengthAt,
  windows,
  windowsAlong,
  type Lag,
  type Problem,
  type Requirement,
  type Stage,
  type Window,
} from '#planner';
import { lagConflict } from './windows.js';
import { anySchedule } from '../../tests/support/brute-force.js';
import { randomProblem } from '../../tests/support/random-problem.js';

/** Problems of four stages with bounds of their own, and of three most of which have none. */
function boundOrFree(until: number): fc.Arbitrary<Problem> {
  const shape = { until, calendars: true, resources: false };
  return fc.oneof(randomProblem({ ...shape, stages: 4 }), randomProblem({ ...shape, stages: 3, free: true }));
}

const plain = { holds: [], resources: [], calendars: {}, draws: {}, from: 0, until: 100 };
const known = (minutes: number) => ({ kind: 'known', minutes }) as const;

describe('windows', () => {
  /**
   * By hand: pour takes 20 and may start from 0; unmould 30 to 50 after its end, in hours 60-80 or 120-140, and takes
   * 10. Unmould cannot start before 20 + 30 = 50, so 60; nor after 130, so pour starts by 130 - 30 - 20 = 80 and, as
   * unmould comes 50 after its end at most, not before 60 - 50 - 20 = -10, so 0.
   */
  it('works out a case done on paper', () => {
    const p: Problem = {
      ...plain,
      until: 200,
      stages: [
        { id: 'pour', duration: 20, uses: [] },
        { id: 'unmould', duration: 10, uses: [], calendar: 'hours' },
      ],
      lags: [{ id: 'set', from: 'pour', point: 'end', to: 'unmould', atLeast: known(30), atMost: known(50) }],
      calendars: {
        hours: [
          { from: 60, to: 80 },
          { from: 120, to: 140 },
        ],
      },
    };
    expect(windows(p, 0.5)).toEqual({
      status: 'windows',
      windows: new Map([
        [
          'pour',
          {
            earliest: 0,
            latest: 80,
            slack: 80,
            earliestBy: { kind: 'origin' },
            latestBy: { kind: 'lag-at-least', lag: 'set' },
          },
        ],
        [
          'unmould',
          {
            earliest: 60,
            latest: 130,
            slack: 70,
            earliestBy: { kind: 'calendar', stage: 'unmould' },
            latestBy: { kind: 'horizon' },
          },
        ],
      ]),
    });
  });

  /**
   * Oracle: Dijkstra's algorithm in graphology-shortest-path. Networks are built around a hidden solution h, so that
   * h(j) - h(i) - w ≥ 0 is a length Dijkstra accepts (Johnson's reweighting) and the longest path is what remains.
   */
  it('agrees with longest paths from a graph library where there are no calendars', () => {
    const network = fc.integer({ min: 2, max: 12 }).chain((count) =>
      fc.record({
        hidden: fc.array(fc.nat(100), { minLength: count, maxLength: count }),
        arcs: fc.array(
          fc.record({ i: fc.nat(count - 1), j: fc.nat(count - 1), spare: fc.nat(25), max: fc.boolean() }),
          { maxLength: 3 * count },
        ),
      }),
    );
    fc.assert(
      fc.property(network, ({ hidden, arcs }) => {
        const graph = new DirectedGraph<object, { length: number }>();
        const arc = (i: string, j: string, length: number): void => {
          if (i === j) return;
          const before = graph.hasEdge(i, j) ? graph.getEdgeAttribute(i, j, 'length') : Infinity;
          graph.mergeEdge(i, j, { length: Math.min(before, length) });
        };
        const h = (i: string): number => (i === 'origin' ? 0 : i === 'end' ? 100 : hidden[Number(i)]!);
        ['origin', 'end', ...hidden.keys()].forEach((i) => graph.addNode(String(i)));
        for (const i of hidden.keys()) {
          arc('origin', String(i), h(String(i)));
          arc(String(i), 'end', 100 - h(String(i)));
        }
        const lags = arcs.map(({ i, j, spare, max }, k): Lag => {
          arc(String(i), String(j), spare);
          const weight = h(String(j)) - h(String(i)) - spare;
          return max
            ? { id: `l${k}`, from: `${j}`, point: 'start', to: `${i}`, atMost: known(-weight) }
            : { id: `l${k}`, from: `${i}`, point: 'start', to: `${j}`, atLeast: known(weight) };
        });
        const longest = (i: string, j: string): number => {
          const path = dijkstra.bidirectional(graph, i, j, 'length');
          const length = path
            .slice(1)
            .reduce((sum, to, k) => sum + graph.getEdgeAttribute(path[k], to, 'length'), 0);
          return h(j) - h(i) - length;
        };
        const stages = hidden.map((_, i) => ({ id: `${i}`, duration: 0, uses: [] }));
        const outcome = windows({ ...plain, stages, lags }, 0.5);
        if (outcome.status !== 'windows') throw new Error('the hidden solution was denied');
        for (const { id } of stages) {
          expect(outcome.windows.get(id)?.earliest).toBe(longest('origin', id));
          expect(outcome.windows.get(id)?.latest).toBe(100 - longest(id, 'end'));
        }
      }),
      { numRuns: 200, seed: 11 },
    );
  });

  /** Oracle: all assignments tried by tests/support/brute-force.ts. */
  it('gives exact bounds under lags of both signs and calendars', () => {
    const seen = { windows: 0, conflict: 0 };
    fc.assert(
      fc.property(boundOrFree(16), (p) => {
        fc.pre(checkProblem(p).length === 0);
        const outcome = windows(p, 0.5);
        seen[outcome.status]++;
        expect(outcome.status === 'windows').toBe(anySchedule(p));
        if (outcome.status !== 'windows') return;
        for (const { id, fixed } of p.stages) {
          const { earliest, latest } = outcome.windows.get(id)!;
          const possible = (at: number): boolean => anySchedule(p, new Map([[id, at]]));
          expect(possible(earliest) && possible(latest)).toBe(true);
          if (fixed !== undefined) continue;
          for (let at = p.from; at < earliest; at++) expect(possible(at)).toBe(false);
          for (let at = latest + 1; at <= p.until; at++) expect(possible(at)).toBe(false);
        }
      }),
      { numRuns: 300, seed: 12 },
    );
    expect(Math.min(seen.windows, seen.conflict)).toBeGreaterThan(40);
  });

  it('explains a conflict by requirements none of which can be left out', () => {
    fc.assert(
      fc.property(boundOrFree(30), (p) => {
        const outcome = windows(p, 0.5);
        if (outcome.status !== 'conflict') return;
        const { requirements } = outcome;
        expect(lagConflict(p, 0.5)).toEqual(requirements);
        expect(windows(only(p, requirements), 0.5).status).toBe('conflict');
        for (const dropped of requirements) {
          const rest = requirements.filter((requirement) => requirement !== dropped);
          expect(windows(only(p, rest), 0.5).status).toBe('windows');
        }
      }),
      { numRuns: 400, seed: 13 },
    );
  });

  it('names what sets each bound', () => {
    const seen = new Set<string>();
    fc.assert(
      fc.property(boundOrFree(40), (p) => {
        const outcome = windows(p, 0.5);
        if (outcome.status !== 'windows') return;
        for (const stage of p.stages) {
          expectTight(p, stage, outcome.windows);
          const { earliestBy, latestBy } = outcome.windows.get(stage.id)!;
          seen.add(`from ${earliestBy.kind}`).add(`until ${latestBy.kind}`);
        }
      }),
      { numRuns: 400, seed: 14 },
    );
    const lags = ['lag-at-least', 'lag-at-most'];
    const kinds = [
      ...['calendar', 'earliest', 'fixed', 'origin', ...lags].map((kind) => `from ${kind}`),
      // Hours that end too soon are rare here: an example follows.
      ...['latest', 'fixed', 'horizon', ...lags].map((kind) => `until ${kind}`),
    ];
    expect([...seen]).toEqual(expect.arrayContaining(kinds));
  });

  /** By hand: pour by 24 - 7 - 5 = 12, when there are no hours; they last until 10, so by 5. */
  it('names the hours that end before what follows asks for it', () => {
    const p: Problem = {
      ...plain,
      stages: [
        { id: 'pour', duration: 5, uses: [], calendar: 'hours' },
        { id: 'unmould', duration: 5, uses: [], latest: 24 },
      ],
      lags: [{ id: 'set', from: 'pour', point: 'end', to: 'unmould', atLeast: known(7) }],
      calendars: {
        hours: [
          { from: 0, to: 10 },
          { from: 20, to: 30 },
        ],
      },
    };
    const outcome = windows(p, 0.5);
    expect(outcome.status === 'windows' && outcome.windows.get('pour')).toMatchObject({
      latest: 5,
      latestBy: { kind: 'calendar', stage: 'pour' },
    });
  });

  it('names a last start before the horizon that is as late', () => {
    const stages = [{ id: 'pour', duration: 10, uses: [], latest: plain.until }];
    const outcome = windows({ ...plain, stages, lags: [] }, 0.5);
    expect(outcome.status === 'windows' && outcome.windows.get('pour')?.latestBy).toEqual({
      kind: 'latest',
      stage: 'pour',
    });
  });

  /** 1 minute too much around the cycle, hours for two years: answered by the cycle, not by walking the calendar. */
  it('sees an impossible cycle without walking the horizon', () => {
    const days = Array.from({ length: 730 }, (_, d) => ({ from: d * 1440, to: d * 1440 + 1440 }));
    const p: Problem = {
      ...plain,
      until: 730 * 1440,
      stages: ['a', 'b', 'c'].map((id) => ({ id, duration: 1, uses: [], calendar: 'days' })),
      lags: [
        { id: 'ab', from: 'a', point: 'start', to: 'b', atLeast: known(10) },
        { id: 'bc', from: 'b', point: 'start', to: 'c', atLeast: known(10) },
        { id: 'ac', from: 'a', point: 'start', to: 'c', atMost: known(19) },
      ],
      calendars: { days },
    };
    expect(windows(p, 0.5)).toEqual({
      status: 'conflict',
      requirements: [
        { kind: 'lag-at-least', lag: 'ab' },
        { kind: 'lag-at-least', lag: 'bc' },
        { kind: 'lag-at-most', lag: 'ac' },
      ],
    });
  });

  it('honours posted precedences and names them in a conflict', () => {
    const stages = ['a', 'b'].map((id) => ({ id, duration: 10, uses: [], latest: 5 }));
    const extra = [{ before: 'a', after: 'b', resource: 'hands' }];
    expect(windows({ ...plain, stages, lags: [] }, 0.5, extra)).toEqual({
      status: 'conflict',
      requirements: [
        { kind: 'latest', stage: 'b' },
        { kind: 'resource', resource: 'hands', stages: ['a', 'b'] },
      ],
    });
  });
});

/** Expects that what is named as setting the window of a stage does: a minute beyond it would be broken. */
function expectTight(p: Problem, stage: Stage, all: ReadonlyMap<string, Window>): void {
  const { earliestBy, latestBy, ...window } = all.get(stage.id)!;
  // Not −0.
  const [earliest, latest] = [window.earliest + 0, window.latest + 0];
  const of = (lag: string): Lag => p.lags.find(({ id }) => id === lag)!;
  const durationOf = (id: string): number => p.stages.find((each) => each.id === id)!.duration;
  // From the start of the one to that of the other.
  const least = (lag: Lag): number =>
    lengthAt(lag.atLeast!, 0.5, 'at-least', {}) + (lag.point === 'end' ? durationOf(lag.from) : 0);
  const most = (lag: Lag): number =>
    lengthAt(lag.atMost!, 0.5, 'at-most', {}) +
    (lag.point === 'end' ? durationOf(lag.from) : 0) -
    (lag.until === 'end' ? durationOf(lag.to) : 0);
  const isAllowed = (at: number): boolean =>
    stage.calendar === undefined ||
    p.calendars[stage.calendar]!.some(({ from, to }) => from <= at && at + stage.duration <= to);
  switch (earliestBy.kind) {
    case 'lag-at-least':
      expect(earliest).toBe(all.get(of(earliestBy.lag).from)!.earliest + least(of(earliestBy.lag)));
      break;
    case 'lag-at-most':
      expect(earliest).toBe(all.get(of(earliestBy.lag).to)!.earliest - most(of(earliestBy.lag)));
      break;
    case 'calendar':
      expect(isAllowed(earliest - 1)).toBe(false);
      break;
    default:
      expect(earliestBy).toEqual(
        earliestBy.kind === 'origin' ? { kind: 'origin' } : { kind: earliestBy.kind, stage: stage.id },
      );
      expect(earliest).toBe(earliestBy.kind === 'origin' ? p.from : stage[earliestBy.kind as 'fixed']);
  }
  const after = (end: number): number[] =>
    Array.from({ length: Math.max(0, end - latest) }, (_, i) => latest + 1 + i);
  switch (latestBy.kind) {
    case 'lag-at-least':
      expect(latest).toBe(all.get(of(latestBy.lag).to)!.latest - least(of(latestBy.lag)));
      break;
    case 'lag-at-most':
      expect(latest).toBe(all.get(of(latestBy.lag).from)!.latest + most(of(latestBy.lag)));
      break;
    case 'calendar':
      expect(isAllowed(latest + 1)).toBe(false);
      expect(after(stage.latest ?? p.until).some(isAllowed)).toBe(true);
      break;
    case 'fixed':
      expect(latestBy.stage).toBe(stage.id);
      expect(latest).toBe(stage.fixed);
      break;
    case 'latest':
      expect(latestBy.stage).toBe(stage.id);
      expect(after(stage.latest!).some(isAllowed)).toBe(false);
      break;
    default:
      expect(latestBy).toEqual({ kind: 'horizon' });
      expect(after(p.until).some(isAllowed)).toBe(false);
  }
}

/** The problem stripped by hand to the requirements named, independent of the library's own way of doing so. */
function only(p: Problem, requirements: readonly Requirement[]): Problem {
  const kept = (kind: string, of: string): boolean =>
    requirements.some((r) => r.kind === kind && Object.values(r).includes(of));
  return {
    ...p,
    until: requirements.some((r) => r.kind === 'horizon') ? p.until : 1_000_000,
    stages: p.stages.map((stage) => ({
      id: stage.id,
      duration: stage.duration,
      uses: [],
      ...(kept('calendar', stage.id) && { calendar: stage.calendar! }),
      ...(kept('earliest', stage.id) && { earliest: stage.earliest! }),
      ...(kept('latest', stage.id) && { latest: stage.latest! }),
      ...(kept('fixed', stage.id) && { fixed: stage.fixed! }),
    })),
    lags: p.lags.map(({ atLeast, atMost, ...lag }) => ({
      ...lag,
      ...(atLeast && kept('lag-at-least', lag.id) && { atLeast }),
      ...(atMost && kept('lag-at-most', lag.id) && { atMost }),
    })),
  };
}

describe('windowsAlong', () => {
  /** Held against `windows` of the problem in which the earlier stages are fixed one by one. */
  it('is what windows says once the earlier stages are done', () => {
    let open = 0;
    let shut = 0;
    fc.assert(
      fc.property(
        boundOrFree(40),
        // Any times will do: the soap can turn out as no lag and no hours allow.
        fc.array(fc.integer({ min: 0, max: 40 }), { minLength: 4, maxLength: 4 }),
        (p, times) => {
          fc.pre(checkProblem(p).length === 0);
          const starts = new Map(p.stages.map(({ id, fixed }, i) => [id, fixed ?? times[i]!]));
          const found = windowsAlong(p, 0.5, starts);
          const inOrder = [...p.stages].sort((a, b) => starts.get(a.id)! - starts.get(b.id)!);
          inOrder.forEach(({ id, fixed }, i) => {
            if (fixed !== undefined) {
              expect(found.has(id)).toBe(false);
              return;
            }
            const earlier = new Set(inOrder.slice(0, i).map((stage) => stage.id));
            const stages = p.stages.map((stage) =>
              earlier.has(stage.id) ? { ...stage, fixed: starts.get(stage.id)! } : stage,
            );
            const settled = { ...p, stages };
            const expected = windows(settled, 0.5);
            if (expected.status === 'windows') open++;
            else shut++;
            const window = found.get(id);
            const of = expected.status === 'windows' ? expected.windows.get(id) : undefined;
            expect([window?.earliest, window?.latest, window?.slack]).toEqual([
              of?.earliest,
              of?.latest,
              of && of.latest - of.earliest,
            ]);
            if (window === undefined || expected.status !== 'windows') return;
            expectTight(
              settled,
              stages.find((stage) => stage.id === id)!,
              new Map([...expected.windows, [id, window]]),
            );
          });
        },
      ),
      { numRuns: 1500, seed: 12 },
    );
    expect(Math.min(open, shut)).toBeGreaterThan(100);
  });
});

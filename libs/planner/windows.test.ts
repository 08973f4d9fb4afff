import fc from 'fast-check';
import { DirectedGraph } from 'graphology';
import { dijkstra } from 'graphology-shortest-path';
import { describe, expect, it } from 'vitest';
import { checkProblem, windows, windowsAlong, type Lag, type Problem, type Requirement } from '#planner';
import { anySchedule } from '../../tests/support/brute-force.js';
import { randomProblem } from '../../tests/support/random-problem.js';

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
      fc.property(randomProblem({ stages: 4, until: 16, calendars: true, resources: false }), (p) => {
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
      fc.property(randomProblem({ stages: 5, until: 30, calendars: true, resources: false }), (p) => {
        const outcome = windows(p, 0.5);
        if (outcome.status !== 'conflict') return;
        const { requirements } = outcome;
        expect(windows(only(p, requirements), 0.5).status).toBe('conflict');
        for (const dropped of requirements) {
          const rest = requirements.filter((requirement) => requirement !== dropped);
          expect(windows(only(p, rest), 0.5).status).toBe('windows');
        }
      }),
      { numRuns: 400, seed: 13 },
    );
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
        randomProblem({ stages: 4, until: 40, calendars: true, resources: false }),
        // Any times will do: the soap can turn out as no lag and no hours allow.
        fc.array(fc.integer({ min: 0, max: 40 }), { minLength: 4, maxLength: 4 }),
        (p, times) => {
          fc.pre(checkProblem(p).length === 0);
          const starts = new Map(p.stages.map(({ id, fixed }, i) => [id, fixed ?? times[i]!]));
          const found = windowsAlong(p, 0.5, starts);
          const inOrder = [...p.stages].sort((a, b) => starts.get(a.id)! - starts.get(b.id)!);
          inOrder.forEach(({ id, fixed }, i) => {
            if (fixed !== undefined) return;
            const earlier = new Set(inOrder.slice(0, i).map((stage) => stage.id));
            const stages = p.stages.map((stage) =>
              earlier.has(stage.id) ? { ...stage, fixed: starts.get(stage.id)! } : stage,
            );
            const expected = windows({ ...p, stages }, 0.5);
            if (expected.status === 'windows') open++;
            else shut++;
            const window = found.get(id);
            const of = expected.status === 'windows' ? expected.windows.get(id) : undefined;
            expect([window?.earliest, window?.latest, window?.slack]).toEqual([
              of?.earliest,
              of?.latest,
              of && of.latest - of.earliest,
            ]);
          });
        },
      ),
      { numRuns: 1500, seed: 12 },
    );
    expect(Math.min(open, shut)).toBeGreaterThan(100);
  });
});

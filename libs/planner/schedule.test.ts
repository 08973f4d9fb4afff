import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkProblem, schedule, sittings, type Problem, type Requirement, type Stage } from '#planner';
import { place } from './schedule.js';
import { anySchedule } from '../../tests/support/brute-force.js';
import { scheduleFaults } from '../../tests/support/check-schedule.js';
import { randomProblem } from '../../tests/support/random-problem.js';

const known = (minutes: number) => ({ kind: 'known', minutes }) as const;
const hands = [{ resource: 'hands', amount: 1 }];
const plain = { lags: [], holds: [], calendars: {}, draws: {}, from: 0, until: 100 };
const oneHand = { resources: [{ id: 'hands', capacity: 1, busy: [] }] };
const tiny = { stages: 4, until: 10, calendars: true, resources: true };

function readyAt(p: Problem, starts: ReadonlyMap<string, number>): number {
  return Math.max(...p.stages.map((stage) => starts.get(stage.id)! + stage.duration));
}

describe('schedule', () => {
  /** Oracle: exhaustive search in tests/support/brute-force.ts; validity by tests/support/check-schedule.ts. */
  it('finds a schedule exactly when there is one, and none that ends earlier exists', () => {
    const seen = { planned: 0, conflict: 0, undecided: 0 };
    fc.assert(
      fc.property(randomProblem(tiny), (p) => {
        fc.pre(checkProblem(p).length === 0);
        const outcome = schedule(p, { certainty: 0.5, seed: 1 });
        seen[outcome.status]++;
        expect(outcome.status === 'planned').toBe(anySchedule(p));
        if (outcome.status !== 'planned') return;
        expect(scheduleFaults(p, outcome.schedule)).toEqual([]);
        expect(anySchedule(p, new Map(), readyAt(p, outcome.schedule.starts) - 1)).toBe(false);
      }),
      { numRuns: 120, seed: 21 },
    );
    expect(seen.undecided).toBe(0);
    expect(Math.min(seen.planned, seen.conflict)).toBeGreaterThan(20);
  });

  /** The partial order is what lets a plan shift: later starts that obey it must never overload a resource. */
  it('posts precedences that keep resources sufficient when stages shift', () => {
    fc.assert(
      fc.property(randomProblem({ ...tiny, stages: 6, until: 60 }), fc.array(fc.nat(8)), (p, delays) => {
        const loose: Problem = {
          ...p,
          resources: p.resources.map((resource) => ({ ...resource, busy: [] })),
          stages: p.stages.map(({ id, duration, uses }) => ({ id, duration, uses })),
        };
        const outcome = schedule(loose, { certainty: 0.5, seed: 1 });
        if (outcome.status !== 'planned') return;
        const shifted = shift(loose, outcome.schedule, delays);
        const onlyResources = { ...loose, lags: [], until: 10_000 };
        expect(scheduleFaults(onlyResources, { starts: shifted, certainty: 0.5 })).toEqual([]);
      }),
      { numRuns: 200, seed: 22 },
    );
  });

  /** Whether the parts are feasible is asked of schedule itself, which the test above holds against brute force. */
  it('explains a conflict over resources by requirements none of which can be left out', () => {
    let withResource = 0;
    fc.assert(
      fc.property(randomProblem(tiny), fc.boolean(), (random, crowded) => {
        const p = crowded ? crowd(random) : random;
        fc.pre(checkProblem(p).length === 0);
        const outcome = schedule(p, { certainty: 0.5, seed: 1 });
        if (outcome.status !== 'conflict') return;
        const { requirements } = outcome;
        if (requirements.some((r) => r.kind === 'resource')) withResource++;
        expect(schedule(stripped(p, requirements), { certainty: 0.5, seed: 1 }).status).toBe('conflict');
        for (const dropped of requirements) {
          const rest = stripped(
            p,
            requirements.filter((requirement) => requirement !== dropped),
          );
          expect(schedule(rest, { certainty: 0.5, seed: 1 }).status).toBe('planned');
        }
      }),
      { numRuns: 300, seed: 23 },
    );
    expect(withResource).toBeGreaterThan(20);
  });

  it('tells a conflict as small as it was by the time that it is stopped', () => {
    const larger = { ofLags: 0, ofResources: 0 };
    fc.assert(
      fc.property(randomProblem(tiny), fc.double({ min: 0, max: 1, noNaN: true }), (random, share) => {
        const p = crowd(random);
        fc.pre(checkProblem(p).length === 0);
        const options = { certainty: 0.5, seed: 1 };
        const least = schedule(p, options);
        if (least.status !== 'conflict') return;
        let searching = 0;
        place(p, { ...options, stop: () => (searching++, false) });
        let all = 0;
        schedule(p, { ...options, stop: () => (all++, false) });
        const last = searching + Math.floor(share * (all - searching));
        let asked = 0;
        const stopped = schedule(p, { ...options, stop: () => ++asked > last });
        if (stopped.status !== 'conflict') throw new Error(stopped.status);
        expect(schedule(stripped(p, stopped.requirements), options).status).toBe('conflict');
        if (stopped.requirements.length <= least.requirements.length) return;
        larger[least.requirements.some((r) => r.kind === 'resource') ? 'ofResources' : 'ofLags']++;
      }),
      { numRuns: 60, seed: 24 },
    );
    expect(Math.min(larger.ofLags, larger.ofResources)).toBeGreaterThan(5);
  });

  it('answers the same for the same seed', () => {
    fc.assert(
      fc.property(randomProblem({ ...tiny, stages: 8, until: 40 }), fc.nat(), (p, seed) => {
        expect(schedule(p, { certainty: 0.5, seed })).toEqual(schedule(p, { certainty: 0.5, seed }));
      }),
      { numRuns: 50, seed: 24 },
    );
  });

  it('leaves stages where they were if that still works, and moves only what must move', () => {
    const p: Problem = {
      ...plain,
      ...oneHand,
      stages: [
        { id: 'a', duration: 10, uses: hands, fixed: 25 },
        { id: 'b', duration: 10, uses: hands, previous: 30 },
        { id: 'c', duration: 10, uses: hands, previous: 70 },
        { id: 'd', duration: 10, uses: hands, previous: 40 },
      ],
    };
    const outcome = schedule(p, { certainty: 0.5, seed: 1 });
    // `a` now runs until 35, so `b` cannot stay at 30; 0 is free and nobody else has to move.
    expect(outcome).toMatchObject({
      schedule: {
        starts: new Map([
          ['a', 25],
          ['b', 0],
          ['c', 70],
          ['d', 40],
        ]),
      },
    });
  });

  it('moves the one stage that stands in the way of several, though they come later', () => {
    const wait = (id: string, from: string, to: string) =>
      ({ id, from, point: 'start', to, atLeast: known(20) }) as const;
    const later = ['b', 'c', 'd'];
    const p: Problem = {
      ...plain,
      resources: [],
      stages: [
        { id: 'a', duration: 0, uses: [], previous: 30 },
        ...later.flatMap((id, k) => [
          // What is new in between takes longer than the plan before had left.
          { id: `${id}-new`, duration: 0, uses: [] },
          { id, duration: 0, uses: [], previous: 50 + k },
        ]),
      ],
      lags: later.flatMap((id) => [wait(`${id}-1`, 'a', `${id}-new`), wait(`${id}-2`, `${id}-new`, id)]),
    };
    const outcome = schedule(p, { certainty: 0.5, seed: 1 });
    if (outcome.status !== 'planned') throw new Error(outcome.status);
    const moved = p.stages.filter(
      ({ id, previous }) => previous !== undefined && outcome.schedule.starts.get(id) !== previous,
    );
    expect(moved.map(({ id }) => id)).toEqual(['a']);
  });

  it('answers with what it has when it is stopped while it asks which stages can stay', () => {
    const p: Problem = {
      ...plain,
      ...oneHand,
      stages: [
        { id: 'a', duration: 10, uses: hands, fixed: 25 },
        { id: 'b', duration: 10, uses: hands, previous: 30 },
        { id: 'c', duration: 10, uses: hands, previous: 70 },
      ],
    };
    // The first run finds that not all can stay, the second places them but for `b`.
    let asked = 0;
    const outcome = schedule(p, { certainty: 0.5, seed: 1, stop: () => ++asked > 2 });
    if (outcome.status !== 'planned') throw new Error(outcome.status);
    expect(scheduleFaults(p, outcome.schedule)).toEqual([]);
    expect(outcome.schedule.starts.get('c')).toBe(70);
  });

  /** Oracle: exhaustive search in tests/support/brute-force.ts. */
  it('keeps stages in their places until no further one could stay', () => {
    let moved = 0;
    fc.assert(
      fc.property(
        randomProblem({ ...tiny, until: 12 }),
        fc.array(fc.nat(12), { minLength: 4, maxLength: 4 }),
        (random, before) => {
          const stages = random.stages.map((stage, i) => ({ ...stage, previous: before[i]! }));
          const p = { ...random, lags: random.lags.slice(0, 1), stages };
          fc.pre(checkProblem(p).length === 0);
          const outcome = schedule(p, { certainty: 0.5, seed: 1 });
          if (outcome.status !== 'planned') return;
          expect(scheduleFaults(p, outcome.schedule)).toEqual([]);
          const { starts } = outcome.schedule;
          const open = stages.filter((stage) => stage.fixed === undefined);
          const kept = open.filter((stage) => starts.get(stage.id) === stage.previous);
          for (const stage of open) {
            if (kept.includes(stage)) continue;
            moved++;
            const tied = [...kept, stage];
            const rest = p.stages.map((each) =>
              tied.some(({ id }) => id === each.id) ? tie(each, each.previous) : each,
            );
            const isPossible = rest.every(({ earliest = 0, latest = Infinity }) => earliest <= latest);
            expect(isPossible && anySchedule({ ...p, stages: rest })).toBe(false);
          }
        },
      ),
      { numRuns: 600, seed: 25 },
    );
    expect(moved).toBeGreaterThan(25);
  });

  it('joins two sittings into one where nothing is lost by it', () => {
    const p: Problem = {
      ...plain,
      ...oneHand,
      until: 1000,
      stages: [
        { id: 'cast', duration: 30, uses: hands, calendar: 'day' },
        { id: 'dough', duration: 30, uses: hands, calendar: 'day' },
        { id: 'press', duration: 30, uses: hands, calendar: 'day' },
      ],
      lags: [
        { id: 'set', from: 'cast', point: 'end', to: 'press', atLeast: known(500) },
        { id: 'rest', from: 'cast', point: 'end', to: 'dough', atLeast: known(200) },
        { id: 'use', from: 'dough', point: 'end', to: 'press', atLeast: known(0) },
      ],
      calendars: { day: [{ from: 0, to: 1000 }] },
    };
    const outcome = schedule(p, { certainty: 0.5, seed: 1 });
    if (outcome.status !== 'planned') throw new Error(outcome.status);
    expect(scheduleFaults(p, outcome.schedule)).toEqual([]);
    expect(readyAt(p, outcome.schedule.starts)).toBe(560);
    // As early as can be, dough would come at 230 and be a sitting of its own.
    expect(outcome.schedule.starts.get('dough')).toBe(500);
    expect(sittings(p, outcome.schedule.starts)).toEqual([
      { start: 0, end: 30, stages: ['cast'] },
      { start: 500, end: 560, stages: ['dough', 'press'] },
    ]);
  });

  it('leaves a hold empty where only that leaves room', () => {
    const trays = [{ resource: 'trays', amount: 2 }];
    const p: Problem = {
      ...plain,
      resources: [{ id: 'trays', capacity: 2, busy: [] }],
      stages: [
        { id: 'full', duration: 2, uses: trays, fixed: 30 },
        { id: 'fill', duration: 1, uses: [] },
        { id: 'empty', duration: 1, uses: [], fixed: 30 },
      ],
      holds: [{ id: 'tray', resource: 'trays', amount: 1, from: 'fill', to: 'empty' }],
    };
    const outcome = schedule(p, { certainty: 0.5, seed: 1 });
    if (outcome.status !== 'planned') throw new Error(outcome.status);
    expect(scheduleFaults(p, outcome.schedule)).toEqual([]);
    expect(outcome.schedule.starts.get('fill')).toBeGreaterThanOrEqual(31);
  });

  it('says undecided when the limit runs out', () => {
    const stages = ['a', 'b', 'c'].map((id) => ({ id, duration: 10, uses: hands }));
    const outcome = schedule({ ...plain, ...oneHand, stages }, { certainty: 0.5, seed: 1, limit: 0 });
    expect(outcome).toEqual({ status: 'undecided', reason: 'limit' });
  });
});

function tie(stage: Stage, at: number): Stage {
  const { earliest = at, latest = at } = stage;
  return { ...stage, earliest: Math.max(earliest, at), latest: Math.min(latest, at) };
}

/** Every stage later by its delay and then by as much as the posted precedences ask; holds keep their length or grow. */
function shift(
  p: Problem,
  {
    starts,
    precedences,
  }: { starts: ReadonlyMap<string, number>; precedences: readonly { before: string; after: string }[] },
  delays: readonly number[],
): Map<string, number> {
  const shifted = new Map(p.stages.map(({ id }, i) => [id, starts.get(id)! + (delays[i] ?? 0)]));
  const inOrder = [...p.stages].sort((a, b) => starts.get(a.id)! - starts.get(b.id)!);
  for (let changed = true; changed;) {
    changed = false;
    for (const { id, duration } of inOrder) {
      for (const { before, after } of precedences) {
        if (before !== id || shifted.get(after)! >= shifted.get(id)! + duration) continue;
        shifted.set(after, shifted.get(id)! + duration);
        changed = true;
      }
    }
  }
  return shifted;
}

/** Few lags, little time and one pair of hands that everything needs. */
function crowd(p: Problem): Problem {
  const stages = p.stages.map(({ id, duration }) => ({ id, duration, uses: hands }));
  return { ...p, stages, lags: p.lags.slice(0, 1), until: 4 };
}

/** The problem stripped to the requirements named, without the library's own way of doing so. */
function stripped(p: Problem, requirements: readonly Requirement[]): Problem {
  const has = (kind: string, of: string): boolean =>
    requirements.some((r) => r.kind === kind && Object.values(r).includes(of));
  const on = (resource: string, stage: string): boolean =>
    requirements.some((r) => r.kind === 'resource' && r.resource === resource && r.stages.includes(stage));
  return {
    ...p,
    until: requirements.some((r) => r.kind === 'horizon') ? p.until : 1_000_000,
    stages: p.stages.map((stage) => ({
      id: stage.id,
      duration: stage.duration,
      uses: stage.uses.filter((use) => on(use.resource, stage.id)),
      ...(has('calendar', stage.id) && { calendar: stage.calendar! }),
      ...(has('earliest', stage.id) && { earliest: stage.earliest! }),
      ...(has('latest', stage.id) && { latest: stage.latest! }),
      ...(has('fixed', stage.id) && { fixed: stage.fixed! }),
    })),
    lags: p.lags.map(({ atLeast, atMost, ...lag }) => ({
      ...lag,
      ...(atLeast && has('lag-at-least', lag.id) && { atLeast }),
      ...(atMost && has('lag-at-most', lag.id) && { atMost }),
    })),
    holds: p.holds.filter((hold) => on(hold.resource, hold.from) && on(hold.resource, hold.to)),
  };
}

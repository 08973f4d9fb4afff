import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  checkProblem,
  timingConflictOf,
  schedule,
  relaxations,
  windows,
  type Problem,
  type Requirement,
} from '#planner';
import { anySchedule } from '../../../tests/support/brute-force.js';
import { randomProblem } from '../../../tests/support/random-problem.js';
import { restrict } from '../requirements.js';
import { isMeasured, withValue, without } from './relaxed-problem.js';

const tiny = { stages: 4, until: 10, calendars: true, resources: true };
const likely = { certainty: 0.5, seed: 1 };
const canBeRelaxed = ({ kind }: Requirement): boolean => kind !== 'fixed' && kind !== 'horizon';

function conflictOf(p: Problem): readonly Requirement[] | undefined {
  const outcome = schedule(p, likely);
  return outcome.status === 'conflict' ? outcome.requirements : undefined;
}

describe('relaxations of a conflict', () => {
  /** Oracle: exhaustive search in tests/support/brute-force.ts. */
  it('solve the whole problem, with the least change, and are named whenever one requirement alone would do', () => {
    let partly = 0;
    let wholly = 0;
    fc.assert(
      fc.property(randomProblem(tiny), (p) => {
        fc.pre(checkProblem(p).length === 0);
        const conflict = conflictOf(p);
        fc.pre(conflict !== undefined);
        const ways = relaxations(p, conflict ?? [], likely);
        for (const requirement of conflict ?? []) {
          const way = ways.find((each) => each.requirement === requirement);
          if (!canBeRelaxed(requirement)) expect(way).toBeUndefined();
          else expect(way !== undefined).toBe(anySchedule(without(p, requirement)));
          if (way?.enough === undefined || way.now === undefined || !isMeasured(requirement)) continue;
          expect(anySchedule(withValue(p, requirement, way.enough))).toBe(true);
          const harder = way.enough + Math.sign(way.now - way.enough);
          expect(anySchedule(withValue(p, requirement, harder))).toBe(false);
          if (harder === way.now) wholly++;
          else partly++;
        }
      }),
      { numRuns: 200, seed: 71 },
    );
    expect(Math.min(partly, wholly)).toBeGreaterThan(10);
  });

  it('are all members of a minimal conflict where it is the only one', () => {
    let members = 0;
    fc.assert(
      fc.property(randomProblem(tiny), (p) => {
        fc.pre(checkProblem(p).length === 0);
        const conflict = conflictOf(p);
        fc.pre(conflict !== undefined && conflict.every(canBeRelaxed));
        const alone = { ...restrict(p, conflict ?? []), until: 1000 };
        const ways = relaxations(alone, conflict ?? [], likely);
        expect(ways.map(({ requirement }) => requirement)).toEqual(conflict);
        members += ways.length;
      }),
      { numRuns: 150, seed: 72 },
    );
    expect(members).toBeGreaterThan(60);
  });
});

describe('where a conflict shows', () => {
  it('lies in time: what is allowed on one side, what is asked on the other, nothing in both', () => {
    const seen = new Map<string, number>();
    fc.assert(
      fc.property(randomProblem({ ...tiny, until: 30 }), (p) => {
        fc.pre(checkProblem(p).length === 0);
        const outcome = windows(p, 0.5);
        fc.pre(outcome.status === 'conflict');
        const conflict = outcome.status === 'conflict' ? outcome.requirements : [];
        const timing = timingConflictOf(p, conflict, 0.5);
        if (timing === undefined) return;
        seen.set(timing.kind, (seen.get(timing.kind) ?? 0) + 1);
        if (timing.kind === 'too-late') expect(timing.earliest).toBeGreaterThan(timing.due);
        if (timing.kind === 'too-early') expect(timing.latest).toBeLessThan(timing.opens);
        if (timing.kind !== 'hours') return;
        const stage = p.stages.find(({ id }) => id === timing.stage)!;
        for (const { from, to } of p.calendars['hours'] ?? []) {
          const [first, last] = [
            Math.max(from, timing.earliest),
            Math.min(to - stage.duration, timing.latest),
          ];
          expect(first).toBeGreaterThan(last);
        }
        expect(timing.closed.from ?? -Infinity).toBeLessThan(timing.earliest + stage.duration);
        if (timing.closed.to !== undefined) expect(timing.closed.to).toBeGreaterThan(timing.latest);
      }),
      { numRuns: 1200, seed: 73 },
    );
    expect(
      Math.min(...['hours', 'too-late', 'too-early'].map((kind) => seen.get(kind) ?? 0)),
    ).toBeGreaterThan(4);
  });
});

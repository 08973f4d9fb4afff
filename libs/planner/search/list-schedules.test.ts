import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Problem } from '#planner';
import { seededRandom } from '#units';
import { scheduleFaults } from '../../../tests/support/check-schedule.js';
import { largeProject } from '../../../tests/support/large-projects.js';
import { projectProblem } from '../../../tests/support/project-problem.js';
import { randomProblem } from '../../../tests/support/random-problem.js';
import { readProjects } from '../../../tests/support/read-projects.js';
import { compileProblem } from '../compile-problem.js';
import { loadsOf } from '../loads.js';
import { closeBusyTimes } from './close-busy-times.js';
import { geneticSearch } from './genetic-search.js';
import { ListSchedules, type ListSchedule } from './list-schedules.js';
import { StageSearch } from './stage-search.js';

/** Optima by other solvers; sources in the CITATION.md beside the file. */
const published = readProjects(new URL('../../../tests/literature/planner/rcpsp.json', import.meta.url));
const shape = { stages: 6, until: 40, calendars: true, resources: true };

describe('list schedules', () => {
  it('keep lags of either kind, hours, holds and busy times, and pushing forward and backward makes none later', () => {
    let made = 0;
    fc.assert(
      fc.property(randomProblem(shape), fc.nat(), (random, seed) => {
        const p = { ...random, lags: random.lags.slice(0, 3) };
        const search = searchOf(p);
        if (search === null) return;
        const lists = new ListSchedules(search, search.lags);
        const chance = seededRandom(seed);
        const found = lists.early(lists.mutate(lists.sample(chance, 1 + (seed % 4)), chance));
        if (found === null) return;
        made++;
        expect(faults(p, found)).toEqual([]);
        const again = lists.forwardBackward(found);
        expect(faults(p, again)).toEqual([]);
        expect(again.total).toBeLessThanOrEqual(found.total);
      }),
      { seed: 5, numRuns: 1500 },
    );
    expect(made).toBeGreaterThan(200);
  });

  it('are made of every list without maximum lags and of some with; pushing forward and backward often makes them earlier', () => {
    let earlier = 0;
    let tied = 0;
    const cell = { activities: 25, resources: 3, complexity: 1.4, strength: 0.2, planted: true };
    fc.assert(
      fc.property(fc.nat(), fc.constantFrom(0.3, 1), fc.constantFrom(0, 0.3), (seed, factor, maxima) => {
        const p = projectProblem(largeProject({ ...cell, factor, maxima }, seed));
        const search = searchOf(p)!;
        const lists = new ListSchedules(search, search.lags);
        const found = lists.early(lists.sample(seededRandom(seed), 2));
        if (maxima === 0) expect(found).not.toBeNull();
        if (found === null) return;
        expect(faults(p, found)).toEqual([]);
        const pushed = lists.forwardBackward(found);
        expect(faults(p, pushed)).toEqual([]);
        if (pushed.total < found.total) earlier++;
        if (maxima > 0) tied++;
      }),
      { seed: 6, numRuns: 60 },
    );
    expect(earlier).toBeGreaterThan(15);
    expect(tied).toBeGreaterThan(10);
  });
});

describe('geneticSearch', () => {
  it('comes within a twentieth of the published optima, and never below', () => {
    for (const { name, expected, ...project } of published.filter((_, k) => k % 3 === 0)) {
      const p = projectProblem(project);
      const search = searchOf(p)!;
      const optimum = expected?.makespan ?? NaN;
      const budget = { left: 300, stop: () => false };
      let total = Infinity;
      const lists = new ListSchedules(search, search.lags);
      for (const found of geneticSearch(lists, total, optimum, seededRandom(1), budget)) {
        if (found === null) continue;
        expect(found.total).toBeLessThan(total);
        ({ total } = found);
        expect(faults(p, found)).toEqual([]);
      }
      expect(total, name).toBeGreaterThanOrEqual(optimum);
      expect(total, name).toBeLessThanOrEqual(1.05 * optimum);
    }
  });
});

function searchOf(p: Problem): StageSearch | null {
  return StageSearch.over(p, closeBusyTimes(compileProblem(p, 0.5), loadsOf(p)), seededRandom(1));
}

function faults(p: Problem, { starts }: ListSchedule): string[] {
  return scheduleFaults(p, {
    starts: new Map(p.stages.map(({ id }, i) => [id, starts[i]!])),
    certainty: 0.5,
  });
}

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { seededRandom } from '#units';
import { largeProject } from '../../../tests/support/large-projects.js';
import { projectFaults } from '../../../tests/support/project-faults.js';
import { readProjects } from '../../../tests/support/read-projects.js';
import { Best } from './best.js';
import { breedLists } from './breed-lists.js';
import { isPlain, ListSchedules } from './list-schedules.js';
import { distancesOf } from './model.js';
import type { Project } from './project.js';

/** Optima by other solvers; sources in the CITATION.md beside the file. */
const published = readProjects(new URL('../../../tests/literature/planner/rcpsp.json', import.meta.url));

describe('ListSchedules', () => {
  it('keeps precedence and resources, and going to and fro makes nothing longer', () => {
    const cell = { activities: 25, resources: 3, complexity: 1.4 };
    fc.assert(
      fc.property(
        fc.nat(),
        fc.constantFrom(0.3, 0.7, 1),
        fc.constantFrom(0, 0.2, 0.5),
        (seed, factor, strength) => {
          const project = largeProject({ ...cell, factor, strength }, seed);
          const lists = listsOf(project);
          const random = seededRandom(seed);
          const list = lists.shake(lists.sample(random, 1 + (seed % 4)), random);
          const starts = new Int32Array(lists.count);
          const makespan = lists.early(list, starts);
          expect(projectFaults(project, starts)).toEqual([]);
          expect(starts.at(-1)).toBe(makespan);
          expect(lists.toAndFro(starts, list)).toBeLessThanOrEqual(makespan);
          expect(projectFaults(project, starts)).toEqual([]);
          expect([...list].sort((i, j) => i - j)).toEqual([...starts.keys()]);
        },
      ),
      { numRuns: 60, seed: 5 },
    );
  });

  it('is for projects without maximum lags', () => {
    const [first] = published;
    if (first === undefined) throw new Error('no project');
    const plain = (project: Project): boolean => isPlain(project, distancesOf(project)!);
    expect(plain(first)).toBe(true);
    expect(plain({ ...first, lags: [...first.lags, [4, 1, -60]] })).toBe(false);
    expect(plain({ ...first, lags: [...first.lags, [4, 0, -60]] })).toBe(false);
    const marks: Project = {
      dur: [0, 0, 0, 1, 0],
      cap: [1],
      req: [[0], [0], [0], [1], [0]],
      lags: [[1, 2, 0]],
    };
    expect(plain(marks)).toBe(true);
    expect(
      plain({
        ...marks,
        lags: [
          [1, 2, 0],
          [2, 1, 0],
        ],
      }),
    ).toBe(false);
  });
});

describe('breedLists', () => {
  it('comes within a tenth of the published optima, and never below', () => {
    for (const { name, expected, ...project } of published) {
      const told: number[] = [];
      const best = new Best((makespan, starts) => {
        told.push(makespan);
        expect(projectFaults(project, starts)).toEqual([]);
      });
      const optimum = expected?.makespan ?? NaN;
      breedLists(listsOf(project), best, seededRandom(1), {
        ...{ patience: 300, lowerBound: optimum, stop: () => false },
      });
      expect(best.makespan, name).toBeGreaterThanOrEqual(optimum);
      expect(best.makespan, name).toBeLessThanOrEqual(1.1 * optimum);
      expect(told).toEqual([...new Set(told)].sort((a, b) => b - a));
    }
  });
});

function listsOf(project: Project): ListSchedules {
  const distances = distancesOf(project);
  if (distances === null) throw new Error('the lags contradict each other');
  return new ListSchedules(
    project,
    distances,
    project.dur.reduce((sum, d) => sum + d, 0),
  );
}

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { allSchedules } from '../../../tests/support/brute-force-project.js';
import { copiesOf, largeProject } from '../../../tests/support/large-projects.js';
import type { Project } from '../../../tests/support/project.js';
import { projectFaults } from '../../../tests/support/project-faults.js';
import { readProjects } from '../../../tests/support/read-projects.js';
import { solveProject } from '../../../tests/support/solve-project.js';
import { TINY_HORIZON, tinyProject } from '../../../tests/support/tiny-project.js';

/** Source: the CITATION.md beside the file. */
const published = readProjects(new URL('../../../tests/literature/planner/rcpsp-max.json', import.meta.url));

describe('projects without hours', () => {
  it('are scheduled as early as can be or proved to have no schedule, as trying all starts says', () => {
    fc.assert(
      fc.property(tinyProject(), fc.nat(3), (project, seed) => {
        const makespans = allSchedules(project, TINY_HORIZON).map((starts) => starts.at(-1) ?? NaN);
        const result = solveProject(project, { seed });
        if (makespans.length === 0) {
          expect(result.status).toBe('infeasible');
          return;
        }
        if (result.status !== 'optimal') throw new Error(result.status);
        expect(projectFaults(project, result.starts)).toEqual([]);
        expect(result.makespan).toBe(Math.min(...makespans));
      }),
      { numRuns: 150, seed: 11 },
    );
  });

  /** Two of 3 and 2 on one pair of hands: 5. The second within 1 of the first's start leaves only second, first. */
  it('order two activities as a maximum lag allows', () => {
    const never = pair([
      [1, 2, 0],
      [2, 1, -1],
    ]);
    expect(solveProject(never, { seed: 1 }).status).toBe('infeasible');
    const turned = solveProject(pair([[2, 1, -2]]), { seed: 1 });
    if (turned.status !== 'optimal') throw new Error(turned.status);
    expect([...turned.starts]).toEqual([0, 2, 0, 5]);
  });

  it('have no schedule when an activity needs more than there is', () => {
    expect(solveProject({ ...pair([]), cap: [0] }, { seed: 1 }).status).toBe('infeasible');
  });
});

describe('projects of 100 and more activities', () => {
  const cell = { resources: 5, complexity: 1.5, factor: 0.75, strength: 0.25, maxima: 0.6 };

  it.each([
    ['with maximum lags', largeProject({ ...cell, activities: 100, slack: 0.6, planted: true }, 3)],
    ['precedence alone', largeProject({ ...cell, activities: 120, maxima: 0 }, 20)],
    ['two of 50 side by side', copiesOf(named('UBO50/psp42'), 2, 'merged')],
    ['three of 50 in a row', copiesOf(named('UBO50/psp24'), 3, 'chained')],
  ])('get the same sound schedule each time: %s', (_, project) => {
    const solved = () => solveProject(project, { seed: 2, limit: 1500 });
    const result = solved();
    if (!('starts' in result)) throw new Error(result.status);
    expect(projectFaults(project, result.starts)).toEqual([]);
    expect(solved()).toEqual(result);
  });

  it('are not longer in a row than the parts one after the other', () => {
    const part = named('UBO50/psp24');
    const result = solveProject(copiesOf(part, 2, 'chained'), { seed: 1, limit: 3000 });
    expect('makespan' in result && result.makespan).toBeLessThanOrEqual(2 * (part.expected?.makespan ?? NaN));
  });

  it('are proved to have no schedule where the maximum lags leave none', () => {
    const project = largeProject({ ...cell, activities: 100, maxima: 1, slack: 0.5 }, 1);
    expect(solveProject(project, { seed: 1, limit: 20_000 }).status).toBe('infeasible');
  });
});

function named(name: string) {
  const found = published.find((each) => each.name === name);
  if (found === undefined) throw new Error(`no project ${name}`);
  return found;
}

function pair(lags: Project['lags']): Project {
  return { dur: [0, 3, 2, 0], cap: [1], req: [[0], [1], [1], [0]], lags };
}

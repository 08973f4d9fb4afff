import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { solveProject, type Project } from '#planner';
import { allSchedules } from '../../../tests/support/brute-force-project.js';
import { projectFaults } from '../../../tests/support/project-faults.js';
import { TINY_HORIZON, tinyProject } from '../../../tests/support/tiny-project.js';

describe('solveProject', () => {
  it('finds the optimum or proves that there is none, as trying all starts does', () => {
    fc.assert(
      fc.property(tinyProject(), fc.nat(3), (project, seed) => {
        const makespans = allSchedules(project, TINY_HORIZON).map((starts) => starts.at(-1) ?? NaN);
        const result = solveProject(project, { seed, limit: {} });
        if (makespans.length === 0) {
          expect(result.status).toBe('infeasible');
          return;
        }
        if (result.status !== 'optimal') throw new Error(result.status);
        expect(projectFaults(project, result.starts)).toEqual([]);
        expect(result.makespan).toBe(Math.min(...makespans));
        expect(result.lowerBound).toBe(result.makespan);
      }),
      { numRuns: 150, seed: 11 },
    );
  });

  it('states no lower bound above the optimum, however early it stops', () => {
    fc.assert(
      fc.property(tinyProject(), (project) => {
        const makespans = allSchedules(project, TINY_HORIZON).map((starts) => starts.at(-1) ?? NaN);
        const { lowerBound } = solveProject(project, { seed: 1, limit: {}, stop: () => true });
        if (makespans.length > 0) expect(lowerBound).toBeLessThanOrEqual(Math.min(...makespans));
      }),
      { numRuns: 300, seed: 12 },
    );
  });

  /** Two of 3 and 2 on one pair of hands: 5. The second within 1 of the first's start leaves only second, first. */
  it('orders two activities as a maximum lag allows', () => {
    const result = solveProject(
      pair([
        [1, 2, 0],
        [2, 1, -1],
      ]),
      { seed: 1, limit: {} },
    );
    expect(result.status).toBe('infeasible');
    const turned = solveProject(pair([[2, 1, -2]]), { seed: 1, limit: {} });
    if (turned.status !== 'optimal') throw new Error(turned.status);
    expect([...turned.starts]).toEqual([0, 2, 0, 5]);
  });

  it('is infeasible when an activity needs more than there is', () => {
    expect(solveProject({ ...pair([]), cap: [0] }, { seed: 1, limit: {} }).status).toBe('infeasible');
  });

  it('tells of every improvement and can be stopped', () => {
    const told: number[] = [];
    const result = solveProject(pair([]), {
      seed: 1,
      limit: {},
      onImproved: (makespan) => told.push(makespan),
    });
    expect(told.at(-1)).toBe(5);
    expect(told).toEqual([...told].sort((a, b) => b - a));
    expect(result.status).toBe('optimal');
    expect(solveProject(pair([]), { seed: 1, limit: {}, stop: () => true })).toMatchObject({
      status: 'undecided',
      lowerBound: 5,
    });
  });
});

function pair(lags: Project['lags']): Project {
  return { dur: [0, 3, 2, 0], cap: [1], req: [[0], [1], [1], [0]], lags };
}

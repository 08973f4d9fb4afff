import fc from 'fast-check';
import { expect, it } from 'vitest';
import { checkProblem } from '#planner';
import { anySchedule } from '../../../tests/support/brute-force.js';
import { projectProblem, SINK } from '../../../tests/support/project-problem.js';
import { readProjects } from '../../../tests/support/read-projects.js';
import { randomProblem } from '../../../tests/support/random-problem.js';
import { compileProblem } from '../compile-problem.js';
import { loadsOf } from '../loads.js';
import type { Problem } from '../problem.js';
import { energyBound } from './energy-bound.js';
import { LagPaths } from './lag-paths.js';
import { startBounds } from './start-bounds.js';

function boundOf(p: Problem, delivery: readonly number[]): number {
  const net = compileProblem(p, 0.5);
  const within = startBounds(net);
  if (within === null) throw new Error('no starts');
  return energyBound(net, loadsOf(p), within, new LagPaths(net), delivery);
}

/** Oracle: the published optima (tests/literature/planner/CITATION.md). */
it('is never above the published optimum, and sometimes meets it', () => {
  const folder = '../../../tests/literature/planner/';
  const instances = ['rcpsp.json', 'rcpsp-max.json']
    .flatMap((file) => readProjects(new URL(folder + file, import.meta.url)))
    .filter(({ expected }) => expected?.status === 'optimal');
  let met = 0;
  for (const instance of instances) {
    const p = projectProblem(instance);
    const bound = boundOf(p, [p.stages.findIndex(({ id }) => id === SINK)]);
    const optimum = instance.expected!.makespan!;
    expect(bound, instance.name).toBeLessThanOrEqual(optimum);
    if (bound === optimum) met++;
  }
  expect(met).toBeGreaterThan(5);
});

/** Oracle: exhaustive search in tests/support/brute-force.ts. */
it('leaves no schedule below it, with hours, holds and fixed stages', () => {
  let compared = 0;
  fc.assert(
    fc.property(randomProblem({ stages: 4, until: 10, calendars: true, resources: true }), (random) => {
      const p = { ...random, lags: random.lags.slice(0, 3) };
      fc.pre(checkProblem(p).length === 0 && startBounds(compileProblem(p, 0.5)) !== null);
      const bound = boundOf(p, [...p.stages.keys()]);
      if (bound === -Infinity) return;
      compared++;
      expect(anySchedule(p, new Map(), bound - 1)).toBe(false);
    }),
    { seed: 71, numRuns: 1500 },
  );
  expect(compared).toBeGreaterThan(30);
});

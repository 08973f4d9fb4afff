import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { solveProject } from '#planner';
import { seededRandom } from '#units';
import { copiesOf, largeProject } from '../../../tests/support/large-projects.js';
import { projectFaults } from '../../../tests/support/project-faults.js';
import { readProjects, type Instance } from '../../../tests/support/read-projects.js';
import { Best } from './best.js';
import { distancesOf, guideOf, modelOf, type Model } from './model.js';
import { Neighbourhoods } from './neighbourhoods.js';
import { relaxed } from './relax.js';

/** Published schedules by other solvers; sources in the CITATION.md beside the file. */
const published = readProjects(
  new URL('../../../tests/literature/planner/rcpsp-max.json', import.meta.url),
).filter(({ witness }) => witness !== undefined);

describe('relaxed', () => {
  it('leaves the schedule it starts from possible, whatever is free', () => {
    fc.assert(
      fc.property(fc.constantFrom(...published), fc.infiniteStream(fc.nat(1)), (instance, coins) => {
        const model = modelFor(instance);
        const starts = Int32Array.from(instance.witness ?? []);
        const isFree = Uint8Array.from(starts, () => coins.next().value as number);
        const small = relaxed(instance, model, starts, isFree, seededRandom(1));
        const values = guideOf(small, starts);
        expect(values.length).toBe(small.bounds.length / 2);
        const at = (side: number): number => (side % 2 === 0 ? 1 : -1) * (values[side >> 1] ?? NaN);
        for (const { from, to, weight, choice } of small.edges) {
          if (choice >= 0 && at(choice) < 1 - (choice % 2)) continue;
          expect(at(to)).toBeGreaterThanOrEqual(at(from) + weight);
        }
      }),
      { numRuns: 60, seed: 3 },
    );
  });
});

describe('Neighbourhoods', () => {
  it('shortens schedules and keeps them sound', () => {
    const cell = { activities: 60, resources: 4, complexity: 1.4, factor: 0.75, strength: 0.2 };
    for (const maxima of [0, 0.5]) {
      const project = largeProject({ ...cell, maxima, planted: true }, 4);
      let first: Int32Array | null = null;
      solveProject(project, {
        seed: 1,
        limit: { conflicts: 1500 },
        onImproved: (_, starts) => (first ??= starts),
      });
      const told: number[] = [];
      const best = new Best((makespan, starts) => {
        told.push(makespan);
        expect(projectFaults(project, starts)).toEqual([]);
      });
      best.improve(first!);
      new Neighbourhoods(project, modelFor(project), seededRandom(1)).improve(best, 3000, () => false);
      expect(told.length).toBeGreaterThan(3);
    }
  });
});

describe('solveProject on 100 and more activities', () => {
  const cell = { resources: 5, complexity: 1.5, factor: 0.75, strength: 0.25, maxima: 0.6 };

  it.each([
    ['with maximum lags', largeProject({ ...cell, activities: 100, slack: 0.6, planted: true }, 3)],
    ['precedence alone', largeProject({ ...cell, activities: 120, maxima: 0 }, 20)],
    [
      'two of 50 side by side',
      copiesOf(
        published.find(({ name }) => name === 'UBO50/psp42')!,
        2,
        'merged',
      ),
    ],
    [
      'three of 50 in a row',
      copiesOf(
        published.find(({ name }) => name === 'UBO50/psp24')!,
        3,
        'chained',
      ),
    ],
  ])('finds the same sound schedule each time: %s', (_, project) => {
    const solved = () => solveProject(project, { seed: 2, limit: { conflicts: 1500 } });
    const result = solved();
    if (!('starts' in result)) throw new Error(result.status);
    expect(projectFaults(project, result.starts)).toEqual([]);
    expect(solved()).toEqual(result);
  });

  it('is not longer in a row than the parts one after the other', () => {
    const part = published.find(({ name }) => name === 'UBO50/psp24')!;
    const result = solveProject(copiesOf(part, 2, 'chained'), { seed: 1, limit: { conflicts: 3000 } });
    expect('makespan' in result && result.makespan).toBeLessThanOrEqual(2 * (part.expected?.makespan ?? NaN));
  });

  it('proves infeasible what the maximum lags make so', () => {
    const { status } = solveProject(largeProject({ ...cell, activities: 100, maxima: 1, slack: 0.5 }, 1), {
      seed: 1,
      limit: { conflicts: 20_000 },
    });
    expect(status).toBe('infeasible');
  });
});

function modelFor(project: Instance): Model {
  const distances = distancesOf(project);
  const model = distances && modelOf(project, distances, 4000);
  if (model === null) throw new Error(`${project.name} has a schedule`);
  return model;
}

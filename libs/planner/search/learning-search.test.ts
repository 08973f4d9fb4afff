import { describe, expect, it } from 'vitest';
import { seededRandom } from '#units';
import { projectProblem } from '../../../tests/support/project-problem.js';
import { readProjects, type Instance } from '../../../tests/support/read-projects.js';
import { compileProblem } from '../compile-problem.js';
import { LearningSearch } from '../learning/learning-search.js';
import { nodeStarts } from './node-starts.js';
import { valuesOf, type StageModel } from './stage-model.js';
import { StageSearch } from './stage-search.js';

/** Published instances with a schedule that another solver found; sources in the CITATION.md beside the files. */
const instances = ['rcpsp-max.json', 'rcpsp.json']
  .flatMap((file) => readProjects(new URL(`../../../tests/literature/planner/${file}`, import.meta.url)))
  .filter(({ name, expected }) => expected?.status === 'optimal' && !name.startsWith('j60'));

describe('LearningSearch', () => {
  it('never learns a clause that a schedule within the bound breaks', () => {
    let learned = 0;
    for (const instance of instances) {
      const { model, values } = modelFor(instance);
      const search = new LearningSearch(model, seededRandom(1));
      search.onLesson = (literals) => {
        learned++;
        expect(satisfied(literals, values), `${instance.name}: ${literals.join(' ')}`).toBe(true);
      };
      const { total } = model;
      for (;;) {
        expect(search.run(10_000, () => false)).toBe('solution');
        const reached = search.solution()[total]!;
        if (reached === values[total]) break;
        search.require(2 * total + 1, 1 - reached);
      }
    }
    expect(learned).toBeGreaterThan(1000);
  });
});

/** The model of a project, and the values of all its variables in the published schedule. */
function modelFor(instance: Instance): { readonly model: StageModel; readonly values: Int32Array } {
  const p = projectProblem(instance);
  const net = compileProblem(p, 0.5);
  const search = StageSearch.over(p, net, seededRandom(1), false);
  if (search === null) throw new Error(`${instance.name} has a schedule`);
  const { model } = search;
  const starts = nodeStarts(net, instance.witness ?? []);
  const values = valuesOf(model, net, starts);
  // One delivery: its end is the total.
  values.fill(search.totalOf(starts), net.count, model.starts);
  return { model, values };
}

function satisfied(literals: readonly number[], values: Int32Array): boolean {
  for (let k = 0; k < literals.length; k += 2) {
    const side = literals[k] ?? 0;
    const value = values[side >> 1] ?? NaN;
    if ((side % 2 === 0 ? value : -value) >= (literals[k + 1] ?? NaN)) return true;
  }
  return false;
}

import { describe, expect, it } from 'vitest';
import { seededRandom } from '#units';
import { readProjects, type Instance } from '../../../tests/support/read-projects.js';
import { LearningSearch } from '../learning/learning-search.js';
import type { Propagator } from '../learning/propagator.js';
import type { Trail } from '../learning/trail.js';
import { TimeTable } from './time-table.js';
import { distancesOf, modelOf, type Model } from './model.js';

/** Later than the optimum of any instance here. */
const HORIZON = 400;

/** Published instances with a schedule that another solver found; sources in the CITATION.md beside the files. */
const instances = ['rcpsp-max.json', 'rcpsp.json']
  .flatMap((file) => readProjects(new URL(`../../../tests/literature/planner/${file}`, import.meta.url)))
  .filter(({ name, expected }) => expected?.status === 'optimal' && !name.startsWith('j60'));

describe('LearningSearch', () => {
  it('never learns a clause that a schedule within the bound breaks', () => {
    let learned = 0;
    for (const instance of instances) {
      const { model, search } = searchFor(instance);
      const values = withChoices(instance, model);
      search.onLesson = (literals) => {
        learned++;
        expect(satisfied(literals, values), `${instance.name}: ${literals.join(' ')}`).toBe(true);
      };
      const optimum = values[model.starts - 1] ?? NaN;
      for (;;) {
        expect(search.run(10_000, () => false)).toBe('solution');
        const makespan = search.solution()[model.starts - 1] ?? NaN;
        if (makespan === optimum) break;
        search.require(2 * (model.starts - 1) + 1, 1 - makespan);
      }
    }
    expect(learned).toBeGreaterThan(1000);
  });
});

function searchFor(instance: Instance): { model: Model; search: LearningSearch } {
  const distances = distancesOf(instance);
  const model = distances && modelOf(instance, distances, HORIZON);
  if (model === null) throw new Error(`${instance.name} has a schedule`);
  const watch = (trail: Trail): Propagator[] => [new TimeTable(trail, instance, HORIZON)];
  return { model, search: new LearningSearch({ ...model, watch }, seededRandom(1)) };
}

/** The values of all variables of the model in the published schedule. */
function withChoices({ dur, witness = [] }: Instance, { bounds, edges }: Model): number[] {
  const values = [...witness, ...Array.from({ length: bounds.length / 2 - witness.length }, () => 0)];
  for (const { from, to, choice } of edges) {
    if (choice < 0 || choice % 2 === 1) continue;
    const end = (witness[from / 2] ?? NaN) + (dur[from / 2] ?? NaN);
    values[choice / 2] = end <= (witness[to / 2] ?? NaN) ? 1 : 0;
  }
  return values;
}

function satisfied(literals: readonly number[], values: readonly number[]): boolean {
  for (let k = 0; k < literals.length; k += 2) {
    const side = literals[k] ?? 0;
    const value = values[side >> 1] ?? NaN;
    if ((side % 2 === 0 ? value : -value) >= (literals[k + 1] ?? NaN)) return true;
  }
  return false;
}

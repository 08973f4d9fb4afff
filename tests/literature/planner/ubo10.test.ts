import { describe, expect, it } from 'vitest';
import { schedule } from '#planner';
import { scheduleFaults } from '../../support/check-schedule.js';
import { projectProblem, SINK } from '../../support/project-problem.js';
import { readProjects } from '../../support/read-projects.js';

const instances = readProjects(new URL('ubo10.json', import.meta.url));

/** Source: CITATION.md beside this file. */
describe('RCPSP/max, set UBO10', () => {
  it('has all ten instances', () => expect(instances).toHaveLength(10));

  it.each(instances)('$name: $expected.status $expected.makespan', (instance) => {
    const p = projectProblem(instance);
    const outcome = schedule(p, { certainty: 0.5, seed: 1, limit: 20_000 });
    if (instance.expected?.status === 'infeasible') {
      expect(outcome.status).toBe('conflict');
      return;
    }
    if (outcome.status !== 'planned') throw new Error(outcome.status);
    expect(scheduleFaults(p, outcome.schedule)).toEqual([]);
    expect(outcome.schedule.starts.get(SINK)).toBe(instance.expected?.makespan);
  });
});

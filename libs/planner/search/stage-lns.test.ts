import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { schedule, type Schedule } from '#planner';
import { seededRandom } from '#units';
import { scheduleFaults } from '../../../tests/support/check-schedule.js';
import { largeProject } from '../../../tests/support/large-projects.js';
import { projectProblem, SINK } from '../../../tests/support/project-problem.js';
import { randomProblem } from '../../../tests/support/random-problem.js';
import { compileProblem } from '../compile-problem.js';
import { repairModel } from './lns-repair.js';
import { nodeStarts } from './node-starts.js';
import { valuesOf } from './stage-model.js';
import { StageSearch } from './stage-search.js';

const shape = { stages: 7, until: 40, calendars: true, resources: true };

describe('repairModel', () => {
  it('leaves the schedule it was made from possible, whatever is free', () => {
    let kept = 0;
    fc.assert(
      fc.property(randomProblem(shape), fc.infiniteStream(fc.boolean()), fc.nat(), (random, free, seed) => {
        const p = { ...random, lags: random.lags.slice(0, 3) };
        const outcome = schedule(p, { certainty: 0.5, seed: 1 });
        if (outcome.status !== 'planned') return;
        const net = compileProblem(p, 0.5);
        const { model } = StageSearch.over(p, net, seededRandom(1), false)!;
        const starts = nodeStarts(
          net,
          p.stages.map(({ id }) => outcome.schedule.starts.get(id)!),
        );
        const isFree = Uint8Array.from(net.domains, (_, i) =>
          net.fixed[i] === 0 && free.next().value ? 1 : 0,
        );
        const small = repairModel(model, net, starts, isFree, seededRandom(seed));
        const values = valuesOf(small, net, starts);
        const valueOf = (side: number): number => (side % 2 === 0 ? 1 : -1) * values[side >> 1]!;
        for (const { from, to, weight, choice } of small.edges) {
          if (from >> 1 >= net.count || to >> 1 >= net.count) continue;
          if (choice >= 0 && values[choice >> 1] !== 1 - (choice & 1)) continue;
          if (choice < 0) kept++;
          expect(valueOf(to)).toBeGreaterThanOrEqual(valueOf(from) + weight);
        }
      }),
      { seed: 61, numRuns: 500 },
    );
    expect(kept).toBeGreaterThan(60);
  });
});

describe('neighbourhoods of stages', () => {
  const cell = { resources: 4, complexity: 1.5, factor: 0.75, strength: 0.1 };
  it.each([
    { ...cell, activities: 60, maxima: 0 },
    { ...cell, activities: 60, maxima: 0.3, planted: true },
  ])(
    'find earlier schedules than the complete search alone, each time the same, with maximum lags $maxima',
    (given) => {
      const p = projectProblem(largeProject(given, 2));
      const found = (limit: number): Schedule => {
        const outcome = schedule(p, { certainty: 0.5, seed: 1, limit });
        if (outcome.status !== 'planned') throw new Error(outcome.status);
        expect(scheduleFaults(p, outcome.schedule)).toEqual([]);
        return outcome.schedule;
      };
      // The first turn belongs to the complete search.
      const [alone, more] = [found(500), found(1600)];
      expect(more.starts.get(SINK)).toBeLessThan(alone.starts.get(SINK)!);
      expect(found(1600)).toEqual(more);
    },
  );
});

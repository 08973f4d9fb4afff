import fc from 'fast-check';
import type { Project } from './project.js';

/** If a tiny project has a schedule, it has one that ends by then: four activities, each of or waiting for at most 2. */
export const TINY_HORIZON = 8;

/** Three or four activities, two resources and lags of both signs: few enough for brute force, often infeasible. */
export function tinyProject(): fc.Arbitrary<Project> {
  return fc.integer({ min: 3, max: 4 }).chain((n) => {
    const activity = fc.integer({ min: 1, max: n });
    const lag = fc.tuple(activity, activity, fc.integer({ min: -4, max: 2 })).filter(([i, j]) => i !== j);
    return fc
      .record({
        dur: fc.array(fc.integer({ min: 0, max: 2 }), { minLength: n, maxLength: n }),
        req: fc.array(fc.tuple(fc.nat(3), fc.nat(2)), { minLength: n, maxLength: n }),
        lags: fc.array(lag, { maxLength: 5 }),
      })
      .map(({ dur, req, lags }) => ({
        dur: [0, ...dur, 0],
        req: [[0, 0], ...req, [0, 0]],
        cap: [3, 2],
        lags,
      }));
  });
}

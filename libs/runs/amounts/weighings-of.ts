import { expectedUse } from './expected-use.js';
import { useSurroundings } from '../input/piece-surroundings.js';
import type { PartWeighing } from '../input/workings.js';
import { badBatch } from '../log/bad-batch.js';
import type { RunStanding } from '../run-in-hand.js';

/**
 * What pieces of a design took on the scales, over all its runs. Entries that are to be forgotten teach nothing, nor do
 * batches that went wrong.
 */
export function weighingsOf(standings: readonly RunStanding[], design: string): PartWeighing[] {
  return standings.flatMap((standing) => {
    const { run, progress } = standing;
    if (run.design.key !== design) return [];
    return progress.weighed.flatMap(({ part: key, pieces, usedG, at, entry }) => {
      const part = run.parts.get(key);
      if (part === undefined || part.kind === 'decor') return [];
      if (progress.forgotten.has(entry) || badBatch(standing, key)) return [];
      const { meanMl } = expectedUse(part, useSurroundings(part, run));
      return [{ part: key, pieces, usedG, at, expectedMl: meanMl }];
    });
  });
}

import { ok, type Result } from '#units';
import { assessRuns } from '../assess-runs.js';
import type { RunsInput } from '../input/input.js';
import { usedMaterials, type UsedMaterial } from '../stock/used-materials.js';

/** What the runs of an input have used up by their logs. @returns issues for input that makes no sense */
export function materialsUsed(input: RunsInput): Result<UsedMaterial[]> {
  const taken = assessRuns(input, { taught: false });
  if (!taken.ok) return taken;
  return ok(
    taken.value.flatMap((sized) => {
      const { key } = sized.assessed.run.order;
      return usedMaterials(
        sized,
        input.log.filter(({ run }) => run === key),
      );
    }),
  );
}

/** The same for runs that each come with what they refer to, one result for each. */
export function materialsUsedByRuns(inputs: readonly RunsInput[]): Result<UsedMaterial[]>[] {
  return inputs.map(materialsUsed);
}

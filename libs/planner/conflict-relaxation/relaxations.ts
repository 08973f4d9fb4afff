import type { Certainty, Problem, Requirement } from '../problem.js';
import { place } from '../schedule.js';
import { isMeasured, rangeOf, withValue, without, type Measured } from './relaxed-problem.js';

/** One requirement that, relaxed alone, leaves a schedule. */
export interface Relaxation {
  readonly requirement: Requirement;
  /** The number that would do, as near to what is asked as can be; absent where it is no number, or none would do. */
  readonly enough?: number;
  /** The number as it is. */
  readonly now?: number;
  /** A schedule of the problem in which it is relaxed. */
  readonly starts: ReadonlyMap<string, number>;
}

/** Conflicts to learn from for each question. */
const LIMIT = 500;

/**
 * Which requirements of a minimal conflict would do if they alone were relaxed, and by how much at least.
 *
 * Of a minimal conflict each does, as far as that conflict goes: that is what minimal means. It is asked of the whole
 * problem here, where another conflict may lie behind the first; what does not solve that is left out. So is what was
 * done already and the horizon: neither can be relaxed. More room is never worse, so the least change is found by
 * halving.
 * @param requirements of a conflict of `p` at that certainty
 * @param options.stop asked now and then; what was found so far is the answer soon after it says true, and the number of
 *   the last one may then be farther from what is asked than it need be
 */
export function relaxations(
  p: Problem,
  requirements: readonly Requirement[],
  {
    certainty,
    seed,
    stop = () => false,
  }: { readonly certainty: Certainty; readonly seed: number; readonly stop?: (() => boolean) | undefined },
): Relaxation[] {
  const anew: Problem = { ...p, stages: p.stages.map(({ previous: _old, ...stage }) => stage) };
  const scheduleOf = (q: Problem): ReadonlyMap<string, number> | undefined => {
    if (stop()) return undefined;
    const found = place(q, { certainty, seed, stop, limit: LIMIT });
    return typeof found === 'object' ? found.starts : undefined;
  };
  return requirements.flatMap((requirement): Relaxation[] => {
    if (requirement.kind === 'fixed' || requirement.kind === 'horizon') return [];
    const measured = isMeasured(requirement)
      ? leastChange(anew, requirement, { certainty, scheduleOf })
      : undefined;
    if (measured !== undefined) return [measured];
    const starts = scheduleOf(without(anew, requirement));
    return starts === undefined ? [] : [{ requirement, starts }];
  });
}

function leastChange(
  p: Problem,
  requirement: Measured,
  options: {
    readonly certainty: Certainty;
    readonly scheduleOf: (q: Problem) => ReadonlyMap<string, number> | undefined;
  },
): Relaxation | undefined {
  const { now, most } = rangeOf(p, requirement, options.certainty);
  const at = (value: number) => options.scheduleOf(withValue(p, requirement, value));
  let starts = at(most);
  if (starts === undefined) return undefined;
  let [bad, enough] = [now, most];
  while (Math.abs(enough - bad) > 1) {
    const middle = Math.trunc((enough + bad) / 2);
    const found = at(middle);
    if (found === undefined) bad = middle;
    else [enough, starts] = [middle, found];
  }
  return { requirement, enough, now, starts };
}

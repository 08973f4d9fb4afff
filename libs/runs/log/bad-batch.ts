import { makingAttempt, type RunState } from '../assessed-run.js';

/**
 * Whether the batch of a part that is there now went wrong, so that it is no lesson in how batches go. One made anew
 * is; and one that only ran short set and cured like any other.
 */
export function badBatch(runState: RunState, part: string): boolean {
  const attempt = makingAttempt(runState, part)?.attempt;
  return runState.progress.mishaps.some(
    (each) => each.part === part && each.attempt === attempt && each.mishap !== 'ran-short',
  );
}

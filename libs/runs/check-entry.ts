import type { LogEntry } from '#contract';
import type { Issue } from '#units';
import { foldLog } from './fold-log.js';
import type { RunsInput } from './input.js';
import { workingsOf } from './workings.js';

/**
 * Whether a new entry can be true of a run that has the given log: its stage or part exists and is still open.
 * @returns issues with paths from the entry's root; none when it may be appended
 */
export function checkEntry(input: RunsInput, run: string, entry: LogEntry): Issue[] {
  const workings = workingsOf(input).find((w) => w.order.key === run);
  if (workings === undefined) throw new Error(`run ${run} is not in the input`);
  const before = input.log.filter((line) => line.run === run).map((line) => line.entry);
  const { issues } = foldLog(workings, [...before, entry]);
  return issues
    .filter((issue) => issue.path[0] === before.length)
    .map((issue) => ({ ...issue, path: issue.path.slice(1) }));
}

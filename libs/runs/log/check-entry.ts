import type { LogEntry } from '#contract';
import type { Issue } from '#units';
import { nothingLearned } from '../clocks/nothing-learned.js';
import { askBack } from './ask-back.js';
import { foldLog } from './fold-log.js';
import type { RunsInput } from '../input/input.js';
import { resolveRuns } from '../input/resolve-run.js';

/**
 * Whether a new entry can be true of a run that has the given log: its stage or part exists and is still open, and an
 * entry that is taken back leaves later ones possible. A weigh-in or a time that is hard to believe must be
 * confirmed.
 * @returns issues with paths from the entry's root; none when it may be appended
 */
export function checkEntry(input: RunsInput, run: string, entry: LogEntry): Issue[] {
  const resolved = resolveRuns(input).find((w) => w.order.key === run);
  if (resolved === undefined) throw new Error(`run ${run} is not in the input`);
  const before = input.log.filter((line) => line.run === run);
  const had = new Set(foldLog(resolved, before).issues.map((issue) => JSON.stringify(issue)));
  const after = [...before, { entry }];
  const { issues } = foldLog(resolved, after);
  const { workshop, learned = nothingLearned } = input;
  const asked = askBack(resolved, after, { workshop, learned }).filter(
    ({ path: [place] }) => place === before.length,
  );
  return [...issues, ...asked]
    .filter((issue) => !had.has(JSON.stringify(issue)))
    .map((issue): Issue => {
      const [place, ...rest] = issue.path;
      if (place === before.length) return { ...issue, path: rest };
      return { code: 'log.needed-later', path: ['entry'], because: issue };
    });
}

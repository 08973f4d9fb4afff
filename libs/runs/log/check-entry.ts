import type { LogEntry } from '#contract';
import type { Issue } from '#units';
import { clocksOf } from '../clocks/forecast-clocks.js';
import { taughtClocks } from '../clocks/taught-clocks.js';
import { nothingLearned } from '../clocks/nothing-learned.js';
import { askTimes } from './ask-times.js';
import { askWeighIns } from './ask-weigh-ins.js';
import { foldLog } from './fold-log.js';
import type { RunsInput } from '../input/input.js';
import { resolveRuns } from '../input/resolve-run.js';

/**
 * Whether a new entry can be true of a run that has the given log: its stage or part exists and is still open, and an
 * entry that is taken back leaves later ones possible. A weigh-in or a time that is hard
 * to believe must be confirmed.
 * @returns issues with paths from the entry's root; none when it may be appended
 */
export function checkEntry(input: RunsInput, run: string, entry: LogEntry): Issue[] {
  const resolved = resolveRuns(input).find((w) => w.order.key === run);
  if (resolved === undefined) throw new Error(`run ${run} is not in the input`);
  const before = input.log.filter((line) => line.run === run);
  const learned = input.learned ?? nothingLearned;
  const clocks = taughtClocks(resolved, clocksOf(resolved, input.workshop), () => learned);
  const had = new Set(foldLog(resolved, before).issues.map((issue) => JSON.stringify(issue)));
  const after = [...before, { entry }];
  const { issues } = foldLog(resolved, after);
  const asked = [...askWeighIns(resolved, after), ...askTimes(resolved, after, clocks)].filter(
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

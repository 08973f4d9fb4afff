import type { Learned, WorkshopFacts } from '#contract';
import type { Issue } from '#units';
import { clocksOf } from '../clocks/forecast-clocks.js';
import { taughtClocks } from '../clocks/taught-clocks.js';
import type { LogLine } from '../input/input.js';
import type { ResolvedRun } from '../input/resolve-run.js';
import { askTimes } from './ask-times.js';
import { askWeighIns } from './ask-weigh-ins.js';

/**
 * All that is asked back of a run's log before it is believed: masses, and times by what the workshop has learned.
 * @param lines of this run only
 * @returns issues with paths from the log's root
 */
export function askBack(
  run: ResolvedRun,
  lines: readonly LogLine[],
  { workshop, learned }: { readonly workshop: WorkshopFacts; readonly learned: Learned },
): Issue[] {
  const clocks = taughtClocks(run, clocksOf(run, workshop), () => learned);
  return [...askWeighIns(run, lines), ...askTimes(run, lines, clocks)];
}

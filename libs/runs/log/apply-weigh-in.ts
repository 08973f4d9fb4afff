import type { LogEntry } from '#contract';
import type { Issue } from '#units';
import type { LogPlace } from './apply-seen.js';
import { cureStarts } from '../run-in-hand.js';
import type { RunProgress } from './run-progress.js';
import type { RunWorkings } from '../input/workings.js';

/** Takes down the mass of some pieces while they cure. All parts must be out of their moulds for that. */
export function applyWeighIn(
  run: RunWorkings,
  progress: RunProgress,
  entry: Extract<LogEntry, { kind: 'weigh-in' }>,
  { at, ref, path }: LogPlace,
): Issue[] {
  const starts = cureStarts({ run, progress, clocks: new Map() });
  const waiting = starts.find(({ attempt }) => attempt.endedAt === undefined || attempt.endedAt > at);
  if (starts.length > 0 && waiting === undefined) {
    progress.weighIns.push({ pieces: entry.pieces, massG: entry.massG, at, entry: ref });
    return [];
  }
  const first =
    waiting === undefined ? 'a part that cures' : `“${waiting.attempt.stage.title}” done before it`;
  return [
    {
      code: 'log.cure-not-begun',
      path: [...path, 'at'],
      message: `Nothing of this run cures at ${entry.at}; accepted: ${first}.`,
      value: entry.at,
      accepted: first,
    },
  ];
}

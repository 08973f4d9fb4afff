import type { LogEntry } from '#contract';
import type { Issue } from '#units';
import type { LogPlace } from './effective-log.js';
import { cureStarts, type LoggedRun } from '../assessed-run.js';

/** Takes down the mass of some pieces while they cure. All parts must be out of their moulds for that. */
export function applyWeighIn(
  logged: LoggedRun,
  entry: Extract<LogEntry, { kind: 'weigh-in' }>,
  { at, ref }: LogPlace,
): Issue[] {
  const starts = cureStarts(logged);
  const waiting = starts.find(({ attempt }) => attempt.endedAt === undefined || attempt.endedAt > at);
  if (starts.length > 0 && waiting === undefined) {
    logged.progress.weighIns.push({ pieces: entry.pieces, massG: entry.massG, at, entry: ref });
    return [];
  }
  return [
    {
      code: 'log.cure-not-begun',
      path: ['at'],
      value: entry.at,
      at: entry.at,
      ...(waiting !== undefined && { stage: waiting.attempt.stage.title }),
    },
  ];
}

import { spoilsBatter, type LogEntry, type Stage } from '#contract';
import { mixedTogether } from '../input/mixed-together.js';
import { makingStage, type ResolvedRun } from '../input/resolve-run.js';
import { latestAttempt, type RunProgress } from './run-progress.js';

/** The stages that make what is spoilt together with a part that is made again, for it came from the same bowl. */
export function spoiltWith(
  run: ResolvedRun,
  progress: RunProgress,
  { part, mishap, alone }: Extract<LogEntry, { kind: 'mishap' }>,
): Stage[] {
  const which = alone === true ? undefined : spoilsBatter[mishap];
  const own = makingStage(run.design, part);
  if (which === undefined || own === undefined) return [];
  const round = latestAttempt(progress, own.key)?.round;
  return mixedTogether(run.design, part).flatMap(({ key }) => {
    const making = makingStage(run.design, key);
    const attempt = making === undefined ? undefined : latestAttempt(progress, making.key);
    if (making === undefined || making === own || progress.dropped.has(key)) return [];
    const isSpoilt = which === 'all' || attempt?.status === 'open';
    return attempt?.round === round && isSpoilt ? [making] : [];
  });
}

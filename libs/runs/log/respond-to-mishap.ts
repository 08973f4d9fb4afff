import { usualResponse, type LogEntry, type RunGroup } from '#contract';
import type { Issue, Minute } from '#units';
import type { LogPlace } from './effective-log.js';
import { spoiltWith } from './spoilt-together.js';
import { latestAttempt, type RunProgress, type StageAttempt } from './run-progress.js';
import { unknownName } from '../input/name-issues.js';
import { isDoneFor, piecesOfStage } from '../input/stage-pieces.js';
import { makingStage, type ResolvedRun } from '../input/resolve-run.js';
import { preparedTogether } from '../input/mixed-together.js';
import { isBeforeMaking, stagesBehind } from '../input/stage-order.js';

/**
 * Changes where the run stands after a mishap.
 * *Remake*: the part's making stage, what prepared its batch, and every finished stage that built on it, is spoilt and done
 * again for the pieces affected, of one group where the entry names it; what does not build on it stays as it is. What came
 * from the same bowl is spoilt with it. A batch that ran short is not spoilt: what it did
 * reach stays done, and the rest is made in a second one. *Drop part*: its open stages are left out.
 * *Carry on*: nothing changes but the record.
 */
export function applyMishap(
  run: ResolvedRun,
  progress: RunProgress,
  entry: Extract<LogEntry, { kind: 'mishap' }>,
  { at, place }: Pick<LogPlace, 'at' | 'place'>,
): Issue[] {
  const making = makingStage(run.design, entry.part);
  if (making === undefined || progress.dropped.has(entry.part)) {
    const made = run.design.parts.filter(
      (p) => makingStage(run.design, p.key) && !progress.dropped.has(p.key),
    );
    return [unknownName(['part'], 'part', entry.part, made)];
  }
  const having = run.design.groups?.filter(({ parts }) => parts.includes(entry.part)) ?? [];
  const group = having.find(({ key }) => key === entry.group);
  if (entry.group !== undefined && group === undefined) {
    return [unknownName(['group'], 'group', entry.group, having)];
  }
  const response = entry.response ?? usualResponse[entry.mishap];
  if (response === 'drop-part' && group !== undefined && having.length > 1) {
    const title = run.parts.get(entry.part)?.title ?? entry.part;
    return [
      { code: 'log.dropped-of-one-group', path: ['group'], value: group.key, title, group: group.title },
    ];
  }
  const attempt = latestAttempt(progress, making.key)?.attempt ?? 1;
  const meant = entry.onPurpose === true ? ({ onPurpose: true } as const) : {};
  progress.mishaps.push({ part: entry.part, attempt, mishap: entry.mishap, response, ...meant, at });
  if (response === 'drop-part') progress.dropped.add(entry.part);
  if (response === 'remake') {
    const after = entry.mishap === 'ran-short' ? finish : spoil;
    const others = spoiltWith(run, progress, entry);
    const again = { at, round: place, close: after };
    remake(run, progress, making.key, again, { pieces: entry.pieces, group });
    for (const other of others) remake(run, progress, other.key, again, {});
  }
  return [];
}

/** Pieces that a mishap took. */
interface Affected {
  readonly pieces?: number | undefined;
  /** The group that they are of; undefined: not said, or all pieces are alike. */
  readonly group?: RunGroup | undefined;
}

/** How what was made ends, and when and in which round it is made again. */
interface Again {
  readonly at: Minute;
  readonly round: number;
  readonly close: (attempt: StageAttempt, at: Minute) => void;
}

function remake(
  run: ResolvedRun,
  progress: RunProgress,
  making: string,
  { at, round, close }: Again,
  { pieces, group }: Affected,
): void {
  const has = group === undefined ? undefined : new Set(group.parts);
  const stages = new Set([...preparationOf(run, making), ...builtOn(run, making)]);
  for (const key of stages) {
    const last = latestAttempt(progress, key);
    if (last === undefined || (key !== making && last.status !== 'done')) continue;
    if (has !== undefined && !isDoneFor(run.design, last.stage, has)) continue;
    close(last, at);
    progress.attempts.splice(progress.attempts.indexOf(last) + 1, 0, {
      stage: last.stage,
      attempt: last.attempt + 1,
      count: Math.min(pieces ?? last.count, group?.count ?? Infinity, piecesOfStage(run, last.stage)),
      status: 'open',
      round,
      notBefore: at,
    });
  }
}

/** What prepares the batch of which a stage makes a part: another needs new lye and new fats. */
function preparationOf({ design }: ResolvedRun, making: string): string[] {
  const part = design.stages.find(({ key }) => key === making)?.part ?? '';
  const batch = new Set(preparedTogether(design, part).map(({ key }) => key));
  return design.stages
    .filter((stage) => batch.has(stage.part) && isBeforeMaking(design, stage))
    .map(({ key }) => key);
}

/** The maker was at it when it went wrong, so an attempt that was never finished ends with the mishap. */
function spoil(attempt: StageAttempt, at: Minute): void {
  attempt.status = 'spoilt';
  attempt.endedAt ??= at;
  attempt.startedAt ??= at;
}

function finish(attempt: StageAttempt, at: Minute): void {
  attempt.status = 'done';
  attempt.endedAt ??= at;
  attempt.startedAt ??= at;
}

/** The stage itself and every stage that comes after it through links and waits. */
export function builtOn(run: ResolvedRun, stage: string): Set<string> {
  const found = new Set([stage]);
  let grew = true;
  while (grew) {
    const before = found.size;
    for (const link of run.design.links) if (found.has(link.from)) found.add(link.to);
    for (const wait of run.design.waits) {
      if (stagesBehind(run.design, wait).some(({ key }) => found.has(key))) found.add(wait.stage);
    }
    grew = found.size > before;
  }
  return found;
}

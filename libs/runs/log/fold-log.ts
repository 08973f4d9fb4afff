import type { LogEntry } from '#contract';
import { minuteOfIso, under, type Issue, type Minute } from '#units';
import type { LoggedRun } from '../assessed-run.js';
import { applySeen } from './apply-seen.js';
import { applyWeighIn } from './apply-weigh-in.js';
import { applyWeighing } from './apply-weighing.js';
import { applyMishap } from './respond-to-mishap.js';
import { stageMinutes, latestAttempt, type RunProgress, type StageAttempt } from './run-progress.js';
import { unknownName } from '../input/name-issues.js';
import type { LogLine } from '../input/input.js';
import { effectiveLog, type LogPlace } from './effective-log.js';
import { piecesOfStage } from '../input/stage-pieces.js';
import { ownDesign, type ResolvedRun } from '../input/resolve-run.js';
import { stagesBefore, startingStage } from '../input/stage-order.js';

export interface FoldedLog {
  readonly progress: RunProgress;
  /** Entries that cannot be true of this run; they are left out. Paths from the log's root. */
  readonly issues: readonly Issue[];
}

/**
 * Folds a run's bench log, oldest first, into where the run stands.
 * @param lines of this run only, in the order in which they were logged
 */
export function foldLog(run: ResolvedRun, lines: readonly LogLine[]): FoldedLog {
  const progress: RunProgress = {
    attempts: run.design.stages.map((stage) => ({
      stage,
      attempt: 1,
      count: piecesOfStage(run, stage),
      status: 'open',
    })),
    notYet: [],
    seen: [],
    weighed: [],
    weighIns: [],
    forgotten: new Set(),
    dropped: new Set(),
    mishaps: [],
  };
  const { effective, issues } = effectiveLog(lines);
  const untrue = effective.flatMap(({ ref, entry, place }) => {
    const at = minuteOfIso(entry.at);
    return under([place], applyEntry({ run, progress }, entry, { at, ref, place }));
  });
  return { progress, issues: [...issues, ...untrue] };
}

/**
 * Issues of a folded log seen from the root of the input, where each line holds its entry.
 * @param lineAt which line of the input an entry of the log is; absent: the same
 */
export function underEntries(
  root: readonly (string | number)[],
  issues: readonly Issue[],
  lineAt = (place: number): number => place,
): Issue[] {
  return issues.map((issue) => {
    const [place = 0, ...rest] = issue.path;
    return { ...issue, path: [...root, lineAt(Number(place)), 'entry', ...rest] };
  });
}

/** @returns issues with paths from the entry's root */
function applyEntry(logged: LoggedRun, entry: LogEntry, where: LogPlace): Issue[] {
  const { run, progress } = logged;
  const { at, ref, place } = where;
  switch (entry.kind) {
    case 'done':
      return applyDone(run, progress, entry, where);
    case 'not-yet': {
      const attempt = latestAttempt(progress, entry.stage);
      if (attempt === undefined) return [unknownStage(progress, entry.stage)];
      if (attempt.status === 'done') return [alreadyDone(attempt)];
      if (!waitsForSoap(run, progress, entry.stage)) return [nothingToWaitFor(attempt)];
      progress.notYet.push({
        ...{ stage: entry.stage, attempt: attempt.attempt, at, entry: ref, place },
        ...(entry.opened !== undefined && { opened: minuteOfIso(entry.opened) }),
      });
      attempt.notBefore = at;
      return [];
    }
    case 'seen':
      return applySeen(run, progress, entry, where);
    case 'weigh-in':
      return applyWeighIn(logged, entry, where);
    case 'mishap':
      return applyMishap(run, progress, entry, where);
    case 'weighed':
      return applyWeighing(run, progress, entry, where);
    case 'note':
      if (entry.stage === undefined || latestAttempt(progress, entry.stage) !== undefined) return [];
      return [unknownStage(progress, entry.stage)];
    case 'forget':
      progress.forgotten.add(entry.entry);
      return [];
    case 'take-back':
      throw new Error('entries that take back do not stand themselves');
  }
}

function applyDone(
  run: ResolvedRun,
  progress: RunProgress,
  entry: Extract<LogEntry, { kind: 'done' }>,
  { at, ref, place }: LogPlace,
): Issue[] {
  const attempt = latestAttempt(progress, entry.stage);
  if (attempt === undefined) return [unknownStage(progress, entry.stage)];
  if (attempt.status === 'done') return [alreadyDone(attempt)];
  const missing = notDoneBefore(run, progress, entry.stage);
  if (missing.length > 0) return [tooSoon(attempt, missing)];
  const started = entry.startedAt === undefined ? undefined : minuteOfIso(entry.startedAt);
  if (started !== undefined && started > at) {
    return [
      {
        code: 'log.ends-before-start',
        path: ['startedAt'],
        value: entry.startedAt,
        accepted: { kind: 'until', at: entry.at },
        ...{ startedAt: entry.startedAt ?? entry.at, at: entry.at },
      },
    ];
  }
  attempt.status = 'done';
  attempt.entry = ref;
  attempt.place = place;
  attempt.startedAt = started ?? ((at - stageMinutes(attempt.stage, attempt.count)) as Minute);
  attempt.endedAt = at;
  if (entry.opened !== undefined) attempt.opened = minuteOfIso(entry.opened);
  return [];
}

/**
 * Titles of the stages that must be done before this one can have been: by link, or because they make its part. What the
 * design leaves unsaid counts for plans only: an entry that was taken down once is not to be refused later.
 */
function notDoneBefore(run: ResolvedRun, progress: RunProgress, stage: string): string[] {
  const before = stagesBefore(run.design, stage, ownDesign(run));
  return [...before].flatMap((key) => {
    const attempt = latestAttempt(progress, key);
    if (attempt === undefined || attempt.status === 'done' || progress.dropped.has(attempt.stage.part))
      return [];
    return [attempt.stage.title];
  });
}

/** Whether the stage waits for a state of a part that is made. */
function waitsForSoap(run: ResolvedRun, progress: RunProgress, stage: string): boolean {
  return run.design.waits.some((wait) => {
    if (wait.stage !== stage || wait.opens === undefined) return false;
    const from = startingStage(run.design, wait.part, wait.opens);
    return from !== undefined && latestAttempt(progress, from.key)?.status === 'done';
  });
}

function tooSoon(attempt: StageAttempt, missing: readonly string[]): Issue {
  const { key, title } = attempt.stage;
  return { code: 'log.out-of-order', path: ['stage'], value: key, ...{ title, missing } };
}

function nothingToWaitFor(attempt: StageAttempt): Issue {
  const { key, title } = attempt.stage;
  return { code: 'log.nothing-to-wait-for', path: ['stage'], value: key, title };
}

function unknownStage(progress: RunProgress, stage: string): Issue {
  const open = progress.attempts.filter((a) => a.status !== 'spoilt').map((a) => a.stage);
  return unknownName(['stage'], 'stage', stage, open);
}

function alreadyDone(attempt: StageAttempt): Issue {
  const { key, title } = attempt.stage;
  return { code: 'log.already-done', path: ['stage'], value: key, title };
}

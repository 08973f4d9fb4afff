import { states } from '#clocks';
import type { LogEntry } from '#contract';
import { minuteOfIso, type Issue, type Minute } from '#units';
import { unknownName } from '../input/name-issues.js';
import { latestAttempt, type RunProgress } from './run-progress.js';
import { stateHasClock } from '../input/states-of-parts.js';
import { freeingStage, makingStage, type RunWorkings } from '../input/workings.js';

/** Where an entry stands in a log, and when what it tells of happened. */
export interface LogPlace {
  readonly at: Minute;
  readonly ref: string;
  readonly path: (string | number)[];
}

/**
 * Takes down that a part was looked at: it had a state not yet, already, or just now. That says something only once
 * the state's clock runs: from lye-in for the batter, which the entry must tell, from the unmoulding for the cure, from
 * the making of the part for the rest.
 */
export function applySeen(
  run: RunWorkings,
  progress: RunProgress,
  entry: Extract<LogEntry, { kind: 'seen' }>,
  { at, ref, path }: LogPlace,
): Issue[] {
  const part = run.parts.get(entry.part);
  const making = makingStage(run.design, entry.part);
  if (part === undefined || making === undefined || part.kind === 'decor') {
    const made = run.design.parts.filter((p) => p.kind !== 'decor' && makingStage(run.design, p.key));
    return [unknownName([...path, 'part'], 'part', entry.part, made)];
  }
  if (!stateHasClock(part.kind, entry.state)) return [noClock(entry, path)];
  const { clock } = states[entry.state];
  const attempt = latestAttempt(progress, making.key);
  const starter = clock === 'cure' ? (freeingStage(run.design, part) ?? making) : making;
  const started = latestAttempt(progress, starter.key);
  const since = entry.since === undefined ? undefined : minuteOfIso(entry.since);
  const from = since ?? (clock === 'batter' ? undefined : started?.endedAt);
  if (attempt === undefined || from === undefined) return [notStarted(entry, starter.title, path)];
  if (at <= from) return [beforeStart(entry, path)];
  const { state, saw } = entry;
  const seen = { part: part.key, attempt: attempt.attempt, state, saw, at, entry: ref };
  progress.seen.push(since === undefined ? seen : { ...seen, since });
  return [];
}

type SeenEntry = Extract<LogEntry, { kind: 'seen' }>;

function noClock({ part, state }: SeenEntry, path: (string | number)[]): Issue {
  const accepted = 'a state of soap for batter, of a glaze for melt-and-pour';
  return {
    code: 'log.state-without-clock',
    path: [...path, 'state'],
    message: `“${part}” never has the state “${state}”; accepted: ${accepted}.`,
    value: state,
    accepted,
  };
}

function notStarted({ state }: SeenEntry, stage: string, path: (string | number)[]): Issue {
  const batter = states[state].clock === 'batter';
  const accepted = batter ? 'since, the instant of lye-in' : `“${stage}” logged as done first, or since`;
  return {
    code: 'log.clock-not-started',
    path: [...path, batter ? 'since' : 'state'],
    message: `The clock of “${states[state].title}” has not started in this log; accepted: ${accepted}.`,
    value: batter ? undefined : state,
    accepted,
  };
}

function beforeStart({ at }: SeenEntry, path: (string | number)[]): Issue {
  const accepted = 'an instant after it';
  return {
    code: 'log.before-clock',
    path: [...path, 'at'],
    message: `${at} is before this clock started; accepted: ${accepted}.`,
    value: at,
    accepted,
  };
}

import { states } from '#clocks';
import type { LogEntry } from '#contract';
import { minuteOfIso, type Issue } from '#units';
import { unknownName } from '../input/name-issues.js';
import { latestAttempt, type RunProgress } from './run-progress.js';
import { countsFrom } from '../input/counts-from.js';
import { comesInto } from '../input/states-of-parts.js';
import { freeingStage, makingStage, type ResolvedRun } from '../input/resolve-run.js';
import { startingStage } from '../input/stage-order.js';
import type { LogPlace } from './effective-log.js';

/**
 * Takes down that a part was looked at: it had a state not yet, already, or just now. That says something only once
 * the state's clock runs: for the batter from its mixing, or from lye-in, which the entry must tell; from the unmoulding for
 * the cure, from the making of the part for the rest.
 */
export function applySeen(
  run: ResolvedRun,
  progress: RunProgress,
  entry: Extract<LogEntry, { kind: 'seen' }>,
  { at, ref, place }: LogPlace,
): Issue[] {
  const part = run.parts.get(entry.part);
  const making = makingStage(run.design, entry.part);
  if (part === undefined || making === undefined || part.kind === 'decor') {
    const made = run.design.parts.filter((p) => p.kind !== 'decor' && makingStage(run.design, p.key));
    return [unknownName(['part'], 'part', entry.part, made)];
  }
  if (!comesInto(run.design, part, entry.state)) return [noClock(entry, part.title)];
  const attempt = latestAttempt(progress, making.key);
  const unmoulded = countsFrom(entry.state) === 'unmoulding' ? freeingStage(run.design, part) : undefined;
  const begins = unmoulded ?? startingStage(run.design, part.key, entry.state);
  const starter = begins ?? making;
  const started = latestAttempt(progress, starter.key);
  const since = entry.since === undefined ? undefined : minuteOfIso(entry.since);
  const from = since ?? (begins === undefined ? undefined : started?.endedAt);
  if (attempt === undefined || from === undefined) return [notStarted(entry, starter.title)];
  if (at <= from) return [beforeStart(entry)];
  const { state, saw } = entry;
  const seen = {
    part: part.key,
    attempt: attempt.attempt,
    state,
    saw,
    at,
    entry: ref,
    place,
  };
  progress.seen.push(since === undefined ? seen : { ...seen, since });
  return [];
}

type SeenEntry = Extract<LogEntry, { kind: 'seen' }>;

function noClock({ state }: SeenEntry, title: string): Issue {
  return { code: 'log.state-without-clock', path: ['state'], value: state, ...{ title, state } };
}

function notStarted({ state }: SeenEntry, stage: string): Issue {
  const batter = states[state].clock === 'batter';
  return {
    code: 'log.clock-not-started',
    path: [batter ? 'since' : 'state'],
    value: batter ? undefined : state,
    state,
    ...(!batter && { stage }),
  };
}

function beforeStart({ at }: SeenEntry): Issue {
  return { code: 'log.before-clock', path: ['at'], value: at, at };
}

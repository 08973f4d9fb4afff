import type { Hours, NudgeKind, PlanDocument, PlannedStage } from '#contract';
import { quietAround } from '#hours';
import { minute, minuteOfIso, type Minute } from '#units';

/** A reminder that a plan asks for. */
export interface ChosenNudge {
  readonly run: string;
  readonly stage: string;
  readonly attempt: number;
  readonly kind: NudgeKind;
  /** Title of the stage. */
  readonly title: string;
  readonly startAt: Minute;
  /** Absent: nothing closes the window. */
  readonly lastCallAt: Minute | undefined;
  readonly dueAt: Minute;
}

/** Minutes before the last call at which it is said. */
const NOTICE = 30;

/**
 * The reminders of a plan: when a window opens ahead of its stage, when it is time for the stage, and shortly
 * before it is too late.
 *
 * In quiet hours nothing is said: an opening waits for the morning, a last call is brought forward to the evening, and
 * so is the time for a stage that begins in them.
 * One that would then come at no useful time is left out, so each stage has one to three.
 * @param now reminders that would be due before it are left out
 */
export function chooseNudges(plan: PlanDocument, quiet: Hours['quiet'], now: Minute): ChosenNudge[] {
  return plan.runs.flatMap(({ run, stages }) =>
    stages
      .filter((stage) => stage.status === 'planned')
      .flatMap((stage) => ofStage(stage, quiet, plan.timeZone, now).map((nudge) => ({ run, ...nudge })))
      .filter((nudge) => nudge.dueAt >= now),
  );
}

function ofStage(
  stage: PlannedStage,
  quiet: Hours['quiet'],
  zone: string,
  now: Minute,
): Omit<ChosenNudge, 'run'>[] {
  const start = minuteOfIso(stage.startAt);
  const opens = minuteOfIso(stage.opensAt);
  const last = stage.lastCallAt === null ? undefined : minuteOfIso(stage.lastCallAt);
  const { title, attempt } = stage;
  const about = { ...{ stage: stage.key, attempt, title }, startAt: start, lastCallAt: last };
  const nudges: Omit<ChosenNudge, 'run'>[] = [];
  const opening = quietAround(opens, quiet, zone)?.to ?? opens;
  // A window that is open while the maker looks at the plan is no news, and would be none at the next plan either.
  if (opens > now && opening < start) {
    nudges.push({ ...about, kind: 'window-opens', dueAt: opening });
  }
  nudges.push({ ...about, kind: 'time-for-it', dueAt: outsideQuiet(start, quiet, zone, now) });
  if (last !== undefined) {
    const wanted = minute(last - NOTICE);
    const calling = outsideQuiet(wanted, quiet, zone, now);
    if (calling > start && calling <= last) {
      nudges.push({ ...about, kind: 'last-call', dueAt: calling });
    }
  }
  return nudges;
}

/** Brought forward to the minute before quiet hours; where that has passed, put off to their end. */
function outsideQuiet(at: Minute, quiet: Hours['quiet'], zone: string, now: Minute): Minute {
  const around = quietAround(at, quiet, zone);
  if (around === undefined) return at;
  return around.from - 1 >= now ? minute(around.from - 1) : around.to;
}

import { windows, type Problem, type Schedule, type Stage, type Window } from '#planner';

/** When a stage may start, given that what comes before it is done as planned. Minutes since 1970. */
export interface StageWindow {
  readonly opens: number;
  /** undefined: nothing closes it. */
  readonly lastCall: number | undefined;
  readonly surelyOpen: number | undefined;
  readonly surelyUntil: number | undefined;
  /** What decides the opening and the closing, at likely values. */
  readonly likely: Window;
}

const LIKELY = 0.5;
const CAUTIOUS = 0.9;
/** A closing this near to the end of the hours looked up comes from that end, not from the soap. */
const NEAR_THE_END = 21 * 1440;

/**
 * The window of each stage that is still to be done.
 * Stages that start earlier are taken as done at their planned times; those that follow are still free, so a last
 * call leaves room for all that must come after. Cautious bounds are one-sided: *surely open* asks that the soap
 * is ready with 90 % certainty, *surely until* that it is not yet too late; a stage can lack a moment at which
 * both hold. A stage that only the end of the looked-up hours closes has no last call.
 */
export function stageWindows(problem: Problem, schedule: Schedule): Map<string, StageWindow> {
  const end = Math.max(...Object.values(problem.calendars).flatMap((open) => open.map((i) => i.to)));
  const found = new Map<string, StageWindow>();
  const order = [...problem.stages].sort((a, b) => startOf(a, schedule) - startOf(b, schedule));
  order.forEach((stage, i) => {
    if (stage.fixed !== undefined) return;
    const earlier = new Set(order.slice(0, i).map((s) => s.id));
    const given = withDone(problem, schedule, earlier);
    const likely = windowOf(given, stage.id, LIKELY);
    if (likely === undefined) return;
    const bounded = likely.latest < end - NEAR_THE_END;
    const ready = windowOf(without(given, 'atMost'), stage.id, CAUTIOUS);
    const open = windowOf(without(given, 'atLeast'), stage.id, CAUTIOUS);
    found.set(stage.id, {
      opens: likely.earliest,
      lastCall: bounded ? likely.latest : undefined,
      surelyOpen: ready?.earliest,
      surelyUntil: bounded ? open?.latest : undefined,
      likely,
    });
  });
  return found;
}

function startOf(stage: Stage, schedule: Schedule): number {
  return stage.fixed ?? schedule.starts.get(stage.id) ?? Infinity;
}

function windowOf(problem: Problem, id: string, certainty: number): Window | undefined {
  const outcome = windows(problem, certainty);
  return outcome.status === 'windows' ? outcome.windows.get(id) : undefined;
}

function withDone(problem: Problem, schedule: Schedule, done: ReadonlySet<string>): Problem {
  const stages = problem.stages.map((stage) => {
    const start = done.has(stage.id) ? schedule.starts.get(stage.id) : undefined;
    return start === undefined || stage.fixed !== undefined ? stage : { ...stage, fixed: start };
  });
  return { ...problem, stages };
}

/** The problem with one side of its uncertain lags taken away. */
function without(problem: Problem, side: 'atLeast' | 'atMost'): Problem {
  const lags = problem.lags.map((lag) => {
    if (lag[side]?.kind !== 'uncertain') return lag;
    const { atLeast, atMost, ...rest } = lag;
    const after = { ...rest, atLeast: { kind: 'known', minutes: 0 } as const };
    if (side === 'atMost') return atLeast === undefined ? rest : { ...rest, atLeast };
    return atMost === undefined ? after : { ...after, atMost };
  });
  return { ...problem, lags };
}

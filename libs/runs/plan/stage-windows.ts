import {
  windowsAlong,
  withoutDueDates,
  withoutPreferences,
  type Problem,
  type Schedule,
  type Window,
} from '#planner';

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
/** By so much the hours looked up are cut, in minutes, to see whether a closing comes from their end or from the soap. */
const CUT = 21 * 1440;

/**
 * The window of each stage that is still to be done.
 * Stages that start earlier are taken as done at their planned times; those that follow are still free, so a last
 * call leaves room for all that must come after. Cautious bounds are one-sided: *surely open* asks that the soap
 * is ready with 90 % certainty, *surely until* that it is not yet too late; a stage can lack a moment at which
 * both hold. A stage that only the end of the looked-up hours closes has no last call. Where a plan gives up something
 * that is only preferred, its windows are those of what must be.
 */
export function stageWindows(problem: Problem, schedule: Schedule): Map<string, StageWindow> {
  const found = windowsOf(problem, schedule);
  const required = withoutPreferences(problem);
  const open = problem.stages.filter(({ id, fixed }) => fixed === undefined && !found.has(id));
  if (open.length === 0 || required === problem) return found;
  return new Map([...windowsOf(required, schedule), ...found]);
}

function windowsOf(problem: Problem, schedule: Schedule): Map<string, StageWindow> {
  const along = (p: Problem, certainty: number): Map<string, Window | undefined> =>
    windowsAlong(p, certainty, schedule.starts);
  const likely = along(problem, LIKELY);
  const sooner = along(endingSooner(problem), LIKELY);
  // A day that is likely to be missed makes no soap ready later.
  const ready = along(withoutDueDates(without(problem, 'atMost')), CAUTIOUS);
  const open = along(without(problem, 'atLeast'), CAUTIOUS);
  const found = new Map<string, StageWindow>();
  for (const [id, window] of likely) {
    if (window === undefined) continue;
    const bounded = window.latest === sooner.get(id)?.latest;
    found.set(id, {
      opens: window.earliest,
      lastCall: bounded ? window.latest : undefined,
      surelyOpen: ready.get(id)?.earliest,
      surelyUntil: bounded ? open.get(id)?.latest : undefined,
      likely: window,
    });
  }
  return found;
}

/** The problem with all that it looks ahead cut by the same. */
function endingSooner(problem: Problem): Problem {
  const end = Math.max(...Object.values(problem.calendars).flatMap((open) => open.map((i) => i.to))) - CUT;
  const calendars = Object.fromEntries(
    Object.entries(problem.calendars).map(([name, open]) => [
      name,
      open.flatMap(({ from, to }) => (from < end ? [{ from, to: Math.min(to, end) }] : [])),
    ]),
  );
  return { ...problem, calendars, until: problem.until - CUT };
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

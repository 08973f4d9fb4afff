import type { Lag, Problem } from './problem.js';

/** What must be, without what is only preferred; the problem itself where nothing is. */
export function withoutPreferences(p: Problem): Problem {
  return without(p, isPreferred);
}

/** Without those preferences whose time is not known beforehand; the problem itself where there is none. */
export function withoutUncertainPreferences(p: Problem): Problem {
  return without(p, (lag) => isPreferred(lag) && lag.atMost?.kind === 'uncertain');
}

function without(p: Problem, isGivenUp: (lag: Lag) => boolean): Problem {
  if (!p.lags.some(isGivenUp)) return p;
  return {
    ...p,
    lags: p.lags.flatMap((lag): Lag[] => {
      if (!isGivenUp(lag)) return [lag];
      const { atMost: _given, isPreference: _up, ...rest } = lag;
      return rest.atLeast === undefined ? [] : [rest];
    }),
  };
}

/** Without the days asked for: what comes after them is late, not lost. */
export function withoutDueDates(p: Problem): Problem {
  const stages = p.stages.map(({ latest, isDue, ...stage }) =>
    isDue === true || latest === undefined ? stage : { ...stage, latest },
  );
  return { ...p, stages };
}

function isPreferred({ isPreference, atMost }: Lag): boolean {
  return isPreference === true && atMost !== undefined;
}

import { band, type Forecast, type Reason, type StateId } from '#clocks';
import type { ClockForecast, Reason as ReasonDocument } from '#contract';
import { bandNow } from './observe-draws.js';
import { isClosing } from '../input/states-of-parts.js';
import type { AssessedRun } from '../assessed-run.js';

const BATTER: readonly StateId[] = ['light-trace', 'medium-trace', 'thick-trace', 'stiff'];

/** What a plan shows of its clocks: the batter's pace, the states that the design waits for, and the cure. */
export function shownClocks(assessed: AssessedRun): ClockForecast[] {
  const { design } = assessed.run;
  return allClocks(assessed).filter(({ part, state }) => {
    const waited = design.waits.some(
      (wait) => wait.part === part && (wait.opens === state || wait.closes === state),
    );
    return waited || state === 'cured' || BATTER.includes(state);
  });
}

/** Every clock of every part, in the order of the parts and of the states. */
export function allClocks(assessed: AssessedRun): ClockForecast[] {
  return assessed.run.design.parts.flatMap((part) =>
    [...(assessed.clocks.get(part.key) ?? new Map<StateId, Forecast>())].map(([state, found]) => ({
      part: part.key,
      state,
      closes: isClosing(state),
      band: band(found),
      now: bandNow(assessed, part.key, state) ?? band(found),
      baseMin: found.baseMin,
      sigma: found.sigma,
      reasons: found.reasons.map(presentReason),
      beyond: found.beyond.map((outside) => ({ code: 'clock.beyond', ...outside })),
    })),
  );
}

function presentReason({ rule, input, value, usual, factor, evidence, isFloor }: Reason): ReasonDocument {
  return {
    ...{ code: 'clock.reason', rule, input, value, usual, factor, evidence },
    ...(isFloor && { isFloor }),
  };
}

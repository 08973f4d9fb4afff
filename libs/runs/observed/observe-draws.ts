import { band, conditioned, zOf, type Band, type StateId } from '#clocks';
import type { Truncation } from '#planner';
import { drawOf, type AssessedRun, type RunState } from '../assessed-run.js';
import { sightingsOf } from '../log/sightings.js';

/** A state seen just as it came is known to this many standard deviations: nobody looks to the second. */
const JUST_NOW = 0.02;

/**
 * What the bench log tells about the draws behind a run's clocks: “not yet at t” means the state comes after t,
 * “already at t” that it came before. A stage that was done counts as “already” here, though it does not teach the
 * clocks of other runs (`learn-lessons.ts`): of this batch it is true, and it is said once, so nothing adds up.
 */
export function observedDraws(runState: RunState): Record<string, Truncation> {
  const draws: Record<string, Truncation> = {};
  for (const { part, state, saw, minutes } of sightingsOf(runState)) {
    const forecast = runState.clocks.get(part)?.get(state);
    if (forecast === undefined) continue;
    const z = zOf(forecast, minutes);
    const draw = drawOf(runState.run, part, state);
    draws[draw] = conditioned(draws[draw] ?? {}, boundsOf(saw, z));
  }
  return draws;
}

function boundsOf(saw: 'not-yet' | 'already' | 'just-now', z: number): Truncation {
  switch (saw) {
    case 'not-yet':
      return { above: z };
    case 'already':
      return { below: z };
    case 'just-now':
      return { above: z - JUST_NOW, below: z + JUST_NOW };
  }
}

/** The band of a state as it stands now: the forecast, given what the log has told. @returns undefined without a clock */
export function bandNow(
  assessed: Omit<AssessedRun, 'scales'>,
  part: string,
  state: StateId,
): Band | undefined {
  const forecast = assessed.clocks.get(part)?.get(state);
  if (forecast === undefined) return undefined;
  return band(forecast, assessed.draws[drawOf(assessed.run, part, state)]);
}

import { band, conditioned, zOf, type Band, type Forecast, type StateId } from '#clocks';
import type { Truncation } from '#planner';
import { drawOf, lookedDrawOf, type AssessedRun, type RunState } from '../assessed-run.js';
import type { Sighting } from '../log/sightings.js';

/** A state seen just as it came is known to this many standard deviations: nobody looks to the second. */
const JUST_NOW = 0.02;

/**
 * States of one pace vary together, but not wholly: σ of the logarithm that each has of its own. Common practice, no source.
 * A state that was looked at itself is known by that look; the others only so far.
 */
export const OF_ITS_OWN = 0.12;

/**
 * What the bench log tells about the draws behind a run's clocks: “not yet at t” means the state comes after t,
 * “already at t” that it came before. A stage that was done counts as “already” here, though by itself it does not teach the
 * clocks of other runs: of this batch it is true, and it is said once, so nothing adds up. A state that was looked at gets a
 * draw of its own; of the others of its pace the look tells less.
 * @param sightings of the run, as forecasts without lessons have them: what was blamed for a wait stays so whatever is learned
 */
export function observedDraws(
  runState: RunState,
  sightings: readonly Sighting[],
): Record<string, Truncation> {
  const draws: Record<string, Truncation> = {};
  const add = (draw: string, bounds: Truncation): void => {
    draws[draw] = conditioned(draws[draw] ?? {}, bounds);
  };
  for (const { part, state, saw, minutes } of sightings) {
    const forecast = runState.clocks.get(part)?.get(state);
    if (forecast === undefined) continue;
    const z = zOf(forecast, minutes);
    add(lookedDrawOf(runState.run, part, state), boundsOf(saw, z, 0));
    add(drawOf(runState.run, part, state), boundsOf(saw, z, ownOf(forecast)));
  }
  return draws;
}

/** In standard deviations: as far either way as something spread evenly reaches that has this σ. */
function ownOf({ batchSigma, sigma }: Forecast): number {
  return (Math.sqrt(3) * Math.min(OF_ITS_OWN, batchSigma / 2)) / sigma;
}

/** What a look says of a state that differs from the one looked at by up to `apart` standard deviations, 0 or more. */
function boundsOf(saw: 'not-yet' | 'already' | 'just-now', z: number, apart: number): Truncation {
  switch (saw) {
    case 'not-yet':
      return { above: z - apart };
    case 'already':
      return { below: z + apart };
    case 'just-now':
      return { above: z - Math.max(apart, JUST_NOW), below: z + Math.max(apart, JUST_NOW) };
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
  return band(forecast, seenOf(assessed, part, state));
}

/** What the log tells of the draw behind a state: by looks at the state itself, or else at others of its pace. */
export function seenOf(
  { run, draws }: Omit<AssessedRun, 'scales'>,
  part: string,
  state: StateId,
): Truncation | undefined {
  return draws[lookedDrawOf(run, part, state)] ?? draws[drawOf(run, part, state)];
}

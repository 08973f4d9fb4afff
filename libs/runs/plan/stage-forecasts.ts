import { quantiles, type StateId } from '#clocks';
import { FORECAST_TIMES, type StageForecast } from '#contract';
import type { Schedule } from '#planner';
import { isoInstant, minute } from '#units';
import { stageId, type AssessedRun } from '../assessed-run.js';
import { countsFrom } from '../input/counts-from.js';
import { stageMinutes } from '../log/run-progress.js';
import { clockStarter } from '../log/sightings.js';
import { seenOf } from '../observed/observe-draws.js';
import { partReference } from './network-references.js';

/**
 * When the states come that a stage waits for or that close it, each by its own clock and by what the log has seen. Those of
 * batter in the bowl are left out: whoever stands over it sees them.
 */
export function stageForecasts(assessed: AssessedRun, stage: string, schedule: Schedule): StageForecast[] {
  return assessed.run.design.waits
    .filter((wait) => wait.stage === stage)
    .flatMap(({ part, opens, closes }) => [
      ...(opens === undefined ? [] : forecastOf(assessed, part, opens, false, schedule)),
      ...(closes === undefined ? [] : forecastOf(assessed, part, closes, true, schedule)),
    ]);
}

function forecastOf(
  assessed: AssessedRun,
  part: string,
  state: StateId,
  closes: boolean,
  schedule: Schedule,
): StageForecast[] {
  const found = assessed.clocks.get(part)?.get(state);
  const from = clockStart(assessed, part, state, schedule);
  if (found === undefined || from === undefined || countsFrom(state) === 'mix') return [];
  const times = quantiles(found, FORECAST_TIMES, seenOf(assessed, part, state));
  return [
    {
      part: partReference(assessed, part),
      ...{ state, closes, fromAt: isoInstant(minute(from)) },
      minutes: times.map((at) => Math.round(at)),
    },
  ];
}

/** As it was logged, or else as it is planned. Minutes since 1970. */
function clockStart(
  assessed: AssessedRun,
  part: string,
  state: StateId,
  { starts }: Schedule,
): number | undefined {
  const starter = clockStarter(assessed, part, state);
  if (starter === undefined || starter.endedAt !== undefined) return starter?.endedAt;
  const start = starts.get(stageId(assessed.run.order.key, starter.stage.key, starter.attempt));
  return start === undefined ? undefined : start + stageMinutes(starter.stage, starter.count);
}

import { instantOf, localDateOf, localTimeOf } from '#hours';
import { isoInstant, minute, minuteOfIso, type Minute } from '#units';
import type { AssessedRun } from '../../assessed-run.js';
import { isUntouched, troubledRuns, type Candidate, type Situation } from '../candidate.js';

/** So many openings of the maker’s hours after the beginning of the run, and before it. */
const LATER = 6;
const EARLIER = 2;
/** Within the hours in which it begins, minutes later; then on to the next quarter of an hour. */
const WITHIN = [60, 120];
const QUARTER = 15;

/** Begins a run that has not begun at another time: at the next openings of the maker’s hours, those before, or an hour later. */
export function shiftStart(situation: Situation): Candidate[] {
  return troubledRuns(situation)
    .filter(isUntouched)
    .flatMap((assessed) => {
      const { key, title } = assessed.run.order;
      const begins = beginning(assessed, situation);
      const openings = situation.open.map(({ from }) => from);
      const sitting = situation.open.find(({ from, to }) => from <= begins && begins < to);
      const within = WITHIN.map((after) => minute(Math.ceil((begins + after) / QUARTER) * QUARTER)).filter(
        (at) => sitting !== undefined && at < sitting.to,
      );
      const later = openings.filter((at) => at > begins).slice(0, LATER);
      const earlier = openings.filter((at) => at >= situation.options.now && at < begins).slice(-EARLIER);
      return [...within, ...later, ...earlier].map((at): Candidate => {
        const start = `${localDateOf(at, situation.zone)}T${localTimeOf(at, situation.zone)}`;
        return {
          change: { kind: 'start', run: key, startAfter: start },
          about: `start/${key}`,
          title: {
            code: at > begins ? 'remedy.begin-later' : 'remedy.begin-earlier',
            run: title,
            at: isoInstant(at),
          },
          asks: [],
          worse: [],
          also: [],
          cautions: [],
        };
      });
    });
}

/** When the run begins now: at its first stage, or without a plan when it may. */
function beginning({ run }: AssessedRun, { plan, options, zone }: Situation): Minute {
  const shown = plan.document.runs.find((each) => each.run === run.order.key)?.stages[0];
  if (shown !== undefined) return minuteOfIso(shown.startAt);
  const may = instantOf(run.order.startAfter, zone) ?? options.now;
  return minute(Math.max(may, options.now));
}

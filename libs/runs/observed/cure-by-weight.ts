import { fitCure, hasSettled, readyDay, type Band, type CureRule, type StateId, type WeighIn } from '#clocks';
import type { CureByWeight, CureNote } from '#contract';
import type { Issue } from '#units';
import { cureStarts, type LotCure, type AssessedRun } from '../assessed-run.js';
import { cureStart, lotWeighings, waterShare } from './lot-weighings.js';
import { bandNow } from './observe-draws.js';

const MINUTES_PER_DAY = 1440;
/** From this span on weighings say more of a lot than its recipe does: common practice, no source. */
const TELLING_DAYS = 14;

/**
 * Dry is not all that cured means: soap of mostly oleic acid is dry long before it is mild and firm. So the scales bring
 * the day forward to this share of what the recipe's clock says, and no further. A choice, no source.
 */
const LEAST_OF_CLOCK = 0.5;

type Unscaled = Omit<AssessedRun, 'scales'>;

/**
 * Fits the loss of mass to the weigh-ins of a lot and forecasts the day from which it meets the workshop's rule.
 *
 * Weighings count per piece, so that one piece less on the scales is no loss of mass; those before the last thing was
 * put on the pieces are left out. Soap that loses little is not cured for that: no lot is ready before its clock says
 * that it can be used. For its first two weeks, and until the weighings span as long or show that the lot has stopped
 * losing, the recipe's cure clock stands.
 */
export function cureByWeight(assessed: Unscaled, rule: CureRule): LotCure {
  const start = cureStart(assessed);
  const weighIns = lotWeighings(assessed).filter(({ counts }) => counts);
  const told: CureByWeight = {
    weighings: assessed.progress.weighIns.length,
    settled: false,
    lossPercentPerWeek: rule.lossPercentPerWeek,
  };
  if (start === undefined || weighIns.length < 2) {
    return { told: { ...told, note: { code: 'cure.few-weighings' } } };
  }
  const fit = fitCure(weighIns, { waterShare: waterShare(assessed.run) });
  if (!fit.ok) return { told: { ...told, note: noteOf(fit.issues[0], weighIns) } };
  const settled = hasSettled(weighIns, rule);
  const days = weighIns.map((each) => each.days);
  const [first, last] = [Math.min(...days), Math.max(...days)];
  const [usable, cured] = [latest(assessed, 'usable'), latest(assessed, 'cured')];
  const byWeight = settled ? { low: last, likely: last, high: last } : readyDay(fit.value, rule);
  // What still loses weight at its last weighing was not cured before that.
  const least = settled ? 0 : last;
  const bounded = mapBand(byWeight, (day, side) =>
    Math.max(day, least, usable[side] / MINUTES_PER_DAY, (cured[side] * LEAST_OF_CLOCK) / MINUTES_PER_DAY),
  );
  const said = {
    ...told,
    settled,
    freshG: fit.value.freshG,
    settledG: fit.value.settledG,
    readyDays: bounded,
  };
  if (last < TELLING_DAYS || (!settled && last - first < TELLING_DAYS)) {
    const note = { code: 'cure.short-span', days: TELLING_DAYS } as const;
    return { told: { ...said, note }, fit: fit.value };
  }
  return {
    told: said,
    ready: mapBand(bounded, (day) => start + day * MINUTES_PER_DAY),
    fit: fit.value,
  };
}

/** What is odd about the weighing that an issue names. */
function noteOf(issue: Issue | undefined, weighIns: readonly WeighIn[]): CureNote {
  const odd = weighIns[Number(issue?.path[1])];
  const code = issue?.code;
  if (odd === undefined || (code !== 'cure.mass-gained' && code !== 'cure.lost-more-than-water')) {
    return { code: 'cure.no-fit' };
  }
  return { code, days: odd.days, massG: odd.massG };
}

type Side = keyof Band;

function mapBand(band: Band, to: (value: number, side: Side) => number): Band {
  return { low: to(band.low, 'low'), likely: to(band.likely, 'likely'), high: to(band.high, 'high') };
}

/** The slowest of the parts that cure, minutes from the start of the cure. */
function latest(assessed: Unscaled, state: StateId): Band {
  const bands = cureStarts(assessed).flatMap(({ part }) => bandNow(assessed, part, state) ?? []);
  return mapBand({ low: 0, likely: 0, high: 0 }, (_, side) =>
    Math.max(0, ...bands.map((band) => band[side])),
  );
}

import { READING_NOISE } from './priors.js';
import { allowedShare, DAYS_PER_WEEK, type CureRule, type WeighIn } from './weigh-in.js';

/** Closer together, the noise of two readings weighs more than the loss between them. A judgement. */
const LEAST_DAYS_BETWEEN = 5;
/** A weighing on the evening before, or a day late, still counts as a week apart. */
const LEAST_DAYS_OF_WEEK = 6;

/**
 * Whether the last weighings themselves show that a lot has stopped losing weight, whatever was forecast. Either
 *
 * - the last and the latest at least 5 days before it differ by less than the rule allows for those days, with a
 *   standard deviation of the difference of two readings (0.28 % of the mass) to spare, or
 * - the last three a week apart (6 days or more) lie within a week's allowance of each other: with the usual rule
 *   1 g per 100 g, common practice, no source.
 *
 * A gain counts as a difference. Weighings of one day are averaged.
 * @param weighIns in any order; fewer than two, or all close together, have settled nothing
 * @throws RangeError for a rule of 0 % or less, or 100 % or more
 */
export function hasSettled(weighIns: readonly WeighIn[], rule: CureRule): boolean {
  const allowed = allowedShare(rule);
  const byDay = averagedByDay(weighIns);
  const last = byDay.at(-1);
  if (last === undefined) return false;
  return pairAgrees(byDay, last, allowed) || threeAgree(byDay, last, allowed);
}

function pairAgrees(byDay: readonly WeighIn[], last: WeighIn, allowed: number): boolean {
  const before = latestBefore(byDay, last.days - LEAST_DAYS_BETWEEN);
  if (before === undefined) return false;
  const weeks = (last.days - before.days) / DAYS_PER_WEEK;
  const difference = Math.abs(before.massG - last.massG) / before.massG;
  return difference + Math.SQRT2 * READING_NOISE < allowed * weeks;
}

function threeAgree(byDay: readonly WeighIn[], last: WeighIn, allowed: number): boolean {
  const second = latestBefore(byDay, last.days - LEAST_DAYS_OF_WEEK);
  if (second === undefined) return false;
  const first = latestBefore(byDay, second.days - LEAST_DAYS_OF_WEEK);
  if (first === undefined) return false;
  const masses = [first, second, last].map(({ massG }) => massG);
  return Math.max(...masses) - Math.min(...masses) <= allowed * Math.max(...masses);
}

function latestBefore(byDay: readonly WeighIn[], days: number): WeighIn | undefined {
  return byDay.findLast((weighIn) => weighIn.days <= days);
}

function averagedByDay(weighIns: readonly WeighIn[]): WeighIn[] {
  const massesOf = new Map<number, number[]>();
  for (const { days, massG } of weighIns) massesOf.set(days, [...(massesOf.get(days) ?? []), massG]);
  return [...massesOf]
    .map(([days, masses]) => ({
      days,
      massG: masses.reduce((sum, massG) => sum + massG, 0) / masses.length,
    }))
    .sort((a, b) => a.days - b.days);
}

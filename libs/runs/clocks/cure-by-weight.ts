import { fitCure, hasSettled, readyDay, type Band, type CureRule, type WeighIn } from '#clocks';
import type { CureByWeight } from '#contract';
import { cureStarts, type RunInHand } from '../run-in-hand.js';

const MINUTES_PER_DAY = 1440;

/** What the weighings of a lot say of its cure. */
export interface LotCure {
  readonly told: CureByWeight;
  /** When it is cured, minutes since 1970; absent while the weighings do not say. */
  readonly ready?: Band;
}

/**
 * Fits the loss of mass to the weigh-ins of a lot and forecasts the day from which it meets the workshop's rule.
 * Weighings count per piece, so that one piece less on the scales is no loss of mass.
 */
export function cureByWeight(hand: RunInHand, rule: CureRule): LotCure {
  const told: CureByWeight = {
    weighings: hand.progress.weighIns.length,
    settled: false,
    rule: `cured when it loses less than ${String(rule.lossPercentPerWeek)} % of its mass in a week`,
  };
  const start = cureStart(hand);
  if (start === undefined || told.weighings < 2) {
    return { told: { ...told, note: 'Two weigh-ins of the same pieces or more are needed.' } };
  }
  const weighIns = hand.progress.weighIns.map(({ at, massG, pieces }): WeighIn => ({
    days: (at - start) / MINUTES_PER_DAY,
    massG: massG / pieces,
  }));
  const fit = fitCure(weighIns);
  if (!fit.ok) {
    return { told: { ...told, note: fit.issues.map(({ message }) => message).join(' ') } };
  }
  const days = readyDay(fit.value, rule);
  const instant = (day: number): number => start + day * MINUTES_PER_DAY;
  return {
    told: {
      ...told,
      freshG: fit.value.freshG,
      settledG: fit.value.settledG,
      readyDays: days,
      settled: hasSettled(weighIns, rule),
    },
    ready: { low: instant(days.low), likely: instant(days.likely), high: instant(days.high) },
  };
}

/** When the last part of the lot began to cure; undefined while one has not. */
function cureStart(hand: RunInHand): number | undefined {
  const starts = cureStarts(hand).map(({ attempt }) => attempt.endedAt);
  if (starts.length === 0 || starts.includes(undefined)) return undefined;
  return Math.max(...starts.map(Number));
}

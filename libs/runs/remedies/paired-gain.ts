import { metScenarios } from '#planner';
import type { FullPlan } from '../plan/plan-run.js';

export interface Gain {
  readonly gain: number;
  readonly standardError: number;
}

/** A plan lived through scenario by scenario: the chance of each to give sound pieces by the day, the batter clock counted in. */
export function chances({ document, solved }: FullPlan, seed: number, scenarios: number): Float64Array {
  const { outcome, judged, odds } = solved;
  if (outcome?.status !== 'planned' || odds === null || document.odds === null)
    return new Float64Array(scenarios);
  // The batter clock is not simulated: it multiplies the odds of the windows.
  const kept = odds.onTime === 0 ? 0 : document.odds.soundByTheDay / odds.onTime;
  return Float64Array.from(metScenarios(judged, outcome.schedule, { seed, scenarios }), (met) => met * kept);
}

/**
 * The gain in odds and its standard error over pairs: both plans lived through the same weather, so what is luck in
 * both is luck in neither difference. s² = Σ(dₖ − d̄)² / (n (n − 1)).
 */
export function pairedGain(before: Float64Array, after: Float64Array): Gain {
  const n = after.length;
  const differences = after.map((chance, k) => chance - (before[k] ?? 0));
  const gain = differences.reduce((sum, d) => sum + d, 0) / n;
  const squares = differences.reduce((sum, d) => sum + (d - gain) ** 2, 0);
  return { gain, standardError: Math.sqrt(squares / (n * Math.max(1, n - 1))) };
}

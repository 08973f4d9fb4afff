import type { ClockInputs } from './inputs.js';
import { spreadsUnlearned, type Spreads } from './offset-prior.js';
import { liftOf } from './floor.js';
import { beyondSide, factorOf, varianceOf } from './rule.js';
import { rulesFor } from './rules.js';
import { states, type StateId } from './states.js';

/** A forecast without its reasons. */
export interface Evaluation extends Spreads {
  readonly medianMin: number;
  /** What the rules that apply may have wrong about the recipe. */
  readonly ruleSigma: number;
}

/** Past its table a rule is a guess, so its σ counts this many times, even where its factor is 1. */
const BEYOND_WIDENING = 2;

/**
 * The numbers of a forecast, without the words: for benches, what-if sliders and simulations, which ask a hundred
 * thousand times a second.
 *
 *     median = base · Π f_r    σ_rule² = Σ σ_r²    σ² = σ_base² + σ_rule² + what is not known of the workshop
 *
 * over the rules that act on the state, and lifted to its floor; a rule whose factor is 1 adds no σ_r, one read outside its
 * table 2 σ_r.
 *
 * @param inputs must have passed `checkInputs`; here, unlike in `forecast`, that is not looked at again
 * @returns minutes, not rounded
 */
export function evaluate(state: StateId, inputs: ClockInputs): Evaluation {
  const { baseMin, sigma } = states[state];
  let medianMin = baseMin;
  let variance = 0;
  for (const rule of rulesFor(state, inputs)) {
    const factor = factorOf(rule, inputs);
    medianMin *= factor;
    if (beyondSide(rule, inputs) !== undefined) variance += (BEYOND_WIDENING * rule.sigma) ** 2;
    else if (factor !== 1) variance += varianceOf(rule, inputs);
  }
  medianMin *= liftOf(state, medianMin, inputs)?.factor ?? 1;
  const ruleSigma = Math.sqrt(variance);
  return { medianMin, ruleSigma, ...spreadsUnlearned(sigma, ruleSigma) };
}

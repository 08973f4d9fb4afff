import type { Evidence } from '#units';
import { demandChecked } from './check-inputs.js';
import { evaluate } from './evaluate.js';
import { liftOf } from './floor.js';
import { referenceInputs, type ClockInputs, type Measure } from './inputs.js';
import type { Side } from './engine/factor-at.js';
import { beyondSide, factorOf, isMeasureRule, type Rule, type RuleId } from './rule.js';
import type { Spreads } from './offset-prior.js';
import { rulesFor } from './rules.js';
import { states, type StateId } from './states.js';

/** A rule that moved the forecast, with what it read. */
export interface Reason {
  /** `lesson`: what a log has taught. */
  readonly rule: RuleId | 'lesson';
  /** What it read; `log`: how many batches of the log have taught it. */
  readonly input: keyof ClockInputs | 'log';
  readonly value: number | string;
  /** What would have left the forecast as it was. */
  readonly usual: number | string;
  readonly factor: number;
  /** It is the floor that the product of all others was lifted to. */
  readonly isFloor?: true;
  readonly evidence: Evidence;
}

/** A rule that was asked beyond its table, with the ends of what it knows. */
export interface Beyond {
  readonly rule: RuleId;
  readonly input: Measure;
  readonly value: number;
  readonly side: Side;
  readonly from: number;
  readonly to: number;
  /** At which it is held. */
  readonly factor: number;
}

/** When a state comes about: log-normal, in minutes from the state's own start. */
export interface Forecast extends Spreads {
  readonly state: StateId;
  readonly baseMin: number;
  /** `baseMin` times the factor of every reason, multiplied in order. */
  readonly medianMin: number;
  /** What the rules that apply may have wrong about the recipe. */
  readonly ruleSigma: number;
  /**
   * Nobody in this workshop has found it so any sooner, nor looked for it: minutes from its start. A plan does not count on
   * it before. Absent: it was looked for, or never had.
   */
  readonly earliestMin?: number;
  readonly reasons: readonly Reason[];
  /** Where a rule was asked beyond its table. */
  readonly beyond: readonly Beyond[];
}

/**
 * Forecasts a change of state for a workshop that has logged nothing yet; `withOffset` adds what a log has taught.
 *
 *     median = base · Π f_r        σ² = σ_base² + Σ σ_r² + σ_workshop² + σ_recipe²
 *
 * over the rules that act on the state and whose factor is not 1, and lifted to its floor, which is a reason like another. A rule read outside its table holds its
 * factor, counts with 2 σ_r, and is named in `beyond`.
 *
 * @param inputs must have passed `checkInputs`
 * @returns minutes, not rounded; the numbers are those of `evaluate`
 * @throws RangeError for inputs that `checkInputs` refuses: the caller has not asked it
 */
export function forecast(state: StateId, inputs: ClockInputs): Forecast {
  demandChecked(inputs);
  const reasons: Reason[] = [];
  const beyond: Beyond[] = [];
  let product = states[state].baseMin;
  for (const rule of rulesFor(state, inputs)) {
    const factor = factorOf(rule, inputs);
    product *= factor;
    if (factor !== 1) reasons.push(reasonOf(rule, factor, inputs));
    const outside = beyondOf(rule, factor, inputs);
    if (outside !== undefined) beyond.push(outside);
  }
  const lift = liftOf(state, product, inputs);
  if (lift !== undefined) reasons.push({ ...reasonOf(lift.floor, lift.factor, inputs), isFloor: true });
  return { state, baseMin: states[state].baseMin, ...evaluate(state, inputs), reasons, beyond };
}

function reasonOf(
  { id, evidence, reads }: Pick<Rule, 'id' | 'evidence' | 'reads'>,
  factor: number,
  inputs: ClockInputs,
): Reason {
  const [value, usual] = [inputs[reads], referenceInputs[reads]];
  return { rule: id, input: reads, value, usual, factor, evidence };
}

function beyondOf(rule: Rule, factor: number, inputs: ClockInputs): Beyond | undefined {
  const side = beyondSide(rule, inputs);
  if (side === undefined || !isMeasureRule(rule)) return undefined;
  const { id, reads: input, table } = rule;
  const [from = NaN, to = NaN] = [table[0]?.[0], table.at(-1)?.[0]];
  return { rule: id, input, value: inputs[input], side, from, to, factor };
}

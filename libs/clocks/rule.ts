import type { Evidence } from '#units';
import { factorAt, outsideOf, type Point, type Side } from './engine/factor-at.js';
import type { Choice, ClockInputs, Measure } from './inputs.js';
import type { StateId } from './states.js';

/** Names a rule for ever: its words and what is kept of a forecast go by it. */
export type RuleId =
  | 'lye-on-batter'
  | 'fats-on-batter'
  | 'lard'
  | 'free-acids'
  | 'wax'
  | 'clay'
  | 'alcohol'
  | 'batter-temperature'
  | 'fragrance'
  | 'fragrance-slowing'
  | 'fragrance-ricing'
  | 'fragrance-unknown'
  | 'olive-pomace'
  | 'castor'
  | 'butters'
  | 'sugar'
  | 'emulsifying'
  | 'mixing'
  | 'lye-on-set'
  | 'sodium-lactate'
  | 'batter-on-set'
  | 'koh-on-set'
  | 'cast-size'
  | 'salt-early'
  | 'salt-in-mould'
  | 'salt-in-the-open'
  | 'hard-fatty-acids'
  | 'room-temperature'
  | 'gel-on-set'
  | 'hard-fats-in-gel'
  | 'mould'
  | 'cutting-end'
  | 'coat-thickness'
  | 'bead-width'
  | 'melt-size'
  | 'room-on-glaze'
  | 'lye-on-ash'
  | 'room-on-ash'
  | 'humidity-on-ash'
  | 'air-on-ash'
  | 'gel-on-ash'
  | 'lye-on-cure'
  | 'oleic'
  | 'oleic-on-best'
  | 'polyunsaturated'
  | 'castor-on-cure'
  | 'superfat-on-cure'
  | 'salt-on-cure'
  | 'size-on-cure'
  | 'room-on-cure'
  | 'room-humidity'
  | 'air-on-drying'
  | 'gel-on-cure'
  | 'hot-process-on-set'
  | 'hot-process-on-ash'
  | 'hot-process-on-cure'
  | 'rebatch-on-set'
  | 'rebatch-on-cure'
  | FloorId;

/** Names a floor in the same way. */
export type FloorId = 'hot-soap' | 'gel-cools';

interface RuleFacts {
  readonly id: RuleId;
  /** The states whose time the factor multiplies. */
  readonly acts: readonly StateId[];
  /** Standard deviation of the logarithm that the rule adds when it counts. */
  readonly sigma: number;
  readonly evidence: Evidence;
}

/** A rule on a measure: factors on a line through its points, held flat beyond either end. */
export interface MeasureRule extends RuleFacts {
  readonly reads: Measure;
  /** At least two points, x rising, factors never turning. */
  readonly table: readonly Point[];
  /** It reads the chance, in per cent, of something that either is or is not; the last point is what it comes to where it is. */
  readonly isChance?: true;
}

/** A rule on a choice: a factor by name. */
export type ChoiceRule = {
  [K in Choice]: RuleFacts & {
    readonly reads: K;
    readonly table: Readonly<Record<ClockInputs[K], number>>;
  };
}[Choice];

/** One thing that hurries or slows a change of state. Data, so that adding one needs no new code. */
export type Rule = MeasureRule | ChoiceRule;

/** Whether a rule reads a measure, by its table. */
export function isMeasureRule(rule: Rule): rule is MeasureRule {
  return Array.isArray(rule.table);
}

/** The factor of a rule for a batch. @param inputs with no choice that there is not */
export function factorOf(rule: Rule, inputs: ClockInputs): number {
  if (isMeasureRule(rule)) return factorAt(rule.table, inputs[rule.reads]);
  const factor = (rule.table as Readonly<Record<string, number>>)[inputs[rule.reads]];
  if (factor === undefined) throw new RangeError(`“${inputs[rule.reads]}” is not in the table of ${rule.id}`);
  return factor;
}

/**
 * What a rule adds to the variance of the logarithm. A rule that reads a chance p adds p (1 − p) ln² f for not knowing which it
 * will be, as what it multiplies is 1 or f.
 */
export function varianceOf(rule: Rule, inputs: ClockInputs): number {
  const known = rule.sigma * rule.sigma;
  if (!isMeasureRule(rule) || rule.isChance !== true) return known;
  const chance = inputs[rule.reads] / 100;
  return chance * known + chance * (1 - chance) * Math.log(factorAt(rule.table, 100)) ** 2;
}

/** On which side a batch lies outside what a rule knows; undefined within it, and for choices. */
export function beyondSide(rule: Rule, inputs: ClockInputs): Side | undefined {
  return isMeasureRule(rule) ? outsideOf(rule.table, inputs[rule.reads]) : undefined;
}

import type { Evidence } from '#units';
import type { Choice, Measure } from './inputs.js';
import { paceOf, type Pace } from './paces.js';
import { isMeasureRule, type Rule, type RuleId } from './rule.js';
import { rules } from './rules.js';
import { stateIds, states, type ClockName, type StateId } from './states.js';

/** A rule as it is listed. */
export interface RuleLine {
  readonly rule: RuleId;
  readonly acts: readonly StateId[];
  readonly reads: Measure | Choice;
  /** What is read and the factor at it; between two points of a measure on a straight line, held beyond the ends. */
  readonly table: readonly { readonly value: number | string; readonly factor: number }[];
  readonly sigma: number;
  readonly evidence: Evidence;
}

/** A state as it is listed. */
export interface StateLine {
  readonly state: StateId;
  readonly clock: ClockName;
  readonly pace: Pace;
  /** Likely time at the reference point, in minutes. */
  readonly baseMin: number;
  readonly sigma: number;
  readonly evidence: Evidence;
}

/** Every rule with its table and how well it is known, in the order in which reasons are listed. */
export function ruleList(): RuleLine[] {
  return rules.map((rule) => {
    const { id, acts, reads, sigma, evidence } = rule;
    return { rule: id, acts, reads, table: tableOf(rule), sigma, evidence };
  });
}

/** Every state with its base and how well that is known, in the order of `stateIds`. */
export function stateList(): StateLine[] {
  return stateIds.map((state) => {
    const { clock, baseMin, sigma, evidence } = states[state];
    return { state, clock, pace: paceOf[state], baseMin, sigma, evidence };
  });
}

function tableOf(rule: Rule): RuleLine['table'] {
  const points: readonly (readonly [number | string, number])[] = isMeasureRule(rule)
    ? rule.table
    : Object.entries(rule.table);
  return points.map(([value, factor]) => ({ value, factor }));
}

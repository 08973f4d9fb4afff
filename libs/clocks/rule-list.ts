import type { Evidence } from '#units';
import { floors, floorShares } from './floor.js';
import type { Choice, Measure } from './inputs.js';
import { paceOf, type Pace } from './paces.js';
import { isMeasureRule, type FloorId, type Rule, type RuleId } from './rule.js';
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

/** A floor as it is listed. */
export interface FloorLine {
  readonly rule: FloorId;
  readonly acts: readonly StateId[];
  readonly reads: Measure;
  /** What is read, and the minutes from the pour before which the soap is not cut. */
  readonly table: readonly { readonly value: number; readonly min: number }[];
  readonly evidence: Evidence;
}

/** Every floor below which no rule takes a time. */
export function floorList(): FloorLine[] {
  return floors.map(({ id, reads, table, evidence }) => ({
    ...{ rule: id, reads, evidence },
    acts: stateIds.filter((state) => floorShares[state] !== undefined),
    table: table.map(([value, min]) => ({ value, min })),
  }));
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

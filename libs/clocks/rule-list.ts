import { evidenceText } from '#units';
import { numberText, valueText, type Choice, type Measure } from './inputs.js';
import { paceOf, type Pace } from './paces.js';
import { isMeasureRule, type Rule } from './rule.js';
import { rules } from './rules.js';
import { stateIds, states, type ClockName, type StateId } from './states.js';

/** A rule for people to read. */
export interface RuleLine {
  readonly rule: string;
  readonly acts: readonly StateId[];
  readonly reads: Measure | Choice;
  /** “25 % ×1.6, 28 % ×1.3”; between two points of a measure on a straight line, held beyond the ends. */
  readonly table: string;
  readonly sigma: number;
  readonly why: string;
  readonly evidence: string;
}

/** A state for people to read. */
export interface StateLine {
  readonly state: StateId;
  readonly title: string;
  readonly clock: ClockName;
  readonly pace: Pace;
  /** Likely time at the reference point, in minutes. */
  readonly baseMin: number;
  readonly sigma: number;
  readonly from: string;
  readonly evidence: string;
}

/** Every rule with its table, its reason and how well it is known, in the order in which reasons are listed. */
export function ruleList(): RuleLine[] {
  return rules.map((rule) => ({
    rule: rule.id,
    acts: rule.acts,
    reads: rule.reads,
    table: tableText(rule),
    sigma: rule.sigma,
    why: rule.why,
    evidence: evidenceText(rule.evidence),
  }));
}

/** Every state with its base and how well that is known, in the order of `stateIds`. */
export function stateList(): StateLine[] {
  return stateIds.map((state) => {
    const { title, clock, baseMin, sigma, from, evidence } = states[state];
    return {
      state,
      title,
      clock,
      pace: paceOf[state],
      baseMin,
      sigma,
      from,
      evidence: evidenceText(evidence),
    };
  });
}

function tableText(rule: Rule): string {
  const points: readonly (readonly [number | string, number])[] = isMeasureRule(rule)
    ? rule.table
    : Object.entries(rule.table);
  return points.map(([at, factor]) => `${valueText(rule.reads, at)} ×${numberText(factor)}`).join(', ');
}

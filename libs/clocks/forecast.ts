import { evidenceText } from '#units';
import { checkInputs } from './check-inputs.js';
import { factorAt, type FactorAt } from './engine/factor-at.js';
import { choices, measures, type ClockInputs } from './inputs.js';
import type { MeasureRule, Rule } from './rule.js';
import { rules } from './rules.js';
import { states, type StateId } from './states.js';

/** A rule that moved the forecast, with what it read. */
export interface Reason {
  /** Id of the rule. */
  readonly rule: string;
  /** What it read, in words: “lye concentration 28 %”. */
  readonly read: string;
  readonly factor: number;
  readonly why: string;
  readonly evidence: string;
}

/** When a state comes about: log-normal, in minutes from the state's own start (`states[state].from`). */
export interface Forecast {
  readonly state: StateId;
  readonly baseMin: number;
  /** `baseMin` times the factor of every reason, multiplied in order. */
  readonly medianMin: number;
  /** Standard deviation of the logarithm of the time. */
  readonly sigma: number;
  readonly reasons: readonly Reason[];
  /** Where a rule was asked beyond its table, one sentence each. */
  readonly beyond: readonly string[];
}

/** Past its table a rule is a guess, so its σ counts this many times, even where its factor is 1. */
const BEYOND_WIDENING = 2;

/**
 * Forecasts a change of state.
 *
 *     median = base · Π f_r        σ² = σ_base² + Σ σ_r²
 *
 * over the rules that act on the state and whose factor is not 1. A rule read outside its table holds its
 * factor, counts with 2 σ_r, and is named in `beyond`.
 *
 * @param inputs must have passed `checkInputs`
 * @returns minutes, not rounded
 * @throws RangeError for inputs that `checkInputs` refuses: the caller has not asked it
 */
export function forecast(state: StateId, inputs: ClockInputs): Forecast {
  const issues = checkInputs(inputs);
  if (issues.length > 0) throw new RangeError(issues.map((issue) => issue.message).join(' '));
  const { baseMin, sigma } = states[state];
  const readings = rules.filter((rule) => rule.acts.includes(state)).map((rule) => read(rule, inputs));
  const reasons = readings.filter(({ factor }) => factor !== 1).map(reasonOf);
  const variance = readings.reduce((sum, reading) => sum + addedSigma(reading) ** 2, sigma ** 2);
  return {
    state,
    baseMin,
    medianMin: reasons.reduce((product, { factor }) => product * factor, baseMin),
    sigma: Math.sqrt(variance),
    reasons,
    beyond: readings.flatMap(({ beyond }) => beyond ?? []),
  };
}

interface Reading {
  readonly rule: Rule;
  readonly text: string;
  readonly factor: number;
  readonly beyond?: string;
}

function read(rule: Rule, inputs: ClockInputs): Reading {
  if (isMeasureRule(rule)) {
    const value = inputs[rule.reads];
    const { title, unit } = measures[rule.reads];
    const text = `${title} ${shown(value)} ${unit}`;
    const at = factorAt(rule.table, value);
    return { rule, text, factor: at.factor, ...beyondOf(rule, text, at) };
  }
  const { title, values } = choices[rule.reads];
  const value = inputs[rule.reads];
  return {
    rule,
    text: `${title} ${byName<string>(values, value)}`,
    factor: byName<number>(rule.table, value),
  };
}

function isMeasureRule(rule: Rule): rule is MeasureRule {
  return Array.isArray(rule.table);
}

function byName<T>(table: Readonly<Record<string, T>>, name: string): T {
  const found = table[name];
  if (found === undefined) throw new RangeError(`“${name}” is not in the table`);
  return found;
}

function beyondOf(rule: MeasureRule, text: string, { factor, outside }: FactorAt): { beyond?: string } {
  if (outside === undefined) return {};
  const ends = [rule.table.at(0), rule.table.at(-1)].map((point) => shown(point?.[0] ?? NaN)).join(' to ');
  const { unit } = measures[rule.reads];
  const note = rule.beyond?.[outside];
  const sentence = `The ${text} is beyond what the rule knows (${ends} ${unit}): its factor is held at ${shown(factor)} and the band is wider.`;
  return { beyond: note === undefined ? sentence : `${sentence} ${note}` };
}

function addedSigma({ rule, factor, beyond }: Reading): number {
  if (beyond !== undefined) return BEYOND_WIDENING * rule.sigma;
  return factor === 1 ? 0 : rule.sigma;
}

function reasonOf({ rule, text, factor }: Reading): Reason {
  return { rule: rule.id, read: text, factor, why: rule.why, evidence: evidenceText(rule.evidence) };
}

function shown(value: number): string {
  return String(Math.round(value * 100) / 100);
}

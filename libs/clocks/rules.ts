import type { Rule } from './rule.js';
import { batterRules } from './rules/batter.js';
import { cureRules } from './rules/cure.js';
import { setRules } from './rules/set.js';

/** Every rule of every clock, in the order in which reasons are listed. */
export const rules: readonly Rule[] = [...batterRules, ...setRules, ...cureRules];

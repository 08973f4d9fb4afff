import { ruleList, stateList } from '#clocks';
import type { ClockRules } from '#contract';

/** Every state and every rule of the clocks, with the evidence behind each. */
export function listClockRules(): ClockRules {
  return {
    states: stateList().map((line) => ({ ...line })),
    rules: ruleList().map((line) => ({ ...line, acts: [...line.acts] })),
  };
}

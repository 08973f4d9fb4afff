import { floorList, ruleList, stateList } from '#clocks';
import type { ClockRules } from '#contract';
import { isClosing } from '../input/states-of-parts.js';

/** Every state, rule and floor of the clocks, with the evidence behind each. */
export function listClockRules(): ClockRules {
  return {
    states: stateList().map((line) => ({ ...line, closes: isClosing(line.state) })),
    rules: ruleList().map((line) => ({
      ...{ code: 'clock.rule' as const, ...line },
      acts: [...line.acts],
      table: [...line.table],
    })),
    floors: floorList().map((line) => ({
      ...{ code: 'clock.floor' as const, ...line },
      acts: [...line.acts],
      table: [...line.table],
    })),
  };
}

import { clockRules, clocksDocument } from '#contract';
import { listClockRules, writeClocks } from '#runs';
import { ok } from '#units';
import { fileCommand, jsonText } from './file-command.js';
import { told, type Outcome } from './outcome.js';
import { printClocks, printRules } from './print-clocks.js';

/** `clocks`: a run file in, the clocks of its parts with reasons out; or the rules behind them. */
export function clocksCommand(args: readonly string[]): Outcome {
  return fileCommand('clocks', args, {
    document: clocksDocument,
    lists: {
      rules: (json) => {
        const rules = clockRules.parse(listClockRules());
        return json ? jsonText(rules) : printRules(rules);
      },
    },
    run: (input, { json }) => {
      const clocks = writeClocks(input);
      return clocks.ok ? ok(told(json ? jsonText(clocks.value) : printClocks(clocks.value))) : clocks;
    },
  });
}

import { clockRules, clocksDocument } from '#contract';
import { listClockRules, writeClocks } from '#runs';
import { ok } from '#units';
import { fileCommand, jsonText } from './file-command.js';
import { told, type Outcome } from './outcome.js';
import { printClocks, printRules } from './print-clocks.js';
import { jsonWithTexts } from './texts-of.js';

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
    run: (input, args) => {
      const clocks = writeClocks(input);
      if (!clocks.ok) return clocks;
      return ok(told(args.json ? jsonWithTexts(clocks.value, args) : printClocks(clocks.value)));
    },
  });
}

import { clockRules, clocksDocument } from '#contract';
import { listClockRules, writeClocks } from '#runs';
import { ok } from '#units';
import { fileCommand } from './file-command.js';
import { told, type Outcome } from './outcome.js';
import { printClocks, printRules } from './print-clocks.js';
import { jsonWithTexts, textsOf } from './texts-of.js';

/** `clocks`: a run file in, the clocks of its parts with reasons out; or the rules behind them. */
export function clocksCommand(args: readonly string[]): Outcome {
  return fileCommand('clocks', args, {
    document: clocksDocument,
    lists: {
      rules: (json, reader) => {
        const rules = clockRules.parse(listClockRules());
        return json ? jsonWithTexts(rules, reader) : printRules(rules, textsOf(reader, 'UTC'));
      },
    },
    run: (input, args) => {
      const clocks = writeClocks(input, { withRecord: true });
      if (!clocks.ok) return clocks;
      const texts = textsOf(args, input.workshop.timeZone);
      return ok(told(args.json ? jsonWithTexts(clocks.value, args) : printClocks(clocks.value, texts)));
    },
  });
}

import { z } from 'zod';
import { clockRules, clocksDocument } from '#contract';
import { listClockRules, writeClocks } from '#runs';
import { fileSchema } from './file-schema.js';
import { parseArguments, usageOf } from './arguments.js';
import { badInput, told, type Outcome } from './outcome.js';
import { printClocks, printRules } from './print-clocks.js';
import { problemText, readInput } from './read-run-file.js';

/** `clocks`: a run file in, the clocks of its parts with reasons out; or the rules behind them. */
export function clocksCommand(args: readonly string[]): Outcome {
  const parsed = parseArguments('clocks', args);
  switch (parsed.kind) {
    case 'help':
      return told(`${usageOf('clocks')}\n`);
    case 'schema':
      return told(`${JSON.stringify(z.toJSONSchema(clocksDocument), null, 2)}\n`);
    case 'file-schema':
      return told(fileSchema());
    case 'fats':
      throw new Error('--fats belongs to another command');
    case 'wrong':
      return badInput([parsed.message, usageOf('clocks')]);
    case 'rules': {
      const rules = clockRules.parse(listClockRules());
      return told(parsed.json ? `${JSON.stringify(rules, null, 2)}\n` : printRules(rules));
    }
    case 'run': {
      const { file, count, json } = parsed.arguments;
      const read = readInput(file, count);
      if (!read.ok) return badInput(read.problems);
      const clocks = writeClocks(read.input);
      if (!clocks.ok) return badInput(clocks.issues.map((issue) => problemText(issue, read.locate)));
      return told(json ? `${JSON.stringify(clocks.value, null, 2)}\n` : printClocks(clocks.value));
    }
  }
}

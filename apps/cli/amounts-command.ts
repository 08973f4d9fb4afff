import { z } from 'zod';
import { amountsDocument } from '#contract';
import { writeBatchSheet } from '#runs';
import { fileSchema } from './file-schema.js';
import { parseArguments, usageOf } from './arguments.js';
import { badInput, told, type Outcome } from './outcome.js';
import { printFats } from './print-fats.js';
import { printSheet } from './print-sheet.js';
import { problemText, readInput } from './read-run-file.js';

/** `amounts`: a run file in, a batch sheet or JSON out. No hours are needed and no plan is made. */
export function amountsCommand(args: readonly string[]): Outcome {
  const parsed = parseArguments('amounts', args);
  switch (parsed.kind) {
    case 'help':
      return told(`${usageOf('amounts')}\n`);
    case 'schema':
      return told(`${JSON.stringify(z.toJSONSchema(amountsDocument), null, 2)}\n`);
    case 'fats':
      return told(printFats());
    case 'file-schema':
      return told(fileSchema());
    case 'rules':
      throw new Error('--rules belongs to another command');
    case 'wrong':
      return badInput([parsed.message, usageOf('amounts')]);
    case 'run': {
      const { file, count, json, units } = parsed.arguments;
      const read = readInput(file, count);
      if (!read.ok) return badInput(read.problems);
      const sheet = writeBatchSheet(read.input);
      if (!sheet.ok) return badInput(sheet.issues.map((issue) => problemText(issue, read.locate)));
      return told(json ? `${JSON.stringify(sheet.value, null, 2)}\n` : printSheet(sheet.value, units));
    }
  }
}

import { amountsDocument } from '#contract';
import { writeBatchSheet } from '#runs';
import { ok } from '#units';
import { fileCommand, jsonText } from './file-command.js';
import { told, type Outcome } from './outcome.js';
import { printFats } from './print-fats.js';
import { printSheet } from './print-sheet.js';

/** `amounts`: a run file in, a batch sheet or JSON out. No hours are needed and no plan is made. */
export function amountsCommand(args: readonly string[]): Outcome {
  return fileCommand('amounts', args, {
    document: amountsDocument,
    lists: { fats: printFats },
    run: (input, { json, units }) => {
      const sheet = writeBatchSheet(input);
      return sheet.ok ? ok(told(json ? jsonText(sheet.value) : printSheet(sheet.value, units))) : sheet;
    },
  });
}

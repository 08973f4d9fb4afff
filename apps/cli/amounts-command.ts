import { amountsDocument } from '#contract';
import { writeBatchSheet } from '#runs';
import { ok } from '#units';
import { fileCommand } from './file-command.js';
import { told, type Outcome } from './outcome.js';
import { printFats } from './print-fats.js';
import { printSheet } from './print-sheet.js';
import { jsonWithTexts, textsOf } from './texts-of.js';

/** `amounts`: a run file in, a batch sheet or JSON out. No hours are needed and no plan is made. */
export function amountsCommand(args: readonly string[]): Outcome {
  return fileCommand('amounts', args, {
    document: amountsDocument,
    lists: { fats: (reader) => printFats(textsOf(reader, 'UTC')) },
    run: (input, args) => {
      const sheet = writeBatchSheet(input);
      if (!sheet.ok) return sheet;
      const texts = textsOf(args, input.workshop.timeZone);
      return ok(told(args.json ? jsonWithTexts(sheet.value, args) : printSheet(sheet.value, texts)));
    },
  });
}

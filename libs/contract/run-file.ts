import { z } from 'zod';
import { pieceDesign } from './piece-design.js';
import { fat } from './fat.js';
import { mould } from './mould.js';
import { recipe } from './recipe.js';
import { logEntry, runOrder } from './run.js';
import { asLatestRunFile, RUN_FILE } from './run-file-versions.js';
import { key } from './common.js';
import { stockLedger } from './stock.js';
import { workshopFacts } from './workshop.js';

const latestRunFile = z
  .strictObject({
    schema: z.literal(RUN_FILE),
    workshop: workshopFacts,
    moulds: z.array(mould).max(200).default([]),
    fats: z.array(fat).max(200).default([]),
    recipes: z.array(recipe).min(1).max(200),
    designs: z.array(pieceDesign).min(1).max(100),
    runs: z.array(runOrder).min(1).max(50),
    earlier: z
      .array(
        z.strictObject({
          run: runOrder,
          room: workshopFacts.shape.room
            .optional()
            .meta({ description: 'The room of that time; absent: as now' }),
          log: z.array(z.strictObject({ id: key.optional(), entry: logEntry })).max(500),
        }),
      )
      .max(200)
      .default([])
      .meta({
        description:
          'Runs that are over: what they logged teaches the clocks and the amounts. A recipe or design that was ' +
          'changed since needs a key of its own',
      }),
    log: z
      .array(z.strictObject({ run: key, id: key.optional(), entry: logEntry }))
      .max(5000)
      .default([]),
    stock: stockLedger.meta({
      description:
        'Lines of the stock ledger. Of a material that it names, what is on hand follows from it and from the logs',
    }),
  })
  .meta({ id: 'RunFile' });

/** Everything needed to plan, in one file: what `npm run plan` reads. A file of the form before is read as one of today. */
export const runFile = z.preprocess(asLatestRunFile, latestRunFile);

export type RunFile = z.infer<typeof runFile>;

import { z } from 'zod';
import { instant, key } from './common.js';
import { fat } from './fat.js';
import { learned } from './learned.js';
import { mould } from './mould.js';
import { pieceDesign } from './piece-design.js';
import { recipe } from './recipe.js';
import { logEntry, runOrder } from './run.js';
import { workshopFacts } from './workshop.js';

/** What plans are made from, so that a program on the device can try what a change would do without asking each time. */
export const planInput = z
  .strictObject({
    schema: z.literal('benchtide.plan-input/2'),
    madeAt: instant,
    workshop: workshopFacts,
    moulds: z.array(mould),
    fats: z.array(fat).meta({ description: 'The maker’s own; shipped ones need no entry' }),
    recipes: z.array(recipe),
    designs: z.array(pieceDesign),
    runs: z.array(runOrder),
    log: z.array(z.strictObject({ run: key, id: z.string().optional(), entry: logEntry })),
    busy: z
      .array(
        z.strictObject({
          resource: z.string().meta({ description: '`hands`, `mould:KEY` or `equipment:KEY`' }),
          amount: z.number(),
          fromAt: instant,
          toAt: instant,
        }),
      )
      .meta({ description: 'What the plans of other runs take' }),
    learned: learned.meta({ description: 'What the logs of all other runs have taught' }),
  })
  .meta({ id: 'PlanInput' });

export type PlanInput = z.infer<typeof planInput>;

import { z } from 'zod';
import { instant, key } from './common.js';
import { fat } from './fat.js';
import { mould } from './mould.js';
import { pieceDesign } from './piece-design.js';
import { recipe } from './recipe.js';
import { logEntry, runOrder } from './run.js';
import { workshopFacts } from './workshop.js';

const line = { id: z.string().optional(), entry: logEntry };

/** What plans are made from, so that a program at her side can try what a change would do without asking each time. */
export const planInput = z
  .strictObject({
    schema: z.literal('benchtide.plan-input/1'),
    madeAt: instant,
    workshop: workshopFacts,
    moulds: z.array(mould),
    fats: z.array(fat).meta({ description: 'The maker’s own; shipped ones need no entry' }),
    recipes: z.array(recipe),
    designs: z.array(pieceDesign),
    runs: z.array(runOrder),
    log: z.array(z.strictObject({ run: key, ...line })),
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
    past: z
      .array(
        z.strictObject({
          order: runOrder,
          design: pieceDesign,
          recipes: z.array(recipe),
          fats: z.array(fat),
          moulds: z.array(mould),
          room: workshopFacts.shape.room.optional(),
          log: z.array(z.strictObject(line)),
        }),
      )
      .meta({
        description: 'Other runs with their own copy of what they refer to: what they logged teaches',
      }),
  })
  .meta({ id: 'PlanInput' });

export type PlanInput = z.infer<typeof planInput>;

import { z } from 'zod';
import { key, percent, title } from './common.js';

export const fragranceBehaviours = ['none', 'mild', 'brisk', 'strong', 'seizing'] as const;

/** A cold-process batter, in shares: the amount follows from moulds and count. */
export const recipe = z
  .strictObject({
    key,
    title,
    fats: z
      .array(z.strictObject({ fat: key, percent: percent(0.01, 100) }))
      .min(1)
      .max(30)
      .meta({ description: 'Shares of the fats, together 100 %' }),
    lyeConcentrationPercent: percent(20, 50)
      .default(33)
      .meta({ description: 'NaOH as a share of NaOH and water, by mass' }),
    superfatPercent: percent(0, 25).default(5).meta({ description: 'Share of the fats left without lye' }),
    naohPurityPercent: percent(80, 100).default(100),
    sodiumLactatePercent: percent(0, 5)
      .default(0)
      .meta({ description: '60 % sodium lactate solution, as a share of the fats' }),
    saltPercent: percent(0, 100).default(0).meta({ description: 'Of the fats' }),
    sugarPercent: percent(0, 5).default(0).meta({ description: 'Of the fats' }),
    fragrance: z
      .strictObject({
        title: title.optional(),
        percent: percent(0, 10).meta({ description: 'Of the fats; keep within the supplier’s limit' }),
        behaviour: z.enum(fragranceBehaviours).default('mild'),
        vanillinPercent: percent(0, 100).default(0),
      })
      .optional(),
    batterTemperatureC: z.number().min(20).max(75).default(38),
    mixing: z.enum(['blender', 'hand']).default('blender'),
    gel: z.enum(['none', 'full']).default('none'),
  })
  .meta({ id: 'Recipe' });

export type Recipe = z.infer<typeof recipe>;
export type FragranceBehaviour = (typeof fragranceBehaviours)[number];

import { z } from 'zod';
import { key } from './common.js';
import { evidence } from './evidence.js';
import { liquidAcidNames, liquidAllergens, liquidKinds } from './names/index.js';
import { shownText } from './shown-text.js';

const text = z.string();
const per100G = z.number().min(0).max(100).meta({ description: 'g in 100 g' });
const range = z.strictObject({ low: per100G, high: per100G }).optional();

/** A liquid that ships: what recipes may name without figures of their own. */
export const shippedLiquid = z
  .strictObject({
    key,
    title: text,
    text: shownText,
    aliases: z.array(text).meta({ description: 'What else it is called, in English and German' }),
    kind: z.enum(liquidKinds).meta({ description: 'How it behaves with lye' }),
    figures: z.strictObject({
      ...{ waterG: per100G, fatG: per100G, sugarG: per100G, proteinG: per100G, saltG: per100G },
      alcoholG: per100G.optional().meta({ description: 'As it goes into lye; absent: none' }),
      acid: z
        .strictObject({ acid: z.enum(liquidAcidNames), grams: per100G })
        .optional()
        .meta({
          description: 'All its acid, told as one',
        }),
    }),
    ranges: z
      .strictObject({ waterG: range, fatG: range, sugarG: range, acidG: range })
      .meta({ description: 'How far sorts, seasons and makes lie apart, where that is known' }),
    fat: key.optional().meta({ description: 'The shipped fat that its fat is nearest to' }),
    allergens: z.array(z.enum(liquidAllergens)),
    inci: text.meta({ description: 'For the list of ingredients' }),
    evidence: z.strictObject({ figures: evidence, acid: evidence, inci: evidence }),
  })
  .meta({ id: 'ShippedLiquid' });

export type ShippedLiquid = z.infer<typeof shippedLiquid>;

import { z } from 'zod';
import { formError } from './accepted-error.js';
import { key, title } from './common.js';
import { grams } from './quantity.js';

const amount = (least: number) => grams(least, 10_000_000);

/** ISO 4217 code; every price of a workshop is in this currency. */
export const currency = z
  .string()
  .regex(/^[A-Z]{3}$/, formError('currency'))
  .optional()
  .meta({ description: 'ISO 4217 code of all prices', examples: ['EUR'] });

/**
 * Something the workshop uses up: how much is there, how it is sold, what it costs.
 * Its key is that of the fat, fragrance, colourant, addition or decor part it is; of its own are naoh, koh, water,
 * sodium-lactate, salt, sugar, melt-and-pour and the acids.
 */
export const material = z
  .strictObject({
    key,
    title: title.optional(),
    unit: z.enum(['g', 'piece']).default('g'),
    onHand: amount(0).default(0).meta({ description: 'In its unit, or a mass with its own' }),
    packs: z
      .array(
        z.strictObject({
          size: amount(0.01).meta({ description: 'In its unit, or a mass with its own' }),
          price: z.number().min(0).max(1_000_000).optional(),
        }),
      )
      .max(6)
      .default([])
      .meta({ description: 'Sizes it is sold in' }),
  })
  .meta({ id: 'Material' });

export type Material = z.infer<typeof material>;

import { z } from 'zod';
import { key, percent, title } from './common.js';

/** A fat of the maker's own, from a supplier's sheet. Shipped fats need no entry. */
export const fat = z
  .strictObject({
    key,
    title,
    inci: z.string().max(120).optional(),
    saponificationMgKohPerG: z
      .strictObject({
        low: z.number().min(20).max(600),
        used: z.number().min(20).max(600),
        high: z.number().min(20).max(600),
      })
      .refine((s) => s.low <= s.used && s.used <= s.high, { message: 'low ≤ used ≤ high is needed' }),
    fattyAcidsPercent: z.record(z.string(), percent(0, 100)).meta({
      description: 'Share of total fatty acids by carbon count, such as C18:1',
      examples: [{ 'C18:1': 70 }],
    }),
    densityGPerMl: z
      .number()
      .min(0.8)
      .max(1.05)
      .meta({ description: 'At 20 °C, or as liquid nearest to it' }),
    source: z.string().max(200).meta({ description: 'Where these figures come from' }),
  })
  .meta({ id: 'Fat' });

export type Fat = z.infer<typeof fat>;

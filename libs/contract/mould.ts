import { z } from 'zod';
import { ruleError } from './accepted-error.js';
import { key, title } from './common.js';
import { mouldKinds } from './names/index.js';
import { celsius, grams, millilitres, millimetres } from './quantity.js';

const measure = millimetres(1, 2000);

/** A cavity by its inner measures. Whether they make a body is for the chemistry to say. */
export const cavityShape = z
  .discriminatedUnion('form', [
    z.strictObject({ form: z.literal('box'), lengthMm: measure, widthMm: measure, heightMm: measure }),
    z.strictObject({ form: z.literal('cylinder'), diameterMm: measure, heightMm: measure }),
    z.strictObject({
      form: z.literal('cone-frustum'),
      bottomDiameterMm: millimetres(0, 2000),
      topDiameterMm: measure,
      heightMm: measure,
    }),
    z.strictObject({ form: z.literal('hemisphere'), diameterMm: measure }),
    z.strictObject({ form: z.literal('spherical-cap'), rimDiameterMm: measure, depthMm: measure }),
    z.strictObject({
      form: z.enum(['torus', 'half-torus']),
      outerDiameterMm: measure,
      tubeDiameterMm: measure,
    }),
  ])
  .meta({ id: 'CavityShape', description: 'Inner measures of one cavity' });

/** What says how much a cavity holds; its measures say so where neither does, and else only what surface it has. */
const volumes = ['cavityMl', 'waterFillG'] as const;

/** A kind of mould and how much of it there is. Its cavity is stated by its volume, by the water that fills it or by its measures. */
export const mould = z
  .strictObject({
    key,
    title,
    kind: z.enum(mouldKinds),
    cavityMl: millilitres(0.1, 50_000)
      .optional()
      .meta({ description: 'Volume of one cavity; or waterFillG; or shape alone' }),
    waterFillG: grams(0.1, 50_000).optional().meta({ description: 'Water that fills one cavity, weighed' }),
    waterC: celsius(0, 40).optional().meta({ description: 'Of that water; 20 °C if absent' }),
    shape: cavityShape.optional().meta({
      description: 'Beside a volume it tells the surface, by which it cools; the two must agree within 15 %',
    }),
    wallMm: millimetres(0.3, 60).optional().meta({
      description: 'Thickness of its wall; absent: silicone 2.5, wood 15, carton 4, plastic 1.5',
    }),
    cavities: z.int().min(1).max(10_000).meta({ description: 'Cavities owned, over all moulds of the kind' }),
  })
  .superRefine((content, context) => {
    const stated = volumes.filter((way) => content[way] !== undefined);
    if (stated.length > 1 || (stated.length === 0 && content.shape === undefined)) {
      const path = [stated[1] ?? 'cavityMl'];
      context.addIssue({ code: 'custom', path, ...ruleError('cavity-stated-once') });
    }
    if (content.waterC !== undefined && content.waterFillG === undefined) {
      context.addIssue({
        code: 'custom',
        path: ['waterC'],
        ...ruleError('water-temperature-without-weight'),
      });
    }
  })
  .meta({ id: 'Mould' });

export type Mould = z.infer<typeof mould>;

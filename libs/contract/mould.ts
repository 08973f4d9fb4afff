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

const waysToState = ['cavityMl', 'waterFillG', 'shape'] as const;

/** A kind of mould and how much of it there is. Its cavity is stated in one of three ways. */
export const mould = z
  .strictObject({
    key,
    title,
    kind: z.enum(mouldKinds),
    cavityMl: millilitres(0.1, 50_000)
      .optional()
      .meta({ description: 'Volume of one cavity; this, waterFillG or shape, just one of them' }),
    waterFillG: grams(0.1, 50_000).optional().meta({ description: 'Water that fills one cavity, weighed' }),
    waterC: celsius(0, 40).optional().meta({ description: 'Of that water; 20 °C if absent' }),
    shape: cavityShape.optional(),
    cavities: z.int().min(1).max(10_000).meta({ description: 'Cavities owned, over all moulds of the kind' }),
  })
  .superRefine((content, context) => {
    const stated = waysToState.filter((way) => content[way] !== undefined);
    if (stated.length !== 1) {
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

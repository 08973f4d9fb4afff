import { z } from 'zod';
import { clockInputs } from './names/index.js';

const reading = z.union([z.number(), z.string()]);

/** What a clock read of a batch, and which way it pushed. */
export const influence = z.strictObject({
  input: z.enum(clockInputs),
  value: reading.meta({ description: 'What it stands at: %, °C, or one of the choices' }),
  usual: reading.meta({ description: 'What it stands at where it pushes nowhere' }),
  factor: z.number().meta({ description: 'Of the time: above 1 is slower' }),
  isFloor: z
    .literal(true)
    .optional()
    .meta({ description: 'It pushes no way: it holds the time up, as the soap cannot be so any sooner' }),
});

export type Influence = z.infer<typeof influence>;

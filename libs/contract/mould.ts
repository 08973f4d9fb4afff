import { z } from 'zod';
import { key, title } from './common.js';

export const mouldKinds = ['silicone-cavity', 'lined-wood', 'lined-carton', 'rigid-plastic'] as const;

/** A kind of mould and how much of it she owns. */
export const mould = z
  .strictObject({
    key,
    title,
    kind: z.enum(mouldKinds),
    cavityMl: z
      .number()
      .positive()
      .max(50_000)
      .meta({ description: 'Volume of one cavity, by water weight' }),
    cavities: z.int().min(1).max(10_000).meta({ description: 'Cavities owned, over all moulds of the kind' }),
  })
  .meta({ id: 'Mould' });

export type Mould = z.infer<typeof mould>;
export type MouldKind = (typeof mouldKinds)[number];

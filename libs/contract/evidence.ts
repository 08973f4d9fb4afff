import { z } from 'zod';

/** How well a figure is known; sources are citations, in the language in which they are cited. */
export const evidence = z
  .strictObject({
    kind: z.enum(['published', 'common practice', 'from memory', 'bench log']),
    source: z.string().optional().meta({ description: 'Where it was read, or what it was recalled from' }),
  })
  .meta({ id: 'Evidence' });

/** How well a figure is known. */
export type Evidence = z.infer<typeof evidence>;

import { z } from 'zod';
import { shownText } from './shown-text.js';

/** How well a figure is known; `source` is a citation in English. */
export const evidence = z
  .strictObject({
    kind: z.enum(['published', 'common practice', 'from memory', 'bench log']),
    source: z.string().optional().meta({ description: 'Where it was read, or what it was recalled from' }),
    text: shownText,
  })
  .meta({ id: 'Evidence' });

/** How well a figure is known. */
export type Evidence = z.infer<typeof evidence>;

import { z } from 'zod';
import { key } from './common.js';

const title = z.string().meta({ description: 'As the maker called it' });
const attempt = z.int().min(1);

/** A stage of a run, named so that it can be found and read. */
export const stageReference = z
  .strictObject({
    run: key,
    stage: key.nullable().meta({ description: 'null: the cured lot of the run, and the title is the run’s' }),
    attempt,
    title,
  })
  .meta({ id: 'StageReference' });

export const partReference = z
  .strictObject({ run: key, part: key, attempt, title })
  .meta({ id: 'PartReference' });

/** What stages share: the maker’s hands, cavities of a mould, equipment. */
export const resourceReference = z
  .discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('hands') }),
    z.strictObject({ kind: z.enum(['mould', 'equipment']), key, title }),
  ])
  .meta({ id: 'ResourceReference' });

export type StageReference = z.infer<typeof stageReference>;
export type PartReference = z.infer<typeof partReference>;
export type ResourceReference = z.infer<typeof resourceReference>;

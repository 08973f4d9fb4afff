import { z } from 'zod';

/** Problem details (RFC 9457), with the issues found in what was sent. */
export const problem = z
  .looseObject({
    type: z.string().meta({ description: 'urn:benchtide:problem:… ; stable' }),
    title: z.string(),
    status: z.int(),
    detail: z.string().optional(),
    instance: z.string().optional(),
    issues: z
      .array(
        z.strictObject({
          code: z.string(),
          path: z.string().meta({ description: 'Field, such as recipes[0].fats[1].percent' }),
          field: z.string().optional().meta({ description: 'What the field is called' }),
          message: z.string().meta({ description: 'What is wrong, and what would be accepted' }),
          value: z.unknown().optional(),
          accepted: z.string().optional(),
          data: z.record(z.string(), z.unknown()).optional().meta({
            description: 'What the sentences are made of: what is accepted, and what else the code tells',
          }),
        }),
      )
      .max(50)
      .optional(),
    moreIssues: z.int().min(1).optional().meta({ description: 'Issues besides those listed' }),
  })
  .meta({ id: 'Problem' });

export type Problem = z.infer<typeof problem>;

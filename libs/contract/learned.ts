import { z } from 'zod';
import { paces } from './clocks.js';
import { key } from './common.js';

const sigma = z.number().positive();

/** Pieces of a part on the scales as they were made. */
const weighed = {
  design: key,
  part: key,
  pieces: z.int().min(1),
  expectedMl: z
    .number()
    .positive()
    .meta({ description: 'What a piece was expected to take by the design of that time' }),
  at: z.int().meta({ description: 'Minutes since 1970' }),
};

/** What the log of one run teaches; nothing of it depends on what other runs have taught. */
export const runTeachings = z
  .strictObject({
    observations: z
      .array(
        z.strictObject({
          pace: z.enum(paces),
          recipe: key.meta({ description: 'Recipe, material or part: batches of the same share a lesson' }),
          exact: z.number().optional().meta({ description: 'ln(observed / forecast median)' }),
          above: z.number().optional().meta({ description: 'The same: not yet at that' }),
          below: z.number().optional().meta({ description: 'The same: already at that' }),
          sigma,
          entries: z.array(z.string()).meta({ description: 'RUN/ENTRY of the log' }),
        }),
      )
      .meta({ description: 'One for each recipe and pace' }),
    weighings: z.array(z.strictObject({ ...weighed, usedG: z.number().positive() })),
  })
  .meta({ id: 'RunTeachings' });

const offset = { mean: z.number(), sd: z.number().min(0) };

/**
 * What a workshop has learned from a set of runs: all that plans, amounts and clocks read of their logs. Its size grows
 * with recipes and designs, not with runs.
 */
export const learned = z
  .strictObject({
    paces: z.array(
      z.strictObject({
        pace: z.enum(paces),
        workshop: z.strictObject(offset).meta({
          description: 'ln of what forecasts are multiplied by, for a recipe that was never logged',
        }),
        recipes: z.array(
          z.strictObject({
            recipe: key,
            ...offset,
            batches: z.int().min(1),
            precision: z
              .number()
              .min(0)
              .meta({ description: 'Σ 1/σ² over batches whose time is known exactly' }),
            pull: z.number().meta({ description: 'Σ y/σ² over these, y = ln(observed / forecast median)' }),
            censored: z
              .array(z.strictObject({ above: z.number().optional(), below: z.number().optional(), sigma }))
              .meta({ description: 'Batches known to lie above, below or between bounds' }),
          }),
        ),
      }),
    ),
    uses: z
      .array(
        z.strictObject({
          ...weighed,
          times: z.int().min(1).meta({ description: 'How many weighings of as many pieces these are' }),
          usedG: z
            .number()
            .positive()
            .meta({ description: 'All pieces of one weighing, the mean of all times' }),
          squares: z.number().min(0).meta({ description: 'Σ of squared distances from that mean, g²' }),
        }),
      )
      .meta({
        description: 'The latest weighings of a part one by one, older ones of as many pieces together',
      }),
  })
  .meta({ id: 'Learned' });

export type RunTeachings = z.infer<typeof runTeachings>;
export type Learned = z.infer<typeof learned>;
export type LearnedPace = Learned['paces'][number];

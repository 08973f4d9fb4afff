import { z } from 'zod';
import { paces } from './clocks.js';
import { key } from './common.js';

const sigma = z.number().positive();

/** Pieces of a part on the scales as they were made. */
const weighed = {
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
    weighings: z.array(z.strictObject({ design: key, part: key, ...weighed, usedG: z.number().positive() })),
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
        workshop: z
          .strictObject(offset)
          .meta({ description: 'What batches of all recipes share, ln(observed / forecast median)' }),
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
            table: z
              .strictObject({
                most: z.number().min(0).meta({ description: 'Σ 1/σ² of the batches in it' }),
                values: z
                  .array(z.number())
                  .length(51)
                  .meta({ description: 'Their log-likelihood at offsets from −2.5 to 2.5 in steps of 0.1' }),
              })
              .optional()
              .meta({ description: 'Such batches once they are many, together; absent: few' }),
          }),
        ),
      }),
    ),
    uses: z
      .array(
        z.strictObject({
          design: key,
          part: key,
          weighings: z
            .array(
              z.strictObject({
                ...weighed,
                usedG: z
                  .number()
                  .positive()
                  .meta({ description: 'All pieces together; of several times the mean' }),
                times: z
                  .int()
                  .min(2)
                  .optional()
                  .meta({ description: 'Weighings of as many pieces; absent: one' }),
                squares: z
                  .number()
                  .min(0)
                  .optional()
                  .meta({ description: 'Σ of squared distances of each from that mean, g²; absent: 0' }),
              }),
            )
            .meta({ description: 'The latest one by one, older ones of as many pieces together' }),
        }),
      )
      .meta({ description: 'What pieces took on the scales' }),
  })
  .meta({ id: 'Learned' });

export type RunTeachings = z.infer<typeof runTeachings>;
export type Learned = z.infer<typeof learned>;
export type LearnedPace = Learned['paces'][number];
export type LearnedWeighing = Learned['uses'][number]['weighings'][number];

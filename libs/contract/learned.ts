import { z } from 'zod';
import { paces } from './clocks.js';
import { key } from './common.js';
import { soapStates } from './names/soap-states.js';

const sigma = z.number().positive();

const found = z.strictObject({
  recipe: key,
  state: z.enum(soapStates),
  logRatio: z.number().meta({ description: 'ln(soonest / forecast median)' }),
});

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
          doubt: z
            .number()
            .min(0)
            .meta({ description: 'σ of what the rules may have wrong about the recipe' }),
          readyAfterDays: z
            .number()
            .positive()
            .optional()
            .meta({ description: 'When it was found ready, from the start of its clock' }),
          looks: z.int().min(0).meta({ description: 'How often “not yet” was written' }),
          missed: z.int().min(0).meta({ description: 'Days between these on which nothing was' }),
          opened: z.number().optional().meta({
            description: 'ln(when a plan first asked for it / forecast median); absent where none did',
          }),
          day: z.int().meta({ description: 'When it was last seen, days since 1970' }),
          fromDay: z.int().optional().meta({ description: 'When its clock began, days since 1970' }),
          entries: z.array(z.string()).meta({ description: 'RUN/ENTRY of the log' }),
        }),
      )
      .meta({ description: 'One for each batch and pace' }),
    earliest: z
      .array(found)
      .meta({ description: 'How soon each state was found ready, by a look or as a stage was done' }),
    weighings: z.array(z.strictObject({ design: key, part: key, ...weighed, usedG: z.number().positive() })),
  })
  .meta({ id: 'RunTeachings' });

/** Numbers that tell of one batch. */
const SEEN_FIELDS = 8;

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
        spread: z
          .number()
          .positive()
          .meta({ description: 'How many times batches vary as much as the rules say' }),
        batches: z.int().min(0).meta({ description: 'Batches that taught it' }),
        recipes: z.array(
          z.strictObject({
            recipe: key,
            ...offset,
            sharedSd: z
              .number()
              .min(0)
              .meta({ description: 'As much of sd as all recipes of the workshop have in common' }),
            doubt: z.number().min(0).meta({ description: 'σ of what the rules may have wrong about it' }),
            seen: z.array(z.array(z.number().nullable()).length(SEEN_FIELDS)).meta({
              description:
                'The latest batches, oldest first. Of each: the day it was last seen, since 1970; σ of a batch; ' +
                'not yet at and already at, ln(observed / forecast median); days until it was found ready; ' +
                'how often “not yet” was written; days between these on which nothing was; when a plan first asked for it, as a logarithm like those',
            }),
          }),
        ),
      }),
    ),
    earliest: z.array(found).meta({ description: 'How soon each state was ever found ready' }),
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

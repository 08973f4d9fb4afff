import { z } from 'zod';
import { ruleError } from './accepted-error.js';
import { givenInstant, key, localDate, localDateTime, line, percent, prose, title } from './common.js';
import { mishapKinds, mishapResponses, soapStates } from './names/index.js';
import { photoLimits, shownPhoto } from './photo.js';
import { grams } from './quantity.js';

/** Pieces of a run that are made alike and part ways with others of it. */
export const runGroup = z
  .strictObject({
    key,
    title,
    count: z.int().min(1).max(5000).meta({ description: 'Its pieces; all groups together are the run’s' }),
    parts: z.array(key).min(1).max(20).meta({ description: 'Parts of the design that its pieces have' }),
  })
  .meta({ id: 'RunGroup' });

/** What documents tell of the groups of a run. */
export const groupsTold = {
  groups: z.array(runGroup).min(1).optional().meta({
    description: 'Pieces that part ways, as the run has them; absent: all are alike',
  }),
  leftOut: z
    .array(z.strictObject({ part: key, title: z.string() }))
    .min(1)
    .optional()
    .meta({ description: 'Parts of the design that no group has, so they are not made; absent: none' }),
};

/** What to make, how many, and when it could begin. */
export const runOrder = z
  .strictObject({
    key,
    title,
    design: key,
    count: z.int().min(1).max(5000),
    groups: z
      .array(runGroup)
      .min(1)
      .max(12)
      .optional()
      .meta({
        description:
          'Pieces that part ways, twelve coated and twelve piped, from what all of them share. A part that no group has is ' +
          'not made. Absent: all pieces are alike and have all parts',
      }),
    startAfter: localDateTime,
    certaintyPercent: percent(50, 99.9)
      .default(95)
      .meta({ description: 'How surely each batch is to reach for every piece' }),
    readyBy: localDate.optional().meta({ description: 'Day on whose start the lot must be cured' }),
  })
  .meta({ id: 'RunOrder' });

/** An order with what this run alone does differently from the library. */
export const newRun = runOrder
  .extend({
    recipes: z
      .array(
        z.strictObject({
          recipe: key,
          lyeConcentrationPercent: percent(1, 100).optional(),
          sodiumLactatePercent: percent(0, 5).optional(),
        }),
      )
      .max(20)
      .optional()
      .meta({
        description:
          'Water, told as a lye, and hardener in the run’s own copy of a recipe; the library stays as it is',
      }),
  })
  .meta({ id: 'NewRun' });

const seen = { note: prose(2000).optional() };

const confirmed = z.boolean().optional().meta({
  description: 'Asked back and said again: a mass or a time far off its forecast is so',
});

const opened = givenInstant.optional().meta({
  description:
    'From when on the plan of that time asked for the stage. The program fills it in; absent: there was no such plan',
});

/** What a later entry calls an earlier one by. */
export const entryRef = line(64).min(1);

/** What was really done or seen at the bench. `at` is when it happened, not when it was typed. */
export const logEntry = z
  .discriminatedUnion('kind', [
    z.strictObject({
      kind: z.literal('done'),
      stage: key,
      startedAt: givenInstant.optional().meta({ description: 'Absent: `at` less the planned duration' }),
      at: givenInstant.meta({ description: 'When the stage was finished' }),
      opened,
      confirmed,
      ...seen,
    }),
    z.strictObject({
      kind: z.literal('not-yet'),
      stage: key.meta({ description: 'The stage that could not be done because the soap was not ready' }),
      opened,
      confirmed,
      at: givenInstant,
      ...seen,
    }),
    z.strictObject({
      kind: z.literal('mishap'),
      part: key,
      mishap: z.enum(mishapKinds),
      response: z.enum(mishapResponses).optional(),
      pieces: z
        .int()
        .min(1)
        .max(5000)
        .optional()
        .meta({ description: 'Pieces affected; absent: all of them' }),
      group: key.optional().meta({
        description: 'The group whose pieces they are; absent: of any that have the part',
      }),
      alone: z.literal(true).optional().meta({
        description:
          'The other parts of its batch are sound; absent: what is in the same bowl is spoilt with it',
      }),
      onPurpose: z
        .literal(true)
        .optional()
        .meta({ description: 'Nothing went wrong: the part is left out so that the plan holds' }),
      at: givenInstant,
      ...seen,
    }),
    z.strictObject({
      kind: z.literal('seen'),
      part: key,
      state: z.enum(soapStates),
      saw: z.enum(['not-yet', 'already', 'just-now']).meta({
        description:
          'Whether the state had come: not yet, already, or just now. Of a state that closes a window (…-until, ' +
          'piping-skinned) “already” means that the window is over',
      }),
      since: givenInstant.optional().meta({
        description: 'When its clock started: lye-in for a state of the batter; else the log says',
      }),
      confirmed,
      at: givenInstant,
      ...seen,
    }),
    z.strictObject({
      kind: z.literal('weigh-in'),
      pieces: z.int().min(1).max(5000).meta({ description: 'The same pieces at each weigh-in' }),
      massG: grams(0.1, 1_000_000).meta({ description: 'All of them together, while they cure' }),
      confirmed,
      at: givenInstant,
      ...seen,
    }),
    z.strictObject({
      kind: z.literal('forget'),
      entry: entryRef.meta({ description: 'An entry that was true but shall teach the clocks nothing' }),
      at: givenInstant,
      ...seen,
    }),
    z.strictObject({
      kind: z.literal('take-back'),
      entry: entryRef.meta({ description: 'An entry that was a slip: it counts as never written' }),
      at: givenInstant,
      ...seen,
    }),
    z.strictObject({
      kind: z.literal('weighed'),
      part: key.meta({ description: 'A part from batter or melt-and-pour' }),
      pieces: z.int().min(1).max(5000).meta({ description: 'Pieces that took it' }),
      usedG: grams(0.01, 1_000_000).meta({
        description: 'What they took together, without what stayed in bowl and bag',
      }),
      confirmed,
      at: givenInstant,
      ...seen,
    }),
    z
      .strictObject({
        kind: z.literal('note').meta({ description: 'Something to remember; it moves no plan' }),
        stage: key.optional().meta({ description: 'The stage that it is about' }),
        about: entryRef.optional().meta({ description: 'The entry that it is about' }),
        corrects: entryRef.optional().meta({
          description: 'An earlier note, which this one stands for from now on',
        }),
        photos: z.array(shownPhoto).min(1).max(photoLimits.inNote).optional(),
        at: givenInstant,
        ...seen,
      })
      .refine(({ note, photos }) => photos !== undefined || (note ?? '').trim() !== '', {
        path: ['note'],
        ...ruleError('empty-note'),
      }),
  ])
  .meta({ id: 'LogEntry' });

export type RunGroup = z.infer<typeof runGroup>;
export type RunOrder = z.infer<typeof runOrder>;
export type NewRun = z.infer<typeof newRun>;
export type LogEntry = z.infer<typeof logEntry>;

import { z } from 'zod';
import { instant, key, localDate, localDateTime } from './common.js';
import { caution } from './messages/caution.js';
import {
  disturbanceCause,
  remediesNote,
  remedyChangeBesides,
  remedyGain,
  remedyLoss,
  remedyTitle,
} from './messages/remedy.js';
import { planDocument } from './plan-document.js';
import { logEntry, runOrder } from './run.js';
import { span } from './workshop.js';
import { shownText } from './shown-text.js';

const text = z.string();

/** What would be changed, in a form that a program can carry out. */
export const remedyChange = z
  .discriminatedUnion('kind', [
    z.strictObject({
      kind: z.literal('recipe').meta({ description: 'These shares in the recipe; its water told as a lye' }),
      recipe: key,
      lyeConcentrationPercent: z.number().optional(),
      sodiumLactatePercent: z.number().optional(),
    }),
    z.strictObject({ kind: z.literal('start'), run: key, startAfter: localDateTime }),
    z.strictObject({
      kind: z.literal('hours').meta({ description: 'An exception to the weekly hours' }),
      added: span,
      date: localDate,
      spans: z.array(span).meta({ description: 'All spans of that day, the added one included' }),
    }),
    z.strictObject({ kind: z.literal('count'), run: key, count: z.int().min(1) }),
    z.strictObject({
      kind: z
        .literal('split')
        .meta({ description: 'The run is made for `count`, the rest as a run of its own' }),
      run: key,
      count: z.int().min(1),
      rest: runOrder,
    }),
    z.strictObject({
      kind: z.literal('cavities').meta({ description: 'More of a mould is owned' }),
      mould: key,
      cavities: z.int().min(1).meta({ description: 'Owned afterwards, over all moulds of the kind' }),
    }),
    z.strictObject({
      kind: z
        .literal('drop-parts')
        .meta({ description: 'Entries for the log of the run that leave parts out' }),
      run: key,
      entries: z.array(logEntry).min(1),
    }),
    z.strictObject({ kind: z.literal('ready-by'), run: key, readyBy: localDate }),
    z.strictObject({
      kind: z
        .literal('plan-anew')
        .meta({ description: 'Nothing but a plan that is not held to the one before' }),
    }),
  ])
  .meta({ id: 'RemedyChange' });

/** A figure with the change and without it; null where there is no plan to have it. */
const compared = <T extends z.ZodType>(figure: T) =>
  z.strictObject({ before: figure.nullable(), after: figure });

/** What a remedy does to each run. */
const runEffect = z
  .strictObject({
    run: key,
    readyAt: z
      .strictObject({ before: instant.nullable(), after: instant.nullable() })
      .meta({ description: 'Likely day of the cured lot' }),
    moved: z.int().meta({ description: 'Stages that start at another time, or are added or left out' }),
  })
  .meta({ id: 'RunEffect' });

export const materialEffect = z
  .strictObject({
    key,
    title: text,
    text: shownText,
    unit: z.enum(['g', 'piece']),
    before: z.number(),
    after: z.number(),
  })
  .meta({ id: 'MaterialEffect' });

export const remedyEffects = z
  .strictObject({
    odds: z.strictObject({
      before: z.number().min(0).max(1).nullable(),
      after: z.number().min(0).max(1),
      gain: z.number().meta({ description: 'A plan that cannot be had counts as odds of 0' }),
      standardError: z.number().min(0).meta({
        description: 'Of the gain, scenario by scenario on the same weather (paired)',
      }),
    }),
    pieces: z.strictObject({ before: z.int(), after: z.int() }),
    sittings: compared(z.int()),
    benchMin: compared(z.number()).meta({ description: 'All sittings together' }),
    runs: z.array(runEffect),
    materials: z.array(materialEffect).meta({ description: 'Those of which another amount is needed' }),
    materialCost: z
      .strictObject({
        currency: text.optional(),
        before: z.number(),
        after: z.number(),
        complete: z.boolean().meta({ description: 'false: something has no price' }),
      })
      .optional()
      .meta({ description: 'Absent where nothing has a price' }),
  })
  .meta({ id: 'RemedyEffects' });

/** What a remedy asks of the maker, in points; each is about what an hour outside the maker’s hours is. */
export const disturbance = z
  .strictObject({
    points: z.number().gt(0),
    of: z.array(z.strictObject({ what: disturbanceCause, points: z.number() })),
  })
  .meta({ id: 'Disturbance' });

/** A change that helps, with what it does, each figure from a plan that was made with it. */
export const remedy = z
  .strictObject({
    title: remedyTitle,
    change: remedyChange,
    does: z.array(remedyGain).min(1).meta({ description: 'What becomes better' }),
    worse: z.array(remedyLoss).meta({ description: 'Everything that becomes worse' }),
    also: z
      .array(remedyChangeBesides)
      .meta({ description: 'What changes besides, for neither better nor worse' }),
    effects: remedyEffects,
    disturbance,
    cautions: z.array(caution),
  })
  .meta({ id: 'Remedy' });

/** Changes that would help a plan, the most odds for the least disturbance first. */
export const remediesDocument = z
  .strictObject({
    schema: z.literal('benchtide.remedies/3'),
    madeAt: instant,
    timeZone: text,
    planStatus: planDocument.shape.status.meta({ description: 'Of the plan that is to be helped' }),
    odds: planDocument.shape.odds.meta({ description: 'Of that plan; null: there is none' }),
    tried: z.int().meta({ description: 'Changes that were planned' }),
    remedies: z.array(remedy).max(5),
    notes: z.array(remediesNote).meta({ description: 'How they were found, or why there are none' }),
  })
  .meta({ id: 'RemediesDocument' });

/** What the command line prints for a plan with its remedies. */
export const planWithRemedies = z
  .strictObject({
    schema: z.literal('benchtide.plan-with-remedies/3'),
    plan: planDocument,
    remedies: remediesDocument,
  })
  .meta({ id: 'PlanWithRemedies' });

export type RemedyChange = z.infer<typeof remedyChange>;
export type MaterialEffect = z.infer<typeof materialEffect>;
export type RemedyEffects = z.infer<typeof remedyEffects>;
export type Disturbance = z.infer<typeof disturbance>;
export type Remedy = z.infer<typeof remedy>;
export type RemediesDocument = z.infer<typeof remediesDocument>;
export type PlanWithRemedies = z.infer<typeof planWithRemedies>;

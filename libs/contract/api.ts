import { z } from 'zod';
import { formError, ruleError } from './accepted-error.js';
import { givenInstant, instant, key, numberInAddress, seed, title, uuid, version } from './common.js';
import { evidence } from './evidence.js';
import { fat, fatKind, iodineValue, unsaponifiable } from './fat.js';
import { mould } from './mould.js';
import { recipe } from './recipe.js';
import { conflictReason } from './messages/conflict.js';
import { logged, planCause, planEffect } from './messages/logged.js';
import { nudge } from './nudge.js';
import { pieceDesign } from './piece-design.js';
import { odds, planChange, planDocument, plannedStage, weakLink } from './plan-document.js';
import { logEntry, runOrder } from './run.js';
import { workshopFacts } from './workshop.js';
import { shownText } from './shown-text.js';

/** Something of the maker's with what the store adds to it. */
const stored = <T extends z.ZodType>(content: T) =>
  z.strictObject({ id: uuid, version, content, createdAt: instant, updatedAt: instant });

/** A replacement for something, based on a version that was read. */
const replacement = <T extends z.ZodType>(content: T) => z.strictObject({ version, content });

export const storedMould = stored(mould).meta({ id: 'StoredMould' });
export const storedFat = stored(fat).meta({ id: 'StoredFat' });
export const storedRecipe = stored(recipe).meta({ id: 'StoredRecipe' });
export const storedDesign = stored(pieceDesign).meta({ id: 'StoredPieceDesign' });
export const mouldReplacement = replacement(mould).meta({ id: 'MouldReplacement' });
export const fatReplacement = replacement(fat).meta({ id: 'FatReplacement' });
export const recipeReplacement = replacement(recipe).meta({ id: 'RecipeReplacement' });
export const designReplacement = replacement(pieceDesign).meta({ id: 'PieceDesignReplacement' });

export const storedWorkshop = z
  .strictObject({ id: uuid, version, facts: workshopFacts, updatedAt: instant })
  .meta({ id: 'StoredWorkshop' });
export const workshopReplacement = z
  .strictObject({ version, facts: workshopFacts })
  .meta({ id: 'WorkshopReplacement' });

const runStates = ['planned', 'making', 'curing', 'abandoned'] as const;

export const storedRun = z
  .strictObject({
    id: uuid,
    key,
    version,
    state: z.enum(runStates),
    order: runOrder,
    createdAt: instant,
    updatedAt: instant,
  })
  .meta({ id: 'StoredRun' });

/** Runs that are listed at once, at most. */
const MOST_RUNS = 200;

export const runsQuery = z.strictObject({
  state: z
    .enum(['live', 'over'])
    .optional()
    .meta({ description: 'live: planned or making; over: curing or abandoned; absent: all' }),
  before: uuid.optional().meta({ description: 'Id of a run; only runs that were made before it' }),
  most: numberInAddress(1, MOST_RUNS).default(MOST_RUNS),
});

export const planRequest = z
  .strictObject({
    seed: seed.optional().meta({ description: 'Same seed, same plan; 1 if absent' }),
    pins: z
      .array(z.strictObject({ stage: key, startAt: givenInstant }))
      .max(60)
      .optional()
      .meta({
        description:
          'Open stages that are to start just then; refused where there is no such plan. Later plans move them as ' +
          'little as any other stage',
      }),
    afresh: z.boolean().optional().meta({
      description:
        'As if there had been no plan: what is open may move anywhere. Absent: as little moves as can',
    }),
  })
  .meta({ id: 'PlanRequest' });

/** One plan of a run; never changed once made. */
const planHead = {
  number: z.int().min(1),
  madeAt: instant,
  cause: planCause,
  status: planDocument.shape.status,
};
export const planHeadSchema = z.strictObject(planHead).meta({ id: 'PlanHead' });
export const planRevision = z
  .strictObject({ ...planHead, document: planDocument, changes: z.array(planChange) })
  .meta({ id: 'PlanRevision' });

export const createdRun = z.strictObject({ run: storedRun, plan: planRevision }).meta({ id: 'CreatedRun' });

/** Which runs to gather for: ids with commas between them; absent: all that are planned and not begun. */
export const gatherQuery = z.strictObject({
  runs: z
    .string()
    .max(2000)
    .regex(/^[\da-f-]{36}(,[\da-f-]{36}){0,49}$/i, formError('run-ids'))
    .refine((text) => text.split(',').every((id) => uuid.safeParse(id).success), ruleError('run-ids'))
    .optional(),
});

export const tideTable = z
  .strictObject({ plan: z.int(), timeZone: z.string(), stages: z.array(plannedStage) })
  .meta({ id: 'TideTable' });

export const planOdds = z
  .strictObject({ plan: z.int(), odds: odds.nullable(), weakLinks: z.array(weakLink) })
  .meta({ id: 'PlanOdds' });

export const loggedEntry = z
  .strictObject({ id: uuid, sequence: z.int(), at: instant, loggedAt: instant, entry: logEntry })
  .meta({ id: 'LoggedEntry' });

export const logAnswer = z
  .strictObject({
    entry: loggedEntry,
    why: z
      .array(z.union([logged, planEffect, conflictReason]))
      .meta({ description: 'What happened and what it did to the plan; where there is none, why' }),
    plan: planRevision,
  })
  .meta({ id: 'LogAnswer' });

export const inboxEntry = nudge.extend({ sequence: z.int() }).meta({ id: 'InboxEntry' });

export const lot = z
  .strictObject({
    id: uuid,
    runId: uuid,
    title,
    count: z.int(),
    madeAt: instant,
    ready: z.strictObject({ low: instant, likely: instant, high: instant }),
  })
  .meta({ id: 'Lot' });

export const shippedFat = z
  .strictObject({
    key,
    title: z.string(),
    inci: z.string().optional(),
    soapInci: z.string().optional().meta({ description: 'Of its sodium soap; a wax has none' }),
    aliases: z.array(z.string()).meta({ description: 'Other names to find it by, English and German' }),
    kind: fatKind,
    saponificationMgKohPerG: z.strictObject({ low: z.number(), used: z.number(), high: z.number() }),
    iodine: iodineValue.optional(),
    unsaponifiablePercent: unsaponifiable.optional(),
    fattyAcidsPercent: z.record(z.string(), z.number()),
    densityGPerMl: z.number(),
    expansionGPerMlPerC: z.number(),
    behaviour: z.string().meta({ description: 'What it does in batter and bar, in English' }),
    text: shownText,
    behaviourText: shownText,
    evidence: z
      .strictObject({
        saponification: evidence,
        density: evidence,
        expansion: evidence,
        fattyAcids: evidence.optional(),
        iodine: evidence.optional(),
        unsaponifiable: evidence.optional(),
        inci: evidence.optional(),
        soapInci: evidence.optional(),
        behaviour: evidence,
      })
      .meta({ description: 'Where each figure comes from; none for a figure that is not given' }),
  })
  .meta({ id: 'ShippedFat' });

export const health = z
  .strictObject({
    status: z.enum(['ok', 'degraded']),
    trouble: z.array(z.string()).meta({ description: 'What is wrong, in sentences; empty when all is well' }),
    database: z.enum(['up', 'down', 'restarting']),
    queue: z.strictObject({ state: z.enum(['up', 'down']), backend: z.enum(['postgres', 'redis']) }),
    disk: z.enum(['ok', 'full', 'unknown']).meta({
      description: 'Under the built-in database; of another one only known once it complains of it',
    }),
    version: z.string(),
  })
  .meta({ id: 'Health' });

export type Health = z.infer<typeof health>;
export type WorkshopView = z.infer<typeof storedWorkshop>;
export type RunView = z.infer<typeof storedRun>;
export type RunsQuery = z.infer<typeof runsQuery>;
export type PlanRequest = z.infer<typeof planRequest>;
export type PlanHead = z.infer<typeof planHeadSchema>;
export type PlanView = z.infer<typeof planRevision>;
export type CreatedRun = z.infer<typeof createdRun>;
export type GatherQuery = z.infer<typeof gatherQuery>;
export type TideTable = z.infer<typeof tideTable>;
export type PlanOdds = z.infer<typeof planOdds>;
export type LoggedView = z.infer<typeof loggedEntry>;
export type LogAnswer = z.infer<typeof logAnswer>;
export type InboxEntry = z.infer<typeof inboxEntry>;
export type Lot = z.infer<typeof lot>;
export type ShippedFat = z.infer<typeof shippedFat>;

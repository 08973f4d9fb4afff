import { z } from 'zod';
import { batchToMix, partAmounts } from './amounts.js';
import { clockForecast, fillingTime, stageForecast } from './clocks.js';
import { instant, instantBand, key } from './common.js';
import { caution } from './messages/caution.js';
import { conflictReason, conflictTiming, loss, relaxation } from './messages/conflict.js';
import { why } from './messages/why.js';
import { groupsTold } from './run.js';
import { closingStates, openingStates, stageKinds } from './names/index.js';

const text = z.string();

/** A stage of a plan. All times are starts, unless they say otherwise. */
export const plannedStage = z
  .strictObject({
    key: key.meta({ description: 'Of the design; a remade stage keeps it and counts `attempt` up' }),
    attempt: z.int().min(1),
    title: text,
    kind: z.enum(stageKinds),
    part: key,
    pieces: z.int().optional().meta({ description: 'Pieces it is done for; absent: all of the run' }),
    groups: z
      .array(key)
      .min(1)
      .optional()
      .meta({ description: 'Groups whose pieces these are; absent: all groups, or there are none' }),
    status: z.enum(['planned', 'done', 'spoilt']),
    startAt: instant,
    endAt: instant,
    opensAt: instant.meta({ description: 'Earliest start, likely' }),
    bestAt: instant,
    lastCallAt: instant.nullable().meta({ description: 'Latest start, likely; null: nothing closes it' }),
    surelyOpenAt: instant.nullable().meta({ description: 'Open with 90 % certainty; null: cannot be had' }),
    surelyUntil: instant
      .nullable()
      .meta({ description: 'Still open with 90 % certainty; null: nothing closes it' }),
    forecasts: z.array(stageForecast).min(1).optional().meta({
      description:
        'Of the states that it waits for and that close it, but those of batter in the bowl; absent: none, or a plan that did not tell them',
    }),
    why: z.array(why),
    cautions: z.array(caution),
  })
  .meta({ id: 'PlannedStage' });

const sitting = z
  .strictObject({
    startAt: instant,
    endAt: instant,
    stages: z.array(z.strictObject({ run: key, stage: key, attempt: z.int() })),
  })
  .meta({ id: 'Sitting' });

const probability = z.number().min(0).max(1);

/** Three figures from the same scenarios; each of the first two is at least the next. */
export const odds = z
  .strictObject({
    soundAtAll: probability.meta({ description: 'Chance of sound pieces, whenever they are ready' }),
    soundByTheDay: probability.meta({
      description:
        'The main figure: chance of sound pieces that are ready by the day asked for; without a day the same as at all',
    }),
    asPlanned: probability.meta({
      description: 'Chance of that with everything that is nice to have, such as patching in time',
    }),
    standardError: z.number().min(0).meta({ description: 'Of soundByTheDay' }),
    scenarios: z.int(),
    seed: z.int(),
  })
  .meta({ id: 'Odds' });

export const weakLink = z
  .strictObject({
    run: key,
    stage: key,
    attempt: z.int(),
    share: z.number().meta({
      description: 'Share of all scenarios lost at this stage; all shares and asPlanned come to 1',
    }),
    loses: z.enum(['pieces', 'day', 'looks']).meta({
      description: 'Sound pieces, only the day asked for, or no more than looks and easy work',
    }),
    why: loss,
  })
  .meta({ id: 'WeakLink' });

/** An order of the stages that the design leaves unsaid and the plan keeps all the same. */
const addedOrder = z
  .union([
    z
      .strictObject({ stage: key, part: key, opens: z.enum(openingStates) })
      .meta({ description: 'The stage waits until the part has this state' }),
    z
      .strictObject({ stage: key, part: key, closes: z.enum(closingStates) })
      .meta({ description: 'The stage comes before the part has this state' }),
    z.strictObject({ stage: key, after: key }).meta({ description: 'The stage comes after another' }),
  ])
  .meta({ id: 'AddedOrder' });

export const runPlan = z
  .strictObject({
    run: key,
    title: text,
    design: key,
    count: z.int(),
    ...groupsTold,
    batches: z
      .array(batchToMix)
      .optional()
      .meta({ description: 'What is mixed at once; absent in plans of before batches could be shared' }),
    amounts: z.array(partAmounts),
    clocks: z.array(clockForecast),
    filling: z.array(fillingTime),
    added: z.array(addedOrder).min(1).optional().meta({
      description:
        'What the kinds of its stages add to the design, such as that no soap is unmoulded or cut before it is firm; absent: nothing',
    }),
    stages: z.array(plannedStage),
    usable: instantBand.optional().meta({
      description:
        'When the lot may be used, as far as its pace tells: by low in 1 of 10 batches, by high in 9 of 10. Absent where ready is null, and in plans from before',
    }),
    best: instantBand.optional().meta({ description: 'When the lot is at its best; absent as usable is' }),
    ready: instantBand.nullable().meta({
      description:
        'When the lot is cured: by low in 1 of 10 runs, by high in 9 of 10 of those that come through, delays included; null where the design never cures',
    }),
    cautions: z.array(caution),
  })
  .meta({ id: 'RunPlan' });

/** When a conflict shows, and what alone would resolve it. */
export const conflictResolution = z
  .strictObject({
    timing: conflictTiming.nullable(),
    relaxations: z.array(relaxation).meta({
      description: 'What would have to give way, one at a time; empty: no single requirement is enough',
    }),
  })
  .meta({ id: 'ConflictResolution' });

/** Whether a plan holds whatever the soap does within its bands, or the smallest set of reasons why it may not. */
export const guarantee = z
  .strictObject({
    holds: z.boolean().meta({
      description:
        'The order of the plan can be carried through whatever the soap does within its bands, hours and bowl aside',
    }),
    bandPercent: z.int().min(1).max(99).meta({ description: 'How surely each clock stays within its band' }),
    reasons: z
      .array(conflictReason)
      .meta({ description: 'What cannot all be kept then; empty when it holds' }),
  })
  .meta({ id: 'Guarantee' });

/** The answer to "when?": either a plan, or the smallest set of requirements that cannot all hold. */
export const planDocument = z
  .strictObject({
    schema: z.literal('benchtide.plan/4'),
    madeAt: instant,
    timeZone: text,
    status: z.enum(['planned', 'conflict', 'undecided']),
    runs: z.array(runPlan).meta({ description: 'With amounts and clocks even when there is no plan' }),
    sittings: z.array(sitting),
    odds: odds.nullable(),
    weakLinks: z.array(weakLink),
    guarantee: guarantee
      .nullable()
      .default(null)
      .meta({ description: 'null: there is no plan, or nothing left to do' }),
    conflict: z.array(conflictReason),
    resolution: conflictResolution.optional().meta({
      description: 'Absent: there is a plan, or no giving way would make one',
    }),
  })
  .meta({ id: 'PlanDocument' });

/** One stage that moved between two plans. */
export const planChange = z
  .strictObject({
    run: key,
    stage: key,
    title: text.optional().meta({ description: 'Of a stage that the later plan has no more' }),
    attempt: z.int(),
    change: z.enum(['added', 'removed', 'earlier', 'later', 'done', 'spoilt']),
    fromAt: instant.nullable(),
    toAt: instant.nullable(),
    why: z.array(why),
  })
  .meta({ id: 'PlanChange' });

export type PlannedStage = z.infer<typeof plannedStage>;
export type WeakLink = z.infer<typeof weakLink>;
export type Guarantee = z.infer<typeof guarantee>;
export type RunPlan = z.infer<typeof runPlan>;
export type ConflictResolution = z.infer<typeof conflictResolution>;
export type PlanDocument = z.infer<typeof planDocument>;
export type PlanChange = z.infer<typeof planChange>;

/**
 * What a plan that stands comes to, judged anew as hours, other runs or lessons have changed. It takes the place of what the plan
 * was stored with; stages stay where they are.
 */
export type PlanJudgement = Pick<PlanDocument, 'odds' | 'weakLinks' | 'guarantee'> & {
  /** Of each run. */
  readonly ready: readonly (Pick<RunPlan, 'run'> & CureDays)[];
};

/** From when on a lot may be used, when it is cured and when it is at its best; what is absent is not told. */
export type CureDays = Pick<RunPlan, 'usable' | 'ready' | 'best'>;

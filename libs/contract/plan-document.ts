import { z } from 'zod';
import { caution, partAmounts } from './amounts.js';
import { band, instant, instantBand, key } from './common.js';
import { stageKinds } from './piece-design.js';

const text = z.string();

/** One factor of a forecast. The product of `base` and all factors is the likely value. */
export const reason = z
  .strictObject({
    rule: text,
    read: text.meta({ description: 'Quantity and value the rule read' }),
    factor: z.number(),
    why: text,
    evidence: text,
  })
  .meta({ id: 'Reason' });

export const clockForecast = z
  .strictObject({
    part: key,
    state: text,
    band: band.meta({ description: 'minutes from the moment the clock starts' }),
    from: text.meta({ description: 'What starts the clock' }),
    baseMin: z.number(),
    sigma: z.number(),
    reasons: z.array(reason),
    beyond: z
      .array(text)
      .meta({ description: 'Values outside what the rules know; the band is wider for it' }),
  })
  .meta({ id: 'ClockForecast' });

/** A stage of a plan. All times are starts, unless they say otherwise. */
export const plannedStage = z
  .strictObject({
    key: key.meta({ description: 'Of the design; a remade stage keeps it and counts `attempt` up' }),
    attempt: z.int().min(1),
    title: text,
    kind: z.enum(stageKinds),
    part: key,
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
    why: text,
    cautions: z.array(caution),
  })
  .meta({ id: 'PlannedStage' });

export const sitting = z
  .strictObject({
    startAt: instant,
    endAt: instant,
    stages: z.array(z.strictObject({ run: key, stage: key, attempt: z.int() })),
  })
  .meta({ id: 'Sitting' });

export const odds = z
  .strictObject({
    probability: z.number().min(0).max(1),
    standardError: z.number().min(0),
    scenarios: z.int(),
    seed: z.int(),
  })
  .meta({ id: 'Odds' });

export const weakLink = z
  .strictObject({
    run: key,
    stage: key,
    attempt: z.int(),
    share: z.number().meta({ description: 'Share of all scenarios lost at this stage' }),
    why: text,
  })
  .meta({ id: 'WeakLink' });

export const runPlan = z
  .strictObject({
    run: key,
    title: text,
    design: key,
    count: z.int(),
    amounts: z.array(partAmounts),
    clocks: z.array(clockForecast),
    stages: z.array(plannedStage),
    ready: instantBand
      .nullable()
      .meta({ description: 'When the lot is cured; null where the design never cures' }),
    cautions: z.array(caution),
  })
  .meta({ id: 'RunPlan' });

/** A requirement that takes part in a conflict, in the maker's words. */
export const conflictReason = z
  .strictObject({ code: text, text, run: key.optional(), stage: key.optional() })
  .meta({ id: 'ConflictReason' });

/** The answer to "when?": either a plan, or the smallest set of requirements that cannot all hold. */
export const planDocument = z
  .strictObject({
    schema: z.literal('benchtide.plan/1'),
    madeAt: instant,
    timeZone: text,
    status: z.enum(['planned', 'conflict', 'undecided']),
    runs: z.array(runPlan).meta({ description: 'With amounts and clocks even when there is no plan' }),
    sittings: z.array(sitting),
    odds: odds.nullable(),
    weakLinks: z.array(weakLink),
    conflict: z.array(conflictReason),
  })
  .meta({ id: 'PlanDocument' });

/** One stage that moved between two plans. */
export const planChange = z
  .strictObject({
    run: key,
    stage: key,
    attempt: z.int(),
    change: z.enum(['added', 'removed', 'earlier', 'later', 'done', 'spoilt']),
    fromAt: instant.nullable(),
    toAt: instant.nullable(),
    why: text,
  })
  .meta({ id: 'PlanChange' });

export type Reason = z.infer<typeof reason>;
export type ClockForecast = z.infer<typeof clockForecast>;
export type PlannedStage = z.infer<typeof plannedStage>;
export type Sitting = z.infer<typeof sitting>;
export type WeakLink = z.infer<typeof weakLink>;
export type RunPlan = z.infer<typeof runPlan>;
export type ConflictReason = z.infer<typeof conflictReason>;
export type PlanDocument = z.infer<typeof planDocument>;
export type PlanChange = z.infer<typeof planChange>;

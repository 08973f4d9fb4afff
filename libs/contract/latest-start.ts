import { z } from 'zod';
import { instant, key, localDate, seed } from './common.js';
import { startReason } from './messages/latest-start.js';
import { odds, planDocument } from './plan-document.js';
import { runOrder } from './run.js';

/** Odds that one may ask for. */
const wantedOdds = z.number().min(0.01).max(0.999);

/** The answer to "when must I begin at the latest?". */
export const latestStartDocument = z
  .strictObject({
    schema: z.literal('benchtide.latest-start/3'),
    madeAt: instant,
    timeZone: z.string(),
    run: key,
    readyBy: localDate.meta({ description: 'Day on whose start the lot must be cured' }),
    wantedOdds,
    status: z.enum(['found', 'out-of-reach', 'conflict', 'undecided']).meta({
      description:
        'out-of-reach: no start has such odds, and the plan is that of the best; conflict: no plan at all',
    }),
    beginAt: instant
      .nullable()
      .meta({ description: 'Start of the first stage of the plan; null: there is none' }),
    odds: odds.nullable(),
    tooLate: z
      .strictObject({ beginAt: instant, probability: z.number().min(0).max(1), why: z.array(startReason) })
      .nullable()
      .meta({
        description: 'The next moment of the maker’s hours at which it could begin, whose odds fall short',
      }),
    oddsBound: z.number().min(0).max(1).nullable().meta({
      description: 'Where out of reach: odds that no plan exceeds, not even with all states known beforehand',
    }),
    lookedFrom: instant
      .nullable()
      .meta({ description: 'Where out of reach: the earliest start that was tried' }),
    why: z.array(startReason),
    plan: planDocument,
  })
  .meta({ id: 'LatestStartDocument' });

export const latestStartRequest = z
  .strictObject({
    order: runOrder.required({ readyBy: true }).meta({ description: 'Nothing begins before its startAfter' }),
    odds: wantedOdds.default(0.9),
    seed: seed.optional().meta({ description: 'Same seed, same answer; 1 if absent' }),
  })
  .meta({ id: 'LatestStartRequest' });

export type LatestStartDocument = z.infer<typeof latestStartDocument>;
export type LatestStartRequest = z.infer<typeof latestStartRequest>;

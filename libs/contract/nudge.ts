import { z } from 'zod';
import { instant, key, uuid } from './common.js';
import { nudgeMessage } from './messages/nudge.js';

export const nudgeKinds = ['window-opens', 'time-for-it', 'last-call'] as const;

/** One reminder to the maker. */
export const nudge = z
  .strictObject({
    id: uuid,
    runId: uuid,
    run: key,
    stage: key,
    attempt: z.int(),
    kind: z.enum(nudgeKinds),
    message: nudgeMessage.meta({
      description: 'What it says: as of its delivery, or as of the time at which it is due',
    }),
    timeZone: z.string().meta({ description: 'Of the workshop' }),
    dueAt: instant,
    status: z.enum(['waiting', 'delivered', 'cancelled']),
    deliveredAt: instant.nullable(),
  })
  .meta({ id: 'Nudge' });

export type NudgeKind = (typeof nudgeKinds)[number];
export type Nudge = z.infer<typeof nudge>;

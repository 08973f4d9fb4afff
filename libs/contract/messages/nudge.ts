import { z } from 'zod';
import { instant } from '../common.js';
import { message } from './message.js';

/** Title of the stage. */
const stage = z.string();
const startAt = instant;
const lastCallAt = instant.nullable().meta({ description: 'null: nothing closes the window' });
/** Times on the day on which it is said need no date beside them. */
const saidAt = instant;

/** What a nudge says, as of the moment at which it is said: “now” is said only while it is now. */
export const nudgeMessage = z
  .discriminatedUnion('code', [
    message('nudge.window-opens', { stage, startAt: startAt.nullable(), lastCallAt, saidAt }),
    message('nudge.now', { stage, lastCallAt, saidAt }),
    message('nudge.planned', { stage, startAt, lastCallAt, saidAt }),
    message('nudge.was-planned', { stage, startAt, lastCallAt, saidAt }),
    message('nudge.last-call', { stage, lastCallAt, saidAt }),
    message('nudge.last-call-over', { stage, lastCallAt: instant, saidAt }),
  ])
  .meta({ id: 'NudgeMessage' });

export type NudgeMessage = z.infer<typeof nudgeMessage>;

import { z } from 'zod';
import { instant, localDate } from '../common.js';
import { loss } from './conflict.js';
import { message } from './message.js';

const probability = z.number().min(0).max(1);

/** What is to be said of the latest start. */
export const startReason = z
  .discriminatedUnion('code', [
    message('start.by', { at: instant }),
    message('start.odds-fall', { at: instant, probability }),
    message('start.no-plan-after', { at: instant }),
    message('start.costs-more', { because: loss }),
    message('start.out-of-reach', { wanted: probability, best: probability, at: instant }),
    message('start.loses', { probability, because: loss }),
    message('start.batter-limits', { probability }),
    message('start.nothing-exceeds', { probability }),
    message('start.earlier-is-no-better', {}),
    message('start.no-plan', {}),
    message('start.undecided', {}),
    message('start.no-time', {}),
    message('start.day-impossible', { day: localDate }),
  ])
  .meta({ id: 'StartReason' });

export type StartReason = z.infer<typeof startReason>;

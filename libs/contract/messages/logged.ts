import { z } from 'zod';
import { mishapKinds, mishapResponses, soapStates } from '../names/index.js';
import { partReference, stageReference } from '../references.js';
import { message } from './message.js';

const stage = stageReference.omit({ run: true, attempt: true });
const part = partReference.omit({ run: true, attempt: true });
const count = z.number();

/** What an entry of the log tells. */
export const logged = z
  .discriminatedUnion('code', [
    message('logged.done', { stage }),
    message('logged.not-yet', { stage }),
    message('logged.seen', {
      part,
      state: z.enum(soapStates),
      saw: z.enum(['not-yet', 'already', 'just-now']),
    }),
    message('logged.weighed', { part, pieces: count, usedG: count }),
    message('logged.weigh-in', { pieces: count, massG: count }),
    message('logged.mishap', { part, mishap: z.enum(mishapKinds), response: z.enum(mishapResponses) }),
    message('logged.left-out', { part }),
    message('logged.note', { stage: stage.optional() }),
    message('logged.forget', {}),
    message('logged.take-back', {}),
  ])
  .meta({ id: 'Logged' });

/** What an entry did to the plan. */
export const planEffect = z
  .discriminatedUnion('code', [
    message('effect.moves', { added: count, removed: count, later: count, earlier: count, stay: count }),
    message('effect.nothing-moves', {}),
    message('effect.nothing-left', {}),
    message('effect.no-plan', {}),
    message('effect.undecided', {}),
    message('effect.only-lessons', {}),
  ])
  .meta({ id: 'PlanEffect' });

/** Why a plan was made. */
export const planCause = z
  .discriminatedUnion('code', [
    message('cause.first-plan', {}),
    message('cause.asked', {}),
    message('cause.change', {
      change: z.string().meta({ description: 'Kind of the change that was carried out' }),
    }),
    message('cause.logged', {
      entry: z.string().nullable().meta({ description: 'Id of the entry; null: not known' }),
      what: logged.nullable(),
    }),
  ])
  .meta({ id: 'PlanCause' });

export type Logged = z.infer<typeof logged>;
export type PlanEffect = z.infer<typeof planEffect>;
export type PlanCause = z.infer<typeof planCause>;

import { z } from 'zod';
import { band, instant } from '../common.js';
import { influence } from '../influence.js';
import { lateLosses, soapStates } from '../names/index.js';
import { partReference, stageReference } from '../references.js';
import { message } from './message.js';

const minutes = z.number();
const state = z.enum(soapStates);
const waits = {
  part: partReference,
  state,
  band: band.meta({ description: 'minutes from what starts its clock' }),
};

const late = {
  loses: z
    .enum(lateLosses)
    .optional()
    .meta({ description: 'What coming later loses; absent in plans that did not tell it' }),
  reason: z.string().optional().meta({ description: 'Where the design says so: why it is so on this piece' }),
};

/** Why a stage lies where it does, or is there no more. */
export const why = z
  .discriminatedUnion('code', [
    message('why.opens', {
      ...waits,
      influences: z.array(influence).meta({ description: 'Those that push most, strongest first' }),
    }),
    message('why.closes', { ...waits, ...late }),
    message('why.at-least', { after: stageReference, minutes }),
    message('why.at-most', { after: stageReference, minutes, ...late }),
    message('why.soonest-done', {
      ...{ part: partReference, state },
      minutes: minutes.meta({ description: 'The soonest that it was ever done, from what starts its clock' }),
    }),
    message('why.hours', { at: instant }),
    message('why.after', { stages: z.array(stageReference).min(1) }),
    message('why.free', {}),
    message('why.done', {}),
    message('why.spoilt', {}),
    message('why.left-out', {}),
    message('why.no-plan', {}),
  ])
  .meta({ id: 'Why' });

export type Why = z.infer<typeof why>;

import { z } from 'zod';
import { evidence } from '../evidence.js';
import { influence } from '../influence.js';
import { clockInputs, clockRuleIds, soapStates } from '../names/index.js';
import { message } from './message.js';

const rule = z.enum(clockRuleIds);
const input = z.enum(clockInputs);
const reading = z.union([z.number(), z.string()]);
const factor = z.number();

/** One factor of a forecast. The product of `base` and all factors is the likely value. */
export const reason = message('clock.reason', { ...influence.shape, rule, evidence }).meta({ id: 'Reason' });

/** A value outside what a rule knows; the band is wider for it. */
export const beyond = message('clock.beyond', {
  rule,
  input,
  value: z.number(),
  side: z.enum(['below', 'above']),
  from: z.number().meta({ description: 'The rule knows from here …' }),
  to: z.number().meta({ description: '… to here' }),
  factor: factor.meta({ description: 'Held at this' }),
}).meta({ id: 'Beyond' });

/** How far one usual step of one quantity moves a state. */
export const clockMove = message('clock.move', {
  state: z.enum(soapStates),
  input,
  from: reading,
  to: reading,
  factor: factor.meta({ description: 'Of the likely time' }),
}).meta({ id: 'ClockMove' });

/** A rule of the clocks as data, with the evidence behind it. */
export const clockRule = message('clock.rule', {
  rule,
  acts: z.array(z.enum(soapStates)),
  reads: input,
  table: z
    .array(z.strictObject({ value: reading, factor }))
    .meta({ description: 'Between two numbers on a straight line, held beyond the ends' }),
  sigma: z.number(),
  evidence,
}).meta({ id: 'ClockRule' });

/** What soap in a mould cannot be before, however fast its recipe. */
export const clockFloor = message('clock.floor', {
  rule,
  acts: z.array(z.enum(soapStates)),
  reads: input,
  table: z.array(z.strictObject({ value: z.number(), min: z.number() })).meta({
    description: 'What is read, and the minutes from the pour before which it is not cut',
  }),
  evidence,
}).meta({ id: 'ClockFloor' });

/** Why weighings do not tell yet when a lot is cured. */
export const cureNote = z
  .discriminatedUnion('code', [
    message('cure.few-weighings', {}),
    message('cure.short-span', { days: z.number() }),
    message('cure.mass-gained', { days: z.number(), massG: z.number() }),
    message('cure.lost-more-than-water', { days: z.number(), massG: z.number() }),
    message('cure.no-fit', {}),
  ])
  .meta({ id: 'CureNote' });

export type Reason = z.infer<typeof reason>;
export type Beyond = z.infer<typeof beyond>;
export type ClockMove = z.infer<typeof clockMove>;
export type ClockRule = z.infer<typeof clockRule>;
export type ClockFloor = z.infer<typeof clockFloor>;
export type CureNote = z.infer<typeof cureNote>;
export type ClockMessage = Reason | Beyond | ClockMove | ClockRule | ClockFloor | CureNote;

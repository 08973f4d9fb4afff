import { z } from 'zod';
import { band, instant, localDate } from '../common.js';
import { soapStates } from '../names/index.js';
import { partReference, resourceReference, stageReference } from '../references.js';
import { message } from './message.js';

const minutes = z.number();
const count = z.number();
const state = z.enum(soapStates);
const stage = stageReference;
const stages = z.array(stageReference).min(1);
const waits = { stage, part: partReference, state };

/** A requirement that cannot be met together with the others. */
export const conflictReason = z
  .discriminatedUnion('code', [
    message('conflict.after', { stage, after: stage }),
    message('conflict.at-least', { stage, after: stage, minutes }),
    message('conflict.at-most', { stage, after: stage, minutes }),
    message('conflict.made', { stage, part: partReference }),
    message('conflict.opens', { ...waits, band }),
    message('conflict.closes', { ...waits, band }),
    message('conflict.cures', { part: partReference, band }),
    message('conflict.hours', { stage, minutes }),
    message('conflict.earliest', { stage, at: instant }),
    message('conflict.start', { stage, at: instant }),
    message('conflict.ready-by', { stage, day: localDate }),
    message('conflict.done', { stage, at: instant }),
    message('conflict.shared', { resource: resourceReference, owned: count, stages }),
    message('conflict.order', { resource: resourceReference, stages }),
    message('conflict.too-few', { stage, resource: resourceReference, needed: count, owned: count }),
    message('conflict.horizon', { days: count }),
    message('conflict.input', {
      issue: z.string().meta({ description: 'Code of what is wrong with what the run is made from' }),
      path: z.string(),
      value: z.string().nullable().meta({ description: 'What does not fit; null: nothing short' }),
    }),
  ])
  .meta({ id: 'ConflictReason' });

/** Where odds are lost: what may go wrong at a stage. */
export const loss = z
  .discriminatedUnion('code', [
    message('loss.closed', { ...waits, at: instant.nullable().meta({ description: 'When it is planned' }) }),
    message('loss.at-most', { stage, after: stage, minutes }),
    message('loss.hours', { stage }),
    message('loss.ready-by', { stage, day: localDate }),
    message('loss.shared', { stage, resource: resourceReference }),
    message('loss.batter', { part: partReference, minutes, leaves: band }),
    message('loss.other', { stage }),
  ])
  .meta({ id: 'Loss' });

/** A requirement given way by the least that is enough, which alone would make a plan possible. */
export const relaxation = z
  .discriminatedUnion('code', [
    message('relaxation.at-least', { stage, after: stage, minutes, insteadOf: minutes }),
    message('relaxation.at-most', { stage, after: stage, minutes, insteadOf: minutes }),
    message('relaxation.opens', { ...waits, minutes, insteadOf: minutes }),
    message('relaxation.closes', { ...waits, minutes, insteadOf: minutes }),
    message('relaxation.cures', { part: partReference, minutes, insteadOf: minutes }),
    message('relaxation.hours', { stage, minutes, from: instant, to: instant.nullable() }),
    message('relaxation.earliest', { stage, at: instant }),
    message('relaxation.start', { stage, at: instant }),
    message('relaxation.ready-by', { stage, day: localDate }),
    message('relaxation.owned', { resource: resourceReference, count, insteadOf: count }),
  ])
  .meta({ id: 'Relaxation' });

const given = z.strictObject({ stage, at: instant }).nullable().meta({
  description: 'The stage that comes last before, and when it is taken to start: as early as it can',
});
const reach = { from: instant, to: instant.nullable().meta({ description: 'null: nothing closes it' }) };

/** When a conflict shows: what the other requirements allow, held against one of them. */
export const conflictTiming = z
  .discriminatedUnion('code', [
    message('timing.hours', {
      ...{ given, stage, minutes, ...reach },
      endsAt: instant.nullable().meta({ description: 'When the hours before end' }),
      opensAt: instant.nullable().meta({ description: 'When the hours open again' }),
    }),
    message('timing.too-late', { given, stage, earliest: instant, due: instant }),
    message('timing.too-early', { stage, latest: instant, opens: instant }),
    message('timing.shared', {
      resource: resourceReference,
      stages: z.array(z.strictObject({ stage, minutes, ...reach })).min(1),
    }),
  ])
  .meta({ id: 'ConflictTiming' });

export type ConflictReason = z.infer<typeof conflictReason>;
export type Loss = z.infer<typeof loss>;
export type Relaxation = z.infer<typeof relaxation>;
export type ConflictTiming = z.infer<typeof conflictTiming>;

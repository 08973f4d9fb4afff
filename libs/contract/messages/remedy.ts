import { z } from 'zod';
import { risk } from './risk.js';
import { instant, key, localDate } from '../common.js';
import { caution } from './caution.js';
import { message } from './message.js';

const title = z.string();
const titles = z.array(title).min(1);
const count = z.int();
const minutes = z.number();
const chance = z.number().min(0).max(1);
const chances = { before: chance, after: chance };
const bandPercent = z.number().meta({ description: 'How surely each clock stays within its band' });
/** A share of a recipe, per cent. */
const changedShare = z.strictObject({ before: z.number(), after: z.number() });

/** What a remedy is, as an order to oneself. Titles are those that the maker gave. */
export const remedyTitle = z
  .discriminatedUnion('code', [
    message('remedy.buy-moulds', { mould: title, before: count, after: count }),
    message('remedy.make-fewer', { run: title, before: count, after: count }),
    message('remedy.leave-out', { run: title, parts: titles }),
    message('remedy.plan-anew', {}),
    message('remedy.later-day', { run: title, before: localDate, after: localDate }),
    message('remedy.change-recipe', {
      recipe: title,
      lyePercent: changedShare.optional(),
      sodiumLactatePercent: changedShare.optional(),
    }),
    message('remedy.add-sitting', { from: instant, to: instant }),
    message('remedy.longer-sitting', { from: instant, to: instant }),
    message('remedy.split', { run: title, first: count, rest: count }),
    message('remedy.begin-later', { run: title, at: instant }),
    message('remedy.begin-earlier', { run: title, at: instant }),
  ])
  .meta({ id: 'RemedyTitle' });

/** What becomes better. */
export const remedyGain = z
  .discriminatedUnion('code', [
    message('remedy.makes-plan', { odds: chance }),
    message('remedy.better-odds', chances),
    message('remedy.holds-within', { bandPercent }),
    message('remedy.earlier-cure', { run: title, minutes }),
    message('remedy.fewer-sittings', { fewer: count }),
  ])
  .meta({ id: 'RemedyGain' });

/** What becomes worse. */
export const remedyLoss = z
  .discriminatedUnion('code', [
    message('remedy.price-of-moulds', {}),
    message('remedy.pieces-without', { parts: titles }),
    message('remedy.no-time-for', { stages: titles }),
    message('remedy.nothing-ready', { run: title, readyBy: localDate }),
    message('remedy.outside-hours', { from: instant, to: instant }),
    message('remedy.mixed-twice', {}),
    message('remedy.fewer-pieces', { before: count, after: count }),
    message('remedy.later-cure', { run: title, minutes, likely: instant }),
    message('remedy.later-slow-cure', { run: title, minutes }),
    message('remedy.more-sittings', { before: count, after: count }),
    message('remedy.more-bench-time', { minutes }),
    message('remedy.ends-later', { minutes, endAt: instant }),
    message('remedy.stage-riskier', { stage: title, ...chances }),
    message('remedy.day-riskier', { run: title, ...chances }),
    message('remedy.holds-no-more', { bandPercent }),
    message('remedy.new-risk', { parts: titles, risk }),
    message('remedy.new-caution', { caution }),
    message('remedy.stiffens-sooner', { part: title, ...chances }),
    message('remedy.runs-short', { part: title, ...chances }),
    message('remedy.costs-more', {
      amount: z.number(),
      currency: z.string().optional(),
      complete: z.boolean(),
    }),
  ])
  .meta({ id: 'RemedyLoss' });

/** What changes besides, for neither better nor worse. */
export const remedyChangeBesides = z
  .discriminatedUnion('code', [
    message('remedy.weigh-anew', {}),
    message('remedy.stages-move', { run: title, moved: count }),
    message('remedy.other-amounts', {
      materials: z.array(
        z.strictObject({
          key,
          title,
          unit: z.enum(['g', 'piece']),
          before: z.number(),
          after: z.number(),
        }),
      ),
      more: count.meta({ description: 'So many others change too' }),
    }),
    message('remedy.costs-less', {
      amount: z.number(),
      currency: z.string().optional(),
      complete: z.boolean(),
    }),
  ])
  .meta({ id: 'RemedyChangeBesides' });

/** What a remedy asks of the maker, as a name of a few words. */
export const disturbanceCause = z
  .discriminatedUnion('code', [
    message('disturbance.any-change', {}),
    message('disturbance.moved-stages', { moved: count }),
    message('disturbance.sittings', { more: count }),
    message('disturbance.bench-time', { minutes }),
    message('disturbance.later-cure', { minutes }),
    message('disturbance.new-risk', { parts: titles }),
    message('disturbance.moulds', {}),
    message('disturbance.fewer-pieces', { fewer: count }),
    message('disturbance.without-parts', { parts: titles }),
    message('disturbance.day-given-up', {}),
    message('disturbance.recipe', {}),
    message('disturbance.outside-hours', { minutes }),
    message('disturbance.batches-twice', {}),
  ])
  .meta({ id: 'DisturbanceCause' });

/** How the remedies of a plan were found, or why there are none. */
export const remediesNote = z
  .discriminatedUnion('code', [
    message('remedies.nothing-lost', {}),
    message('remedies.nothing-to-try', {}),
    message('remedies.none-gains', { tried: count }),
    message('remedies.none-enough', { tried: count }),
    message('remedies.sorted', { tried: count }),
    message('remedies.time-up', {}),
  ])
  .meta({ id: 'RemediesNote' });

export type RemedyTitle = z.infer<typeof remedyTitle>;
export type RemedyGain = z.infer<typeof remedyGain>;
export type RemedyLoss = z.infer<typeof remedyLoss>;
export type RemedyChangeBesides = z.infer<typeof remedyChangeBesides>;
export type DisturbanceCause = z.infer<typeof disturbanceCause>;
export type RemediesNote = z.infer<typeof remediesNote>;
/** Everything that is said of remedies. */
export type RemedyMessage =
  | RemedyTitle
  | RemedyGain
  | RemedyLoss
  | RemedyChangeBesides
  | DisturbanceCause
  | RemediesNote;

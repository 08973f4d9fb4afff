import { z } from 'zod';
import { band, key, title } from '../common.js';
import { soapStates } from '../names/index.js';
import { heatNote } from './heat.js';
import { message } from './message.js';

const level = z.enum(['low', 'medium', 'high']).meta({ description: 'A nuisance, a spoilt piece, harm' });
const percent = z.number().meta({ description: 'per cent' });
const figure = z.number();
const count = z.int();

function about<const C extends string, P extends z.ZodRawShape>(code: C, params: P) {
  return message(code, { level, ...params }).extend({ remedy });
}

const remedy = z.string().optional().meta({
  description: 'What would help, in words; like `text`, only in answers of the API',
});

const allergen = z
  .enum(['tree-nut', 'peanut', 'soya', 'sesame', 'wheat', 'mustard', 'wool'])
  .meta({ description: 'What the fat comes from that people are known to react to' });
const fat = z.strictObject({ fat: key, title });
const liquids = z.array(z.strictObject({ liquid: key, title }));
/** What speaks for ash or heat, with its figure where it has one: per cent, or °C. */
const signs = z.array(
  z.strictObject({
    sign: z.enum([
      ...(['wet-batter', 'no-gel', 'cool-batter', 'damp-air', 'draught'] as const),
      ...(['full-gel', 'large-block', 'sugar-or-milk', 'warm-batter', 'hot-fragrance'] as const),
    ]),
    value: figure.optional(),
  }),
);

/** What would change its heat, as it stands; not in plans of before. */
const advice = z.array(heatNote).max(4).optional();

/** Something that may go wrong with what was written down; what would help is said with it. */
export const risk = z
  .discriminatedUnion('code', [
    about('lye.strong', { lyePercent: percent }),
    about('lye.wet', { lyePercent: percent.meta({ description: 'As strong as it is with all water' }) }),
    about('lye.cold-bath', { batterTemperatureC: figure, roomC: figure }),
    about('lye.taken-ready', {}),
    about('lye.excess', { percent }),
    about('lye.little-superfat', { superfatPercent: percent }),
    about('lye.much-superfat', { superfatPercent: percent }),
    about('lye.lean-lot', { leftOverPercent: percent, enoughPercent: percent }),
    about('acid.takes-much', { percent }),
    about('batch.small', { gramPercent: percent, scalesG: figure }),
    about('batch.reaches-not', {
      count: count.meta({ description: 'Pieces that the run makes' }),
      pieces: count.meta({ description: 'For how many the batch reaches with the certainty wanted' }),
      certainty: figure,
      shortageChance: figure,
    }),
    about('batter.too-cool', { fats: z.array(fat), batterTemperatureC: figure, enoughC: figure }),
    about('batter.pace', {
      count,
      neededMin: figure,
      start: z.enum(soapStates),
      end: z.enum(soapStates),
      stretchMin: band,
      chance: figure,
      piecesSurely: count,
      batches: count.meta({ description: 'Equal ones that are each sure; as many as pieces: none are' }),
    }),
    about('sodium-lactate.much', { percent }),
    about('salt.much', { percent }),
    about('salt.bar', { percent }),
    about('sugar.heats', { percent, belowC: figure }),
    about('fragrance.limit-unknown', { fragrance: title, percent, sharePercent: percent }),
    about('fragrance.limit-not-for-soap', {
      fragrance: title,
      sharePercent: percent,
      category: z.string().meta({ description: 'The kind of product that the limit is for' }),
    }),
    about('fragrance.over-limit', {
      fragrance: title,
      sharePercent: percent,
      limitPercent: percent,
      allowedPercent: percent.meta({ description: 'Of the fats, rounded down' }),
    }),
    about('fragrance.over-together', {
      usedPercent: percent.meta({ description: 'Of their limits, all fragrances together' }),
      allowedPercent: percent.meta({ description: 'Of each dose as written, rounded down' }),
    }),
    about('fragrance.much', { percent }),
    about('fragrance.seizes', { fragrance: title }),
    about('fragrance.rices', { fragrance: title }),
    about('fragrance.untried', { fragrance: title }),
    about('fragrance.browns', { vanillinPercent: percent, shade: z.enum(['cream', 'tan', 'brown']) }),
    about('liquid.scorches', { liquids }),
    about('liquid.boils-over', { liquids }),
    about('liquid.spits', { liquids }),
    about('liquid.spoils', { liquids }),
    about('liquid.adds-fat', {
      fatPercent: percent.meta({ description: 'Of the fats' }),
      superfatPercent: percent.meta({ description: 'What is left of all fat with it' }),
    }),
    about('colourant.much', { colourant: title, percent }),
    about('fats.turn-rancid', {
      percent: percent.meta({ description: 'Linoleic and linolenic acid, of the fats' }),
    }),
    about('fats.allergens', { fats: z.array(fat.extend({ allergen })) }),
    about('fats.advised-against', { fats: z.array(fat) }),
    about('batch.heavy', {
      massG: figure,
      liftsG: figure.meta({ description: 'What one person lifts' }),
      batches: count.meta({ description: 'Into how many it would have to be split' }),
    }),
    about('colourant.oil', { superfatPercent: percent }),
    about('addition.spoils', { addition: title }),
    about('addition.browns', { addition: title }),
    about('addition.scorches', { addition: title, belowC: figure }),
    about('fat.confirmed', { ...fat.shape, question: z.string() }),
    about('fat.own-figure', { ...fat.shape, used: figure, shipped: figure, differsByPercent: percent }),
    about('portions.too-heavy', { askedG: figure, haveG: figure }),
    about('mould.too-few', { mould: title, needed: count, owned: count }),
    about('soap.ash', { signs }),
    about('soap.overheats', {
      signs,
      chance: figure.optional().meta({ description: 'Of overheating; not in plans of before' }),
      hottestC: figure.optional().meta({ description: 'What its middle is likely to reach' }),
      advice,
    }),
    about('soap.gel-unsure', { whole: figure, part: figure, none: figure, advice }),
    about('soap.gel-unlikely', { chance: figure, advice }),
    about('soap.gel-likely', { chance: figure, advice }),
    about('soap.sweats', { humidityPercent: percent }),
    about('soap.sticks', { hardPercent: percent }),
    about('soap.not-forecast', {
      potashPercent: percent.meta({ description: 'Share of the alkali that is KOH, by moles' }),
    }),
  ])
  .meta({ id: 'Risk' });

export type Risk = z.infer<typeof risk>;

import { z } from 'zod';
import { key, line, percent, title } from './common.js';
import {
  acidNames,
  additionKinds,
  fragranceBehaviours,
  fragranceKinds,
  gels,
  limitCategories,
  liquidAcidNames,
  liquidPlaces,
  mixings,
} from './names/index.js';
import { celsius, grams } from './quantity.js';

const allergen = z
  .strictObject({
    name: line(80)
      .min(1)
      .meta({
        description: 'As the list of Regulation (EC) 1223/2009, Annex III, has it',
        examples: ['Limonene'],
      }),
    percent: percent(0.0001, 100).meta({ description: 'Of the fragrance, from its supplier’s sheet' }),
  })
  .meta({ id: 'AllergenShare' });

/** What scents a batch or a portion. */
export const fragrance = z
  .strictObject({
    key: key.meta({ description: 'Its name among the materials' }),
    title,
    kind: z.enum(fragranceKinds).default('fragrance-oil'),
    percent: percent(0, 10).meta({ description: 'Of the fats; keep within the supplier’s limit' }),
    supplierLimitPercent: percent(0.01, 100).optional().meta({
      description: 'Most of it in the finished soap, from its certificate',
    }),
    limitCategory: z.enum(limitCategories).default('9').meta({
      description: 'The kind of product that limit is for: 9 is soap and what else is rinsed off',
    }),
    behaviour: z.enum(fragranceBehaviours).default('unknown').meta({
      description: 'What it does to the batter; only a test batch tells',
    }),
    vanillinPercent: percent(0, 100).default(0).meta({ description: 'Vanillin in it; browns the soap' }),
    allergens: z.array(allergen).max(100).default([]).meta({
      description: 'Allergens that labels name, from its supplier’s sheet',
    }),
  })
  .meta({ id: 'Fragrance' });

const acid = z
  .strictObject({
    acid: z.enum(acidNames),
    percent: percent(0.01, 50).meta({ description: 'Of the fats, as weighed' }),
    strengthPercent: percent(1, 100).optional().meta({
      description: 'Acid in what is weighed, from its label: 5 for a vinegar; 100 for crystals if absent',
    }),
    replacesWater: z
      .boolean()
      .default(false)
      .meta({ description: 'The water it brings is left out of the lye' }),
  })
  .meta({ id: 'AcidShare' });

const ofLiquid = (description: string) => percent(0, 100).optional().meta({ description });

const ownLiquid = z
  .strictObject({
    title,
    waterPercent: percent(1, 100).optional().meta({
      description: 'By mass; absent: what the others leave of 100, so give what else the label tells',
    }),
    fatPercent: ofLiquid('g in 100 g; likewise the others'),
    sugarPercent: ofLiquid('Sugars, milk sugar included'),
    proteinPercent: ofLiquid('Protein, and what else is neither water nor sugar'),
    saltPercent: ofLiquid('Salt'),
    alcoholPercent: ofLiquid('Alcohol that is in it when it goes in; it counts as water'),
    acid: z
      .strictObject({ acid: z.enum(liquidAcidNames), percent: percent(0.01, 100) })
      .optional()
      .meta({ description: 'All its acid, told as one; it takes alkali' }),
  })
  .meta({ id: 'OwnLiquid' });

const liquid = z
  .strictObject({
    liquid: key.meta({
      description: 'Of the table of liquids; any name where its own figures are given',
      examples: ['goat-milk'],
    }),
    percentOfLiquid: percent(0.1, 100).optional().meta({
      description: 'Of all liquid by mass, plain water included',
    }),
    grams: grams(0.01, 1_000_000).optional().meta({ description: 'Instead, beside fats in grams' }),
    addedTo: z.enum(liquidPlaces).default('lye').meta({
      description:
        'What lye is dissolved in, or what goes into the batter; its water counts as the lye’s in either',
    }),
    own: ownLiquid.optional().meta({ description: 'From its label, in place of the table’s figures' }),
  })
  .meta({ id: 'LiquidShare' });

/** Clay, plants and the like. */
export const addition = z
  .strictObject({
    key,
    title,
    kind: z.enum(additionKinds),
    percent: percent(0.01, 50).meta({ description: 'Of the fats' }),
  })
  .meta({ id: 'Addition' });

const fatAmount = z
  .strictObject({
    fat: line(80).min(1),
    percent: percent(0.01, 100).optional().meta({ description: 'Its share of the fats' }),
    grams: grams(0.01, 1_000_000).optional().meta({ description: 'Instead of its share' }),
  })
  .meta({ id: 'FatAmount' });

const size = z
  .discriminatedUnion('by', [
    z.strictObject({ by: z.literal('pieces').meta({ description: 'As much as the pieces take' }) }),
    z.strictObject({
      by: z.literal('fats').meta({ description: 'All fats together weigh so much' }),
      grams: grams(1, 1_000_000),
    }),
    z.strictObject({
      by: z.literal('fat').meta({ description: 'This fat weighs so much, such as what is left of it' }),
      fat: line(80).min(1),
      grams: grams(0.01, 1_000_000),
    }),
  ])
  .meta({ id: 'BatchSize' });

/**
 * A cold-process batter, in shares: the amount follows from moulds and count. What is dangerous about lye is refused by
 * the chemistry, which says why; the bounds here are only those of a slip of the keys.
 */
export const recipe = z
  .strictObject({
    key,
    title,
    fats: z.array(fatAmount).min(1).max(30).meta({
      description: 'All in shares, together 100 % within half a per cent, or all in grams',
    }),
    size: size.default({ by: 'pieces' }),
    lyeConcentrationPercent: percent(1, 100).optional().meta({
      description: 'Pure alkali as a share of lye and water, by mass; 33 if the water is not told at all',
    }),
    waterPerLye: z
      .number()
      .min(0.5)
      .max(5)
      .optional()
      .meta({ description: 'Instead: grams of water for each gram of alkali as weighed' }),
    waterPercentOfFats: percent(5, 150)
      .optional()
      .meta({ description: 'Instead: grams of water for each 100 g of fats' }),
    superfatPercent: percent(-100, 100)
      .default(5)
      .meta({ description: 'Share of the alkali for all fats that is left out' }),
    superfatReason: line(200).min(1).optional().meta({
      description: 'Why more than 25 % is left out, as for a salt bar; with it up to 40 % is accepted',
    }),
    lyeExcessIntended: z
      .boolean()
      .default(false)
      .meta({ description: 'Allows a superfat below 0, for soap that is salted out or neutralised' }),
    naohPurityPercent: percent(1, 200).default(100),
    lyeStockPercent: percent(20, 52).optional().meta({
      description: 'NaOH is taken from a stock solution of this strength by mass, instead of from flakes',
    }),
    kohSharePercent: percent(0, 100)
      .default(0)
      .meta({ description: 'Share of the alkali that is KOH, by moles' }),
    kohPurityPercent: percent(1, 200)
      .optional()
      .meta({ description: 'From the supplier’s sheet; needed where there is KOH' }),
    acids: z
      .array(acid)
      .max(5)
      .default([])
      .meta({ description: 'They take alkali of their own, which is added' }),
    liquids: z.array(liquid).max(6).default([]).meta({
      description: 'Milk, beer, tea and the like in place of water; plain water is what they leave',
    }),
    sodiumLactatePercent: percent(0, 5)
      .default(0)
      .meta({ description: '60 % sodium lactate solution, as a share of the fats' }),
    saltPercent: percent(0, 100).default(0).meta({ description: 'Of the fats' }),
    sugarPercent: percent(0, 5).default(0).meta({ description: 'Of the fats' }),
    fragrances: z.array(fragrance).max(8).default([]).meta({
      description: 'Fragrance and essential oils; their limits count each and together',
    }),
    additions: z
      .array(addition)
      .max(10)
      .default([])
      .meta({ description: 'Clay, honey, plants, milk powder and the like' }),
    batterTemperatureC: celsius(15, 90).default(38).meta({
      description: 'At which lye and fats are mixed; above 75 only for a batch that is cooked',
    }),
    mixing: z.enum(mixings).default('blender'),
    gel: z.enum(gels).default('auto').meta({
      description: '`auto`: as mould, size, room and temperatures have it; else the maker sees to it',
    }),
  })
  .meta({ id: 'Recipe' });

export type Recipe = z.infer<typeof recipe>;

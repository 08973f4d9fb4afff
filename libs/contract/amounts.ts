import { z } from 'zod';
import { band, key } from './common.js';
import { shownText } from './shown-text.js';
import { costItem, leftoverUse, useBasis, useLearned } from './messages/amounts.js';
import { caution } from './messages/caution.js';
import { risk } from './messages/risk.js';
import { groupsTold } from './run.js';
import { carrierKinds, liquidPlaces, partKinds } from './names/index.js';

const text = z.string();
const mass = z.number().meta({ description: 'grams' });

const namedMass = { key, title: text, massG: mass, text: shownText };

const colourantMass = z.strictObject({
  ...namedMass,
  carrier: z.strictObject({ kind: z.enum(carrierKinds), fat: key.optional(), massG: mass }).optional(),
});

export const batchAmounts = z
  .strictObject({
    fats: z.array(
      z.strictObject({
        ...{ fat: key, title: text, massG: mass, text: shownText },
        inci: text.optional().meta({ description: 'For the list of ingredients, as put in' }),
        soapInci: z.array(text).optional().meta({
          description: 'For the list of ingredients, as soap: of sodium, potassium or both; a wax has none',
        }),
      }),
    ),
    fatsG: mass,
    naohG: mass.meta({ description: 'grams to weigh, with impurities; likewise kohG' }),
    pureNaohG: mass,
    kohG: mass,
    pureKohG: mass,
    waterG: mass,
    lyeG: mass,
    stock: z
      .strictObject({
        percent: z.number().meta({ description: 'Pure NaOH in it, by mass' }),
        massG: mass,
        waterG: mass.meta({ description: 'Water to weigh besides' }),
      })
      .optional()
      .meta({
        description: 'Stock solution to weigh instead of the flakes of NaOH and the water; absent: flakes',
      }),
    liquids: z
      .array(
        z.strictObject({
          ...namedMass,
          addedTo: z.enum(liquidPlaces),
          waterG: mass,
          fatG: mass,
          sugarG: mass,
          inci: text.optional().meta({ description: 'For the list of ingredients' }),
        }),
      )
      .optional()
      .meta({
        description:
          'In place of water, and what they bring; `waterG` is the plain water beside them. Absent in plans from before',
      }),
    acids: z.array(z.strictObject(namedMass)),
    sodiumLactateG: mass.meta({ description: '60 % solution' }),
    saltG: mass,
    sugarG: mass,
    fragrances: z.array(
      z.strictObject({
        ...namedMass,
        hasAllergens: z.boolean().meta({ description: 'Whether its supplier’s allergens were entered' }),
      }),
    ),
    allergens: z
      .array(z.strictObject({ name: text, percent: z.number() }))
      .meta({ description: 'What a label has to name, of those entered: above 0.01 % of the dry soap' }),
    colourants: z.array(colourantMass),
    additions: z.array(z.strictObject(namedMass)),
    batchG: mass,
    batchMl: z.number(),
    densityGPerMl: z.number(),
    water: z
      .strictObject({
        lyeConcentrationPercent: z.number(),
        waterPerLye: z.number(),
        waterPercentOfFats: z.number(),
        allWaterPercentOfFats: z.number(),
        withAllWaterPercent: z.number(),
      })
      .meta({ description: 'The water of the lye in three ways, and all water, acids and colours included' }),
    superfat: z
      .strictObject({ low: z.number(), used: z.number(), high: z.number() })
      .meta({ description: 'What lots within the published ranges are left with, per cent' }),
  })
  .meta({ id: 'BatchAmounts' });

/** What one piece takes, and from what that is known. */
const perPiece = z
  .strictObject({
    meanMl: z.number(),
    spreadPercent: z.number().meta({ description: 'From piece to piece, one standard deviation' }),
    averageErrorPercent: z.number().meta({ description: 'Of the mean, one standard deviation' }),
    from: useBasis,
    learned: useLearned.optional().meta({ description: 'Absent: nothing was weighed yet' }),
  })
  .meta({ id: 'UsePerPiece' });

/** How surely what is made reaches, and what is left over. */
export const cover = z
  .strictObject({
    unit: z.enum(['g', 'pieces']),
    given: z.boolean().optional().meta({
      description:
        'true: the recipe gives the size of its batch, so it is not made for the count; see `reaches`',
    }),
    wantedCertainty: z.number().min(0).max(1),
    shortageChance: z.number().min(0).max(1),
    leftover: band.meta({ description: 'In `unit`, usable: what stays in bowl and bag is not in it' }),
    expectedLeftover: z.number(),
    leftoverUses: z.array(leftoverUse),
    sizes: z
      .array(z.strictObject({ certainty: z.number(), amount: z.number() }))
      .meta({ description: 'What would have to be made to be this sure' }),
    reaches: z
      .array(z.strictObject({ certainty: z.number(), pieces: z.int() }))
      .meta({ description: 'For how many pieces what is made reaches, this surely' }),
  })
  .meta({ id: 'Cover' });

/** What a recipe says, to check the lye a second way. */
const recipeFacts = z
  .strictObject({
    superfatPercent: z.number(),
    naohPurityPercent: z.number(),
    kohSharePercent: z.number(),
    kohPurityPercent: z.number().optional(),
    batterTemperatureC: z.number(),
  })
  .meta({ id: 'RecipeFacts', description: 'What the recipe says, to check the lye a second way' });

export const partAmounts = z
  .strictObject({
    part: key,
    title: text,
    kind: z.enum(partKinds),
    count: z.int().meta({ description: 'Pieces it is made for' }),
    perPiece: perPiece.optional(),
    neededMl: z.number().optional().meta({ description: 'In the pieces, without loss or reserve' }),
    lossG: mass.optional().meta({ description: 'Stays in bowl, bag and pipette' }),
    lossFrom: z.enum(['told', 'usual']).optional().meta({ description: 'usual: nothing was told of it' }),
    recipe: key.optional(),
    batch: batchAmounts.optional().meta({
      description: 'What it takes of its batch, with its colours; what to weigh at once stands in `batches`',
    }),
    told: recipeFacts.optional(),
    massG: mass.optional().meta({ description: 'Melt-and-pour base, or decor where its mass is known' }),
    pieces: z.int().optional().meta({ description: 'Decor pieces to make, spares included' }),
    material: key.optional().meta({ description: 'What melt-and-pour or decor is made from' }),
    cover,
    risks: z.array(risk),
    cautions: z.array(caution),
  })
  .meta({ id: 'PartAmounts' });

/** What is taken off a batch once it is mixed: a part, or a portion of one. */
const portionAmounts = z
  .strictObject({
    part: key,
    portion: key.optional().meta({ description: 'Absent: all of the part' }),
    title: text,
    massG: mass.meta({ description: 'grams of the batch, before the colours' }),
    sharePercent: z.number().meta({ description: 'Of the batch' }),
    colourants: z.array(colourantMass),
    additions: z.array(z.strictObject(namedMass)),
    fragrances: z.array(z.strictObject(namedMass)),
  })
  .meta({ id: 'PortionAmounts' });

const labelIngredient = z
  .strictObject({
    ...namedMass,
    inci: text.optional().meta({ description: 'Its name on the label; absent: not known, see `title`' }),
    isColourant: z.literal(true).optional().meta({ description: 'Stands after all others' }),
  })
  .meta({ id: 'LabelIngredient' });

/** The list of ingredients of a part, for its label. */
const partLabel = z
  .strictObject({
    part: key,
    title: text,
    asPutIn: z.array(labelIngredient),
    asSoap: z.array(labelIngredient).meta({
      description: 'What the lye makes of it, before any water dries out; a label has this list or the other',
    }),
    allergens: z
      .array(z.strictObject({ name: text, percent: z.number() }))
      .meta({ description: 'To be named besides: above 0.01 % of the dry soap, of those entered' }),
    unknownAllergens: z
      .array(text)
      .meta({ description: 'Fragrances whose allergens were not entered, by their titles' }),
  })
  .meta({ id: 'PartLabel', description: 'Ingredients by mass, most first, colourants last' });

/** What is mixed at once from one lye: weighed once, and split afterwards where several parts or colours come from it. */
export const batchToMix = z
  .strictObject({
    batch: key.meta({ description: 'What its parts call it; the part’s own key where it is for one alone' }),
    title: text,
    recipe: key,
    parts: z.array(key).min(1),
    amounts: batchAmounts.meta({
      description: 'What to weigh for all of it, before it is split and coloured',
    }),
    told: recipeFacts,
    portions: z.array(portionAmounts).min(1).meta({ description: 'Their masses come to the batch' }),
    risks: z.array(risk),
    cautions: z.array(caution),
  })
  .meta({ id: 'BatchToMix' });

export const materialKinds = [
  'fat',
  'lye',
  'water',
  'liquid',
  'hardener',
  'fragrance',
  'colourant',
  'addition',
  'base',
  'decor',
] as const;

/** One thing to have before a run begins. */
export const gatherLine = z
  .strictObject({
    key,
    title: text,
    kind: z.enum(materialKinds),
    unit: z.enum(['g', 'piece']),
    needed: z.number(),
    onHand: z.number(),
    text: shownText,
    toBuy: z.number().meta({ description: 'Missing, in `unit`, before rounding up to packs' }),
    packs: z.array(z.strictObject({ size: z.number(), count: z.int(), price: z.number().optional() })),
    price: z.number().optional().meta({ description: 'Of all packs to buy; absent: not known' }),
    cautions: z.array(caution),
  })
  .meta({ id: 'GatherLine' });

export const gatherList = z
  .strictObject({
    runs: z.array(key),
    currency: text.optional(),
    lines: z.array(gatherLine),
    unused: z.array(key).meta({ description: 'Materials of the workshop that these runs do not use' }),
    price: z.number().optional().meta({ description: 'Of all lines whose price is known' }),
  })
  .meta({ id: 'GatherList' });

/** What one piece costs to make. */
export const pieceCost = z
  .strictObject({
    currency: text.optional(),
    perPiece: z.number().meta({ description: 'Materials used up, at their pack price, and hands-on work' }),
    complete: z.boolean().meta({ description: 'false: something has no price, and it costs more than this' }),
    materials: z.number().meta({ description: 'Of `perPiece`' }),
    work: z.number().meta({ description: 'Of `perPiece`' }),
    handsOnMinPerPiece: z.number(),
    drivers: z
      .array(z.strictObject({ what: costItem, perPiece: z.number(), share: z.number() }))
      .meta({ description: 'What it is made up of, dearest first' }),
    groups: z
      .array(z.strictObject({ group: key, title: text, count: z.int(), perPiece: z.number() }))
      .min(1)
      .optional()
      .meta({
        description:
          'What a piece of each group costs; all pieces together cost what they do on average. Absent: all are alike',
      }),
    unpriced: z.array(costItem).meta({ description: 'Not in it, because no price is known' }),
  })
  .meta({ id: 'PieceCost' });

/** A batch sheet: everything to weigh, gather and pay for one or several runs. */
export const amountsDocument = z
  .strictObject({
    schema: z.literal('benchtide.amounts/3'),
    runs: z.array(
      z.strictObject({
        run: key,
        title: text,
        design: key,
        count: z.int(),
        ...groupsTold,
        batches: z.array(batchToMix),
        amounts: z.array(partAmounts),
        cost: pieceCost,
        labels: z.array(partLabel).meta({ description: 'Of each part that is mixed from a recipe' }),
        cautions: z.array(caution),
      }),
    ),
    gather: gatherList,
  })
  .meta({ id: 'AmountsDocument' });

export type BatchAmounts = z.infer<typeof batchAmounts>;
export type BatchToMix = z.infer<typeof batchToMix>;
export type RecipeFacts = z.infer<typeof recipeFacts>;
export type Cover = z.infer<typeof cover>;
export type PartAmounts = z.infer<typeof partAmounts>;
export type MaterialKind = (typeof materialKinds)[number];
export type GatherLine = z.infer<typeof gatherLine>;
export type GatherList = z.infer<typeof gatherList>;
export type PartLabel = z.infer<typeof partLabel>;
export type PieceCost = z.infer<typeof pieceCost>;
export type AmountsDocument = z.infer<typeof amountsDocument>;

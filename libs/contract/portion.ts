import { z } from 'zod';
import { ruleError } from './accepted-error.js';
import { key, percent, title } from './common.js';
import { carrierKinds } from './names/index.js';
import { grams } from './quantity.js';
import { addition, fragrance } from './recipe.js';

/** Colour of a part or a portion: two layers from one recipe differ in it. */
export const colourant = z
  .strictObject({
    key,
    title,
    percent: percent(0.01, 10).meta({ description: 'Of the fats' }),
    carrier: z
      .strictObject({
        kind: z.enum(carrierKinds),
        fat: key.optional().meta({ description: 'Which fat, where it is one' }),
        perGram: z.number().min(0.1).max(20).meta({ description: 'Grams for each gram of colour' }),
      })
      .optional()
      .meta({ description: 'What it is stirred into first' }),
  })
  .meta({ id: 'Colourant' });

/** What is taken off a part before it is poured, to be coloured by itself. */
const portion = z
  .strictObject({
    key,
    title,
    sharePercent: percent(0.1, 100).optional().meta({
      description: 'Of the part before colours; of all portions one may say neither and takes the rest',
    }),
    grams: grams(0.1, 1_000_000).optional().meta({
      description: 'Instead: grams of it before colours, for all pieces of the run',
    }),
    colourants: z.array(colourant).max(10).default([]),
    additions: z
      .array(addition)
      .max(10)
      .default([])
      .meta({ description: 'What goes into this portion alone, by its own fats' }),
    fragrances: z.array(fragrance).max(8).default([]).meta({
      description: 'What goes into this portion beside the fragrance of the recipe, by its own fats',
    }),
  })
  .meta({ id: 'Portion' });

/** Shares without a rest may miss 100 by this much: 33.3 + 33.3 + 33.3 is what a maker writes for thirds. */
const ROUNDING_PERCENT = 0.5;

interface Sized {
  readonly sharePercent?: number | undefined;
  readonly grams?: number | undefined;
}

/** What is wrong with how portions are sized, and with which of them; undefined: nothing. */
function wrongSize(
  portions: readonly Sized[],
): { readonly rule: (typeof sizeRules)[number]; readonly at: number } | undefined {
  const twice = portions.findIndex((each) => each.sharePercent !== undefined && each.grams !== undefined);
  if (twice >= 0) return { rule: 'portion-sized-once', at: twice };
  const rests = portions.flatMap(({ sharePercent, grams: g }, i) =>
    sharePercent === undefined && g === undefined ? [i] : [],
  );
  if (rests[1] !== undefined) return { rule: 'one-rest', at: rests[1] };
  const together = portions.reduce((sum, { sharePercent = 0 }) => sum + sharePercent, 0);
  const last = portions.length - 1;
  if (rests.length === 1) {
    // A rest of nothing is no portion.
    return together >= 100 ? { rule: 'nothing-left-for-rest', at: last } : undefined;
  }
  if (portions.some((each) => each.grams !== undefined)) return { rule: 'grams-need-rest', at: last };
  return Math.abs(together - 100) > ROUNDING_PERCENT ? { rule: 'portions-not-100', at: last } : undefined;
}

const sizeRules = [
  'portion-sized-once',
  'one-rest',
  'nothing-left-for-rest',
  'grams-need-rest',
  'portions-not-100',
] as const;

/** Two or more portions that make up a part between them. */
export const portions = z
  .array(portion)
  .min(2)
  .max(12)
  .superRefine((list, context) => {
    const wrong = wrongSize(list);
    if (wrong === undefined) return;
    context.addIssue({ code: 'custom', path: [wrong.at, 'sharePercent'], ...ruleError(wrong.rule) });
  });

export type Portion = z.infer<typeof portion>;

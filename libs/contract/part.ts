import { z } from 'zod';
import { ruleError } from './accepted-error.js';
import { key, percent, title } from './common.js';
import { keptWays } from './names/index.js';
import { colourant, portions } from './portion.js';
import { grams, millilitres, millimetres, squareCentimetres } from './quantity.js';

const byCavity = z.strictObject({
  by: z.literal('cavity').meta({ description: 'A share of the cavity it is cast in' }),
  fillPercent: percent(1, 100).default(100),
});

const byOwnMeasure = [
  z.strictObject({
    by: z.literal('finished').meta({ description: 'The volume it is to have once it has shrunk' }),
    ml: millilitres(0.01, 50_000),
    shrinkagePercent: percent(0, 30),
  }),
  z.strictObject({
    by: z.literal('coat').meta({ description: 'An area dipped or covered, times a thickness' }),
    areaCm2: squareCentimetres(0.01, 10_000),
    thicknessMm: millimetres(0.01, 50),
  }),
  z.strictObject({
    by: z.literal('bead').meta({ description: 'A piped line: its length times its round section' }),
    lengthMm: millimetres(0.1, 100_000),
    widthMm: millimetres(0.1, 100),
  }),
  z.strictObject({
    by: z.literal('bead-section').meta({ description: 'A piped line that is not round' }),
    lengthMm: millimetres(0.1, 100_000),
    sectionMm2: z.number().min(0.01).max(10_000),
  }),
  z.strictObject({
    by: z.literal('weighing').meta({ description: 'What pieces took on the scales' }),
    pieces: z.int().min(1).max(5000),
    grams: grams(0.01, 1_000_000).meta({ description: 'All these pieces together' }),
  }),
] as const;

/** How much of a part one piece takes, where it is not simply given in millilitres. */
export const amountPerPiece = z
  .discriminatedUnion('by', [byCavity, ...byOwnMeasure])
  .meta({ id: 'AmountPerPiece' });

const partBase = { key, title };

const use = {
  perPieceMl: millilitres(0.01, 50_000)
    .optional()
    .meta({ description: 'What one piece takes; or `amount` says how to work it out' }),
  spreadPercent: percent(0.1, 50)
    .default(4)
    .meta({ description: 'Standard deviation of the amount from piece to piece' }),
  averageErrorPercent: percent(0.1, 50)
    .optional()
    .meta({
      description:
        'Standard deviation of the amount itself: how far off all pieces may be together. ' +
        'Absent: 1 for a cavity, 3 if given in mL or finished, 10 for a coat or a bead, what the weighing tells',
    }),
};

const loss = grams(0, 2000);

/** What a batch loses on its way into the pieces. */
const losses = z
  .strictObject({
    bowlG: loss.optional(),
    bagG: loss.optional(),
    pipetteG: loss.optional(),
    trimmingPercent: percent(0, 60).default(0).meta({
      description: 'Share of what is dipped or piped that is cut off; what is cast stays in its cavity',
    }),
    spreadPercent: percent(0, 100)
      .default(25)
      .meta({ description: 'Standard deviation of what stays behind, from batch to batch' }),
  })
  .meta({ id: 'Losses' });

const lossG = loss
  .optional()
  .meta({ description: 'Left in bowl, bag and pipette together; or `losses` says where' });

/** Says once how much a piece takes, and once what is lost. */
const saidOnce = (part: {
  readonly perPieceMl?: number | undefined;
  readonly amount?: { readonly by: string } | undefined;
  readonly lossG?: number | undefined;
  readonly losses?: unknown;
  readonly mould?: string | undefined;
  readonly portions?: unknown;
  readonly colourants?: readonly unknown[];
  readonly piecesPerCavity?: number;
  readonly cavitiesPerPiece?: number;
}): keyof typeof onceRules | undefined => {
  const { perPieceMl, amount, lossG, losses: lost, mould } = part;
  if ((perPieceMl === undefined) === (amount === undefined)) return 'amount';
  if (amount?.by === 'cavity' && mould === undefined) return 'mould';
  if (lossG !== undefined && lost !== undefined) return 'losses';
  if (part.portions !== undefined && (part.colourants ?? []).length > 0) return 'portions';
  const { piecesPerCavity = 1, cavitiesPerPiece = 1 } = part;
  if (piecesPerCavity > 1 && cavitiesPerPiece > 1) return 'cavitiesPerPiece';
  return undefined;
};

const onceRules = {
  amount: 'amount-stated-once',
  mould: 'cavity-needs-mould',
  losses: 'losses-stated-once',
  portions: 'portions-hold-colours',
  cavitiesPerPiece: 'pieces-or-cavities',
} as const;

const once = (part: Parameters<typeof saidOnce>[0], context: z.RefinementCtx): void => {
  const field = saidOnce(part);
  if (field !== undefined) {
    context.addIssue({ code: 'custom', path: [field], ...ruleError(onceRules[field]) });
  }
};

/** Where a part is cast, if it is. */
const casting = {
  mould: key.optional().meta({
    description:
      'The mould whose cavity holds it from pour to unmould; parts with the same mould share the cavity',
  }),
  piecesPerCavity: z
    .int()
    .min(1)
    .max(200)
    .default(1)
    .meta({ description: 'Bars cut from one loaf, for example' }),
  cavitiesPerPiece: z
    .int()
    .min(1)
    .max(20)
    .default(1)
    .meta({ description: 'Cavities that one piece is made of: two halves, for example' }),
};

/** A part cast, dipped or piped from a batch of batter. */
export const batchPart = z
  .strictObject({
    ...partBase,
    kind: z.literal('batch'),
    recipe: key,
    batch: key.optional().meta({
      description:
        'Parts with the same name here are mixed at once from one lye and split afterwards; ' +
        'absent: the part’s own key, which is a batch of its own unless another part names it',
    }),
    ...use,
    amount: amountPerPiece.optional(),
    colourants: z.array(colourant).max(10).default([]),
    portions: portions.optional().meta({
      description: 'Colours that the part is split into and poured from at once, as for a swirl',
    }),
    ...casting,
    kept: z.enum(keptWays).optional().meta({
      description:
        'How its mould stands after the pour; absent: as a part says that shares its cavity, else covered if it is lined and open if not',
    }),
    lossG,
    losses: losses.optional(),
  })
  .superRefine(once)
  .meta({ id: 'BatchPart' });

/** A part from melt-and-pour base: cast in a mould of its own, or poured onto the piece. */
export const meltPart = z
  .strictObject({
    ...partBase,
    kind: z.literal('melt-and-pour'),
    material: key.default('melt-and-pour').meta({ description: 'The base, among the materials' }),
    ...use,
    amount: amountPerPiece.optional(),
    ...casting,
    lossG,
    losses: losses.optional(),
  })
  .superRefine(once)
  .meta({ id: 'MeltAndPourPart' });

/** Something set into or onto the piece, made before or bought. */
export const decorPart = z
  .strictObject({
    ...partBase,
    kind: z.literal('decor'),
    perPiece: z.int().min(1).max(200),
    eachG: grams(0.01, 500).optional(),
    breakagePercent: percent(0, 50)
      .default(4)
      .meta({ description: 'Share that breaks or is lost before it sits' }),
    material: key.optional().meta({
      description: 'What it is pressed from, among the materials; absent: it is bought by the piece',
    }),
  })
  .meta({ id: 'DecorPart' });

export const part = z.discriminatedUnion('kind', [batchPart, meltPart, decorPart]).meta({ id: 'Part' });

export type BatchPart = z.infer<typeof batchPart>;
export type MeltPart = z.infer<typeof meltPart>;
export type DecorPart = z.infer<typeof decorPart>;
export type Part = z.infer<typeof part>;

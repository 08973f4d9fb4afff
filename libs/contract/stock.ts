import { z } from 'zod';
import { givenInstant, instant, key, line, prose, title, uuid } from './common.js';
import { entryRef } from './run.js';
import { grams } from './quantity.js';
import { shownText } from './shown-text.js';

const MOST = 10_000_000;

const amount = (least: number) =>
  grams(least, MOST).meta({ description: 'In its unit, or a mass with its own' });

/** Something that is used up, by the key that gather lists have for it. */
const ofMaterial = {
  material: key,
  title: title.optional().meta({ description: 'What it is called, where the workshop does not know it yet' }),
  unit: z.enum(['g', 'piece']).default('g'),
};

const told = {
  at: givenInstant.meta({ description: 'When it happened, not when it was typed' }),
  note: prose(500).optional(),
};

/** What leftover soap is kept as. */
export const leftoverForms = ['dough', 'small-pieces'] as const;

const leftoverRef = entryRef.meta({ description: 'The entry by which the leftover was kept' });

/** One line of the stock ledger: what came, was counted, used besides runs, thrown out, or kept of a batch. */
export const stockEntry = z
  .discriminatedUnion('kind', [
    z.strictObject({
      kind: z.literal('purchase'),
      ...ofMaterial,
      amount: amount(0.01),
      price: z
        .number()
        .min(0)
        .max(1_000_000)
        .optional()
        .meta({ description: 'Paid for all of it; absent: not known' }),
      ...told,
    }),
    z.strictObject({
      kind: z.literal('count'),
      ...ofMaterial,
      amount: amount(0).meta({ description: 'What is really there; earlier entries count no more' }),
      ...told,
    }),
    z.strictObject({
      kind: z.literal('used'),
      ...ofMaterial,
      amount: amount(0.01).meta({ description: 'Used besides runs, which use up what their logs tell' }),
      ...told,
    }),
    z.strictObject({ kind: z.literal('written-off'), ...ofMaterial, amount: amount(0.01), ...told }),
    z.strictObject({
      kind: z.literal('leftover-kept'),
      title,
      form: z.enum(leftoverForms),
      massG: grams(0.1, 100_000),
      run: key.optional().meta({ description: 'The run whose batch it is left of' }),
      part: key.optional(),
      recipe: title.optional().meta({ description: 'What its recipe is called' }),
      madeAt: givenInstant.meta({ description: 'When the soap was made' }),
      ...told,
    }),
    z.strictObject({
      kind: z.literal('leftover-used'),
      leftover: leftoverRef,
      massG: grams(0.1, 100_000),
      material: key.optional().meta({
        description:
          'The material that it becomes: what decor is pressed from; absent: nothing that is counted',
      }),
      run: key.optional().meta({ description: 'The run that it is for' }),
      ...told,
    }),
    z.strictObject({
      kind: z.literal('leftover-written-off'),
      leftover: leftoverRef,
      massG: grams(0.1, 100_000),
      ...told,
    }),
    z.strictObject({
      kind: z.literal('take-back'),
      entry: entryRef.meta({ description: 'An entry that was a slip: it counts as never written' }),
      ...told,
    }),
  ])
  .meta({ id: 'StockEntry' });

/** A line of the ledger as a client sends it: the same id again is the same line. */
export const newStockEntry = z.strictObject({ id: uuid, entry: stockEntry }).meta({ id: 'NewStockEntry' });

export const storedStockEntry = z
  .strictObject({ id: uuid, sequence: z.int(), at: instant, loggedAt: instant, entry: stockEntry })
  .meta({ id: 'StoredStockEntry' });

/** How much there is of one material, and what that follows from. */
export const stockLine = z
  .strictObject({
    key,
    title: z.string(),
    text: shownText,
    unit: z.enum(['g', 'piece']),
    onHand: z.number().meta({ description: 'At least 0, in its unit' }),
    missing: z
      .number()
      .optional()
      .meta({ description: 'So much more was used than was entered; absent: nothing' }),
    from: z.strictObject({ amount: z.number(), at: instant.optional() }).optional().meta({
      description: 'The latest count; without `at` what the workshop began with. Absent: never counted',
    }),
    bought: z.number().meta({ description: 'Since then' }),
    usedByRuns: z.number(),
    usedElse: z.number().meta({ description: 'Used besides runs, and thrown out' }),
    fromLeftovers: z.number(),
    paid: z
      .strictObject({ amount: z.number(), price: z.number(), at: instant })
      .optional()
      .meta({ description: 'The latest purchase with a price; absent: none' }),
  })
  .meta({ id: 'StockLine' });

/** Soap that was left of a batch and kept. */
export const keptLeftover = z
  .strictObject({
    id: z.string(),
    title: z.string(),
    form: z.enum(leftoverForms),
    massG: z.number().meta({ description: 'What is still there, grams' }),
    keptG: z.number(),
    madeAt: instant,
    keptAt: instant,
    run: key.optional(),
    part: key.optional(),
    recipe: z.string().optional(),
  })
  .meta({ id: 'KeptLeftover' });

/** The stock of a workshop, as of now. */
export const stockDocument = z
  .strictObject({
    currency: z.string().optional(),
    materials: z.array(stockLine),
    unsized: z.array(z.string()).meta({
      description:
        'Titles of runs whose amounts cannot be worked out any more: what they used is not counted',
    }),
    leftovers: z.array(keptLeftover).meta({ description: 'Those of which something is left, oldest first' }),
  })
  .meta({ id: 'StockDocument' });

/** One thing that changed the stock of a material. */
export const stockMove = z
  .strictObject({
    at: instant,
    kind: z.enum(['purchase', 'count', 'used', 'written-off', 'leftover-used', 'made', 'spoilt']),
    amount: z
      .number()
      .meta({ description: 'Of a count what was there; else what was added, below 0 what was taken' }),
    entry: z.string().optional().meta({ description: 'Of the ledger; absent: a run’s log tells it' }),
    run: z.strictObject({ key, title: z.string() }).optional(),
    part: z.string().optional().meta({ description: 'Title of the part' }),
    price: z.number().optional(),
    note: z.string().optional(),
  })
  .meta({ id: 'StockMove' });

/** Moves of one material, the latest first. */
export const stockMoves = z
  .strictObject({ material: key, unit: z.enum(['g', 'piece']), moves: z.array(stockMove) })
  .meta({ id: 'StockMoves' });

export const stockMovesQuery = z.strictObject({
  material: key,
  unit: z.enum(['g', 'piece']).default('g'),
});

/** Lines of the ledger in a run file, in the order in which they were written. */
export const stockLedger = z
  .array(z.strictObject({ id: line(64).min(1).optional(), entry: stockEntry }))
  .max(5000)
  .default([]);

export type StockEntry = z.infer<typeof stockEntry>;
export type StockLine = z.infer<typeof stockLine>;
export type KeptLeftover = z.infer<typeof keptLeftover>;
export type StockDocument = z.infer<typeof stockDocument>;
export type StockMove = z.infer<typeof stockMove>;
export type StockMoves = z.infer<typeof stockMoves>;
export type StockMovesQuery = z.infer<typeof stockMovesQuery>;
export type NewStockEntry = z.infer<typeof newStockEntry>;
export type StoredStockEntryView = z.infer<typeof storedStockEntry>;

import { z } from 'zod';
import { formError, ruleError } from './accepted-error.js';
import { key, line, percent, title } from './common.js';
import { fatKinds } from './names/index.js';

/** What a fat is made of. */
export const fatKind = z
  .enum(fatKinds)
  .meta({ description: 'Esters of glycerol, esters of long alcohols, or acids that are free already' });

const rising = ruleError('rising-pair');

/** Grams of iodine per 100 g. */
export const iodineValue = z
  .strictObject({ low: z.number().min(0).max(250), high: z.number().min(0).max(250) })
  .refine(({ low, high }) => low <= high, rising)
  .meta({ description: 'Iodine value, g per 100 g; both alike when the sheet gives one figure' });

/** Share of a fat that no lye turns into soap. */
export const unsaponifiable = z
  .strictObject({ low: percent(0, 60), high: percent(0, 60) })
  .refine(({ low, high }) => low <= high, rising)
  .meta({ description: 'Unsaponifiable matter, per cent; from 0 when the sheet says “at most”' });

const milligrams = z
  .number({ error: formError('saponification') })
  .positive()
  .max(600);

const threeFigures = z
  .strictObject({ low: milligrams, used: milligrams, high: milligrams })
  .superRefine(({ low, used, high }, context) => {
    if (low <= used && used <= high) return;
    context.addIssue({ code: 'custom', ...ruleError('rising-figures') });
  });

/** One figure of a sheet stands for all three. */
const saponification = z
  .union([milligrams, threeFigures])
  .transform((value) => (typeof value === 'number' ? { low: value, used: value, high: value } : value))
  .pipe(threeFigures)
  .meta({ description: 'Saponification value, mg KOH per g: one figure, or low, used and high' });

/** Fatty acids told of one fat; sheets list about twenty. */
const MOST_ACIDS = 60;

/** A fat of the maker's own, from a supplier's sheet. Shipped fats need no entry. */
export const fat = z
  .strictObject({
    key,
    title,
    inci: line(120).optional().meta({ description: 'Its name on a label, as put in' }),
    soapInci: line(120).optional().meta({
      description: 'The name of its sodium soap on a label; a shipped fat of the same key lends its own',
    }),
    kind: fatKind.optional().meta({ description: 'A triglyceride unless said otherwise' }),
    saponificationMgKohPerG: saponification,
    iodine: iodineValue.optional(),
    unsaponifiablePercent: unsaponifiable.optional(),
    fattyAcidsPercent: z
      .record(line(20).min(1), percent(0, 100))
      .refine((acids) => Object.keys(acids).length <= MOST_ACIDS, ruleError('too-many-fatty-acids'))
      .meta({
        description: 'Share of total fatty acids by carbon count, such as C18:1; empty for a wax',
        examples: [{ 'C18:1': 70 }],
        maxProperties: MOST_ACIDS,
      }),
    densityGPerMl: z.number().min(0.8).max(1.1).meta({
      description:
        'As a liquid at 20 °C. For a fat that is solid there: its liquid density, and 0.00064 more for each °C above 20 at which that was measured',
    }),
    expansionGPerMlPerC: z.number().min(0.0003).max(0.0015).optional().meta({
      description: 'How much the density falls for each °C; that of triglycerides, 0.00064, unless given',
    }),
    behaviour: line(300).optional().meta({ description: 'What it does in batter and bar' }),
    confirmed: z.boolean().optional().meta({
      description: 'The sheet was read again: figures that are possible but unlikely are as it says',
    }),
    ofThisLot: z.boolean().optional().meta({
      description:
        'The saponification value is of the lot in use, by its certificate; else a single one stands for lots 2 % around it',
    }),
    source: line(200).meta({ description: 'Where these figures come from' }),
  })
  .meta({ id: 'Fat' });

export type Fat = z.infer<typeof fat>;

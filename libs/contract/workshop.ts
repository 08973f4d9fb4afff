import { z } from 'zod';
import { ruleError } from './accepted-error.js';
import { key, line, localDate, localTime, percent, title } from './common.js';
import { currency, material } from './material.js';
import { airMovements } from './names/index.js';
import { celsius } from './quantity.js';

/** A stretch of one local day; the end is not included. */
export const span = z
  .strictObject({ from: localTime, to: localTime })
  .refine((s) => s.from < s.to, {
    ...ruleError('ends-before-it-begins'),
    path: ['to'],
  })
  .meta({ id: 'Span' });

const spans = z.array(span).max(12).default([]);

/** Quiet hours; may run over midnight, unlike a span. */
const quietSpan = z.strictObject({ from: localTime, to: localTime }).meta({ id: 'QuietSpan' });

/** When the maker can be at the bench and may be disturbed. */
export const hours = z
  .strictObject({
    weekly: z.strictObject({
      monday: spans,
      tuesday: spans,
      wednesday: spans,
      thursday: spans,
      friday: spans,
      saturday: spans,
      sunday: spans,
    }),
    exceptions: z
      .array(z.strictObject({ date: localDate, spans, note: line(200).optional() }))
      .max(400)
      .default([])
      .meta({ description: 'Days whose hours differ; they replace that day’s weekly hours' }),
    quiet: quietSpan
      .optional()
      .meta({ description: 'No nudge arrives in these hours; absent: there are none' }),
  })
  .meta({ id: 'Hours' });

/** Shared equipment other than moulds: trays, the melter. */
const equipment = z.strictObject({ key, title, count: z.int().min(1).max(1000) }).meta({ id: 'Equipment' });

/** What is true of the workshop whatever is being made. */
export const workshopFacts = z
  .strictObject({
    title,
    timeZone: z
      .string()
      .min(1)
      .max(64)
      .meta({ description: 'IANA time zone', examples: ['Europe/Dublin'] }),
    language: z
      .enum(['en', 'de'])
      .default('en')
      .meta({ description: 'In which nudges are written that leave the program' }),
    units: z.enum(['metric', 'us']).default('metric').meta({ description: 'Of amounts in these' }),
    room: z
      .strictObject({
        temperatureC: celsius(5, 35).default(20),
        humidityPercent: percent(10, 95).default(50),
        air: z.enum(airMovements).default('usual').meta({
          description:
            'How it moves where soap stands and cures: `still` in a shut box or cupboard, `moving` before a fan or in a draught',
        }),
      })
      .prefault({}),
    hands: z.int().min(1).max(4).default(1).meta({ description: 'People at the bench at once' }),
    equipment: z.array(equipment).max(50).default([]),
    materials: z.array(material).max(500).default([]),
    cureRule: z
      .strictObject({ lossPercentPerWeek: percent(0.1, 10).default(1) })
      .prefault({})
      .meta({ description: 'A lot is cured when it loses less than this in a week' }),
    currency,
    hourlyRate: z
      .number()
      .min(0)
      .max(100_000)
      .optional()
      .meta({ description: 'What an hour of hands-on work is worth; absent: work is not costed' }),
    hours,
  })
  .meta({ id: 'WorkshopFacts' });

export type Span = z.infer<typeof span>;
export type Hours = z.infer<typeof hours>;
export type WorkshopFacts = z.infer<typeof workshopFacts>;

import { z } from 'zod';
import { onOneLine, withoutSteering } from '#units';
import { acceptedError, formError } from './accepted-error.js';

/** Short name that other things refer to; unique within a workshop and never changed. */
export const key = z
  .string()
  .regex(/^[a-z][a-z0-9-]{0,39}$/, formError('key'))
  .meta({ description: 'Short name that other things refer to', examples: ['deep-water'] });

/**
 * One line of text that people read. Line breaks become spaces; what steers a terminal or turns text around is left
 * out, as blanks at the ends are: nobody who pastes it sees it.
 */
export const line = (most: number): z.ZodString => z.string().overwrite(onOneLine).trim().max(most);

/** Text that people read and may break into lines; what is left out of a line is left out here, too. */
export const prose = (most: number): z.ZodString => z.string().overwrite(withoutSteering).max(most);

/** What people read. */
export const title = line(120).min(1);

/** A percentage between two bounds, both included. */
export function percent(low: number, high: number): z.ZodNumber {
  const error = acceptedError({ kind: 'range', low, high, unit: '%' });
  return z.number().min(low, error).max(high, error);
}

/** The years in which a workshop may have been at work or may plan to be; anything else is a slip. */
const YEARS = /^2[01]\d\d-/;

/** Calendar date in the workshop's time zone. */
export const localDate = z.iso
  .date({ abort: true })
  .regex(YEARS, formError('date-in-years'))
  .meta({ description: 'Date in the workshop’s time zone', format: 'date' });

/** Wall-clock time; `24:00` is allowed as the end of a day. */
export const localTime = z
  .string()
  .regex(/^(([01]\d|2[0-3]):[0-5]\d|24:00)$/, formError('time-of-day'))
  .meta({ description: 'Time of day in the workshop’s time zone' });

/** Date and wall-clock time in the workshop's time zone. */
export const localDateTime = z.iso
  .datetime({ local: true, offset: false, precision: -1, abort: true })
  .regex(YEARS, formError('local-date-time-in-years'))
  .meta({
    description: 'Date and time in the workshop’s time zone, to the minute',
    examples: ['2026-11-27T18:00'],
  });

const instantText = {
  offset: true,
  abort: true,
  error: formError('instant'),
} as const;
const instantMeta = {
  description: 'An instant, ISO 8601 with offset',
  examples: ['2026-11-27T18:10:00.000Z'],
};

/** An instant with its offset, as it is answered. */
export const instant = z.iso.datetime(instantText).meta(instantMeta);

/** An instant with its offset that someone gives. */
export const givenInstant = z.iso
  .datetime(instantText)
  .max(40)
  .regex(YEARS, formError('instant-in-years'))
  .meta({ ...instantMeta, format: 'date-time' });

export const uuid = z.uuid().meta({ description: 'UUID, version 7' });

/** The largest number that a column of the type `integer` holds (PostgreSQL 18, section 8.1). */
export const LARGEST_INT4 = 2_147_483_647;

/** Version that a change must name, so that two devices cannot overwrite each other unseen. */
export const version = z
  .int()
  .min(1)
  .max(LARGEST_INT4)
  .meta({ description: 'Version this was read at; a change must name it' });

/** A whole number in a path or a query, where all is text. */
export const numberInAddress = (low: number, high: number): z.ZodCoercedNumber =>
  z.coerce.number().int().min(low).max(high);

/** Same seed, same answer. */
export const seed = z.int().min(-LARGEST_INT4).max(LARGEST_INT4);

/** A quantity with its uncertainty: 10th, 50th and 90th percentile. */
export const band = z
  .strictObject({ low: z.number(), likely: z.number(), high: z.number() })
  .meta({ id: 'Band', description: '10th, 50th and 90th percentile' });

/** A band of instants. */
export const instantBand = z
  .strictObject({ low: instant, likely: instant, high: instant })
  .meta({ id: 'InstantBand', description: '10th, 50th and 90th percentile' });

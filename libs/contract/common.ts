import { z } from 'zod';

/** Short name that other things refer to; unique within a workshop and never changed. */
export const key = z
  .string()
  .regex(
    /^[a-z][a-z0-9-]{0,39}$/,
    'lower-case letters, digits and hyphens, starting with a letter, 40 at most',
  )
  .meta({ description: 'Short name that other things refer to', examples: ['deep-water'] });

/** What people read. */
export const title = z.string().trim().min(1).max(120);

/** A percentage between two bounds, both included. */
export const percent = (low: number, high: number): z.ZodNumber => z.number().min(low).max(high);

/** Calendar date in the workshop's time zone. */
export const localDate = z.iso.date().meta({ description: 'Date in the workshop’s time zone' });

/** Wall-clock time; `24:00` is allowed as the end of a day. */
export const localTime = z
  .string()
  .regex(/^(([01]\d|2[0-3]):[0-5]\d|24:00)$/, 'a time of day as HH:MM, 00:00 to 24:00')
  .meta({ description: 'Time of day in the workshop’s time zone' });

/** Date and wall-clock time in the workshop's time zone. */
export const localDateTime = z.iso.datetime({ local: true, offset: false, precision: -1 }).meta({
  description: 'Date and time in the workshop’s time zone, to the minute',
  examples: ['2026-11-27T18:00'],
});

/** An instant with its offset, as it crosses the wire. */
export const instant = z.iso
  .datetime({ offset: true, error: 'an instant with its offset such as 2026-11-27T18:10:00Z' })
  .meta({ description: 'An instant, ISO 8601 with offset', examples: ['2026-11-27T18:10:00.000Z'] });

export const uuid = z.uuid().meta({ description: 'UUID, version 7' });

/** Version that a change must name, so that two devices cannot overwrite each other unseen. */
export const version = z
  .int()
  .min(1)
  .meta({ description: 'Version this was read at; a change must name it' });

/** A quantity with its uncertainty: 10th, 50th and 90th percentile. */
export const band = z
  .strictObject({ low: z.number(), likely: z.number(), high: z.number() })
  .meta({ id: 'Band', description: '10th, 50th and 90th percentile' });

/** A band of instants. */
export const instantBand = z
  .strictObject({ low: instant, likely: instant, high: instant })
  .meta({ id: 'InstantBand', description: '10th, 50th and 90th percentile' });

export type Band = z.infer<typeof band>;

import { z } from 'zod';
import { shownText } from '../shown-text.js';

/**
 * Something to tell a reader, as data: a code and what its sentence needs to know. What is stored or computed holds
 * no sentence; `libs/words` makes it in the reader's language, units and time zone.
 * @param code names the sentence, once in the whole project: `family.what-it-says`
 * @param params what the sentence needs, in the units of the code (grams, °C, minutes, instants as ISO text)
 */
export function message<const C extends string, P extends z.ZodRawShape>(
  code: C,
  params: P,
): MessageSchema<C, P> {
  return z.strictObject({ code: z.literal(code), ...params, text: shownText });
}

type MessageSchema<C extends string, P extends z.ZodRawShape> = z.ZodObject<
  { code: z.ZodLiteral<C> } & P & { text: typeof shownText },
  z.core.$strict
>;

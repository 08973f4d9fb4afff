import { z } from 'zod';

/** What people read of the thing that it stands in; made where an answer is written. */
export const shownText = z
  .string()
  .optional()
  .meta({
    description:
      'The sentence, or the name, in the language that Accept-Language asks for (en or de), and in US units after “Prefer: units=us”; ' +
      'only in answers of the API, never in what is stored',
  });

import type { Request } from 'express';
import { languages, type Reader } from '#words';

/**
 * For whom an answer is written: the best of the languages that `Accept-Language` names (RFC 9110, 12.5.4), English where
 * it names none of ours, and US units where `Prefer` (RFC 7240) says `units=us`. Times are UTC unless a document
 * names its zone.
 */
export function readerOf(request: Request): Reader {
  const accepted = request.acceptsLanguages(Object.keys(languages));
  return {
    language: accepted === 'de' ? 'de' : 'en',
    units: /(^|[,;\s])units\s*=\s*"?us\b/i.test(request.get('Prefer') ?? '') ? 'us' : 'metric',
    timeZone: 'UTC',
  };
}

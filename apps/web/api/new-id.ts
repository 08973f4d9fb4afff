import { v4 } from 'uuid';

/**
 * An id that nobody else makes: of an entry, or of a request that may be sent again. By the package, since the browser's
 * own `crypto.randomUUID` is missing on pages over plain http, which a phone on the home network opens.
 */
export function newId(): string {
  return v4();
}

import { createHash } from 'node:crypto';

/** SHA-256 of a secret, as it is kept. Fast on purpose: what is hashed is drawn at random, not chosen by a person. */
export function hashOf(secret: string): Uint8Array<ArrayBuffer> {
  return Uint8Array.from(createHash('sha256').update(secret).digest());
}

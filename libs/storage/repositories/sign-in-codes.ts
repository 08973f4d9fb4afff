import { randomBytes } from 'node:crypto';
import { hashOf } from '../secret-hash.js';
import { newId, type Session } from '../session.js';

/** A code as it is given out; only its hash is kept. */
export interface SignInCode {
  /** Two groups of four, such as 7K2M-XQ4D. */
  readonly code: string;
  readonly expiresAt: Date;
}

export interface SignInCodes {
  /** Makes a code that lets one browser in within a quarter of an hour, and clears away those that ran out. */
  create(workshopId: string): Promise<SignInCode>;
  /**
   * Uses a code up, whatever its case, hyphens and spaces; of several at once only one succeeds.
   * @returns whose it was; null when it is unknown, used or too old
   */
  redeem(typed: string): Promise<{ workshopId: string } | null>;
}

const LIFE_MS = 15 * 60_000;

/** Crockford's Base 32: digits and letters without I, L, O and U, which are misread or misheard. */
const ALPHABET = '0123456789ABCDEFGHJKMNPQRSTVWXYZ';
/** 40 bits: at ten tries a minute, a code is guessed in a quarter of an hour once in 7 thousand million. */
const LENGTH = 8;

export function signInCodes(session: Session): SignInCodes {
  const { db } = session;
  return {
    async create(workshopId) {
      const createdAt = session.now();
      const expiresAt = new Date(createdAt.getTime() + LIFE_MS);
      const plain = draw();
      await db.signInCode.deleteMany({ where: { workshopId, expiresAt: { lte: createdAt } } });
      await db.signInCode.create({
        data: { id: newId(session), workshopId, hash: hashOf(plain), createdAt, expiresAt },
      });
      return { code: `${plain.slice(0, LENGTH / 2)}-${plain.slice(LENGTH / 2)}`, expiresAt };
    },
    async redeem(typed) {
      const now = session.now();
      const [row] = await db.signInCode.updateManyAndReturn({
        where: { hash: hashOf(asDrawn(typed)), usedAt: null, expiresAt: { gt: now } },
        data: { usedAt: now },
        select: { workshopId: true },
      });
      return row ?? null;
    },
  };
}

function draw(): string {
  return [...randomBytes(LENGTH)].map((byte) => ALPHABET[byte % ALPHABET.length]).join('');
}

/** What a person typed, with the letters that Crockford's decoding reads as digits. */
function asDrawn(typed: string): string {
  return typed.toUpperCase().replace(/[\s-]/g, '').replace(/O/g, '0').replace(/[IL]/g, '1');
}

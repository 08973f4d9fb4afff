import { setTimeout as pause } from 'node:timers/promises';
import type { Storage } from './connect.js';
import type { Cleared } from './repositories/clearing.js';

const DAY_MS = 24 * 60 * 60_000;

/**
 * How long things are kept that are of use for a while only. A phone keeps what was logged without a network until it
 * can send it; sent again after this time, an entry whose answer was lost would count twice.
 */
const KEPT_DAYS = 30;
/** Rows of each kind that go in one go. */
const STEP = 500;
/** Between two steps, for those who wait for the database. */
const REST_MS = 100;

export interface KeepClearingOptions {
  readonly storage: Pick<Storage, 'workshops' | 'clearing'>;
  readonly now: () => Date;
  readonly log: {
    info(message: string, details?: Record<string, unknown>): void;
    warn(message: string, details?: Record<string, unknown>): void;
  };
}

/**
 * Clears all workshops of what is older than the rules keep it, a step at a time until nothing is left to go.
 * @returns how many rows of each kind went
 */
export async function clearAll(
  { storage, now }: Pick<KeepClearingOptions, 'storage' | 'now'>,
  signal?: AbortSignal,
): Promise<Cleared> {
  const before = new Date(now().getTime() - KEPT_DAYS * DAY_MS);
  let total = nothing;
  for (const { id } of await storage.workshops.list()) {
    for (; signal?.aborted !== true; await pause(REST_MS)) {
      const step = await storage.clearing.clear(id, before, STEP);
      if (sum(step) === 0) break;
      total = plus(total, step);
    }
  }
  return total;
}

/**
 * Clears at once and then daily. Any number of processes may do so over one database.
 * @returns a function that ends it, once the step under way is done
 */
export function keepClearing(options: KeepClearingOptions): () => Promise<void> {
  const ending = new AbortController();
  const { signal } = ending;
  const rounds = async (): Promise<void> => {
    while (!signal.aborted) {
      try {
        const cleared = await clearAll(options, signal);
        if (sum(cleared) > 0) options.log.info('Cleared what is no longer of use', { ...cleared });
      } catch (error) {
        options.log.warn('Clearing failed; it is tried again tomorrow', { reason: String(error) });
      }
      await pause(DAY_MS, undefined, { signal, ref: false }).catch(() => undefined);
    }
  };
  const running = rounds();
  return async () => {
    ending.abort();
    await running;
  };
}

const nothing: Cleared = { idempotencyKeys: 0, nudges: 0, planRevisions: 0, signInCodes: 0, photos: 0 };

function sum({ idempotencyKeys, nudges, planRevisions, signInCodes, photos }: Cleared): number {
  return idempotencyKeys + nudges + planRevisions + signInCodes + photos;
}

function plus(a: Cleared, b: Cleared): Cleared {
  return {
    idempotencyKeys: a.idempotencyKeys + b.idempotencyKeys,
    nudges: a.nudges + b.nudges,
    planRevisions: a.planRevisions + b.planRevisions,
    signInCodes: a.signInCodes + b.signInCodes,
    photos: a.photos + b.photos,
  };
}

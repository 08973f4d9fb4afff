import { createHash } from 'node:crypto';
import type { Repositories, Storage } from '#storage';
import { ApiProblem } from '../problems/api-problem.js';

/** What tells a request from others with the same idempotency key. */
export interface IdempotentRequest {
  readonly workshopId: string;
  /** Of the header `Idempotency-Key`; without one the request is simply carried out. */
  readonly key: string | undefined;
  /** Method and path. */
  readonly call: string;
  readonly body: unknown;
}

/** Tells requests with the same key apart. */
export function callHash({ call, body }: IdempotentRequest): string {
  return createHash('sha256')
    .update(JSON.stringify([call, body]))
    .digest('hex');
}

export function keyReused(): ApiProblem {
  return new ApiProblem(422, 'idempotency-key-reused', { says: 'idempotency-key-reused' });
}

/**
 * Carries out a creation, with the workshop to itself and all in one transaction. The same key and body again get the
 * same answer without a second creation; the same key with another body is refused.
 * @returns the answer's body; throwing in `work` leaves nothing behind and frees the key
 */
export async function withIdempotency<T>(
  storage: Storage,
  request: IdempotentRequest,
  work: (tx: Repositories) => Promise<T>,
): Promise<T> {
  const { workshopId, key } = request;
  if (key === undefined) return storage.withWorkshopLock(workshopId, work);
  const outcome = await storage.withWorkshopLock(workshopId, (tx) =>
    tx.idempotency.once(workshopId, key, callHash(request), async (inner) => ({
      status: 201,
      response: await work(inner),
    })),
  );
  if (!outcome.ok) throw keyReused();
  return outcome.response as T;
}

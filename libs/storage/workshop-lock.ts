import { WorkshopBusyError } from './results.js';
import type { Session } from './session.js';

/** How long a change waits for another one to the same workshop. */
export const LOCK_TIMEOUT_MS = 20_000;

/** A transaction may wait for a connection, then for the workshop, and then has as long again for its work. */
export const TRANSACTION = { maxWait: LOCK_TIMEOUT_MS, timeout: 3 * LOCK_TIMEOUT_MS } as const;

/** PostgreSQL, appendix A "Error Codes": lock_not_available. */
const LOCK_NOT_AVAILABLE = '55P03';

/**
 * Locks the workshop's row until the end of the transaction, against whoever else asks for the same. Rows that refer to
 * the workshop, such as a new access key, can be inserted meanwhile: its key does not change.
 */
export async function lockWorkshop({ db }: Session, workshopId: string, timeoutMs: number): Promise<void> {
  await db.$executeRaw`SELECT set_config('lock_timeout', ${String(timeoutMs)}, true)`;
  const lock = db.$executeRaw`SELECT id FROM workshop WHERE id = ${workshopId}::uuid FOR NO KEY UPDATE`;
  const found = await lock.catch((error: unknown) => {
    throw mentions(error, LOCK_NOT_AVAILABLE) ? new WorkshopBusyError(workshopId) : error;
  });
  if (found === 0) throw new RangeError(`There is no workshop ${workshopId}.`);
}

/** The client wraps the database's own error; where exactly has changed between its versions. */
function mentions(error: unknown, code: string): boolean {
  return error instanceof Error && JSON.stringify([error.message, error]).includes(code);
}

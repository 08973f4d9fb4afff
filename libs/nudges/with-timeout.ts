/** A call to the queue took longer than it may. The call itself may still go through. */
class TookTooLongError extends Error {
  override readonly name = 'TookTooLongError';
}

/**
 * Waits for a promise, but not for ever: a Redis client whose server was never reached holds calls back
 * until it is, and neither a person nor a shutdown may wait for that.
 * @param ms longest wait in milliseconds
 * @param what names the work in the error
 */
export async function withTimeout<T>(ms: number, what: string, work: Promise<T>): Promise<T> {
  let timer: NodeJS.Timeout | undefined;
  const tooLong = new Promise<never>((_, reject) => {
    timer = setTimeout(() => reject(new TookTooLongError(`${what}: no answer within ${ms} ms`)), ms);
  });
  try {
    return await Promise.race([work, tooLong]);
  } finally {
    clearTimeout(timer);
  }
}

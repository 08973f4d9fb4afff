/** Something a person can mend, said in a sentence; anything else that is thrown is a fault of ours. */
export class LaunchError extends Error {
  /**
   * @param {string} message
   * @param {number} [exitCode] what the process should end with
   */
  constructor(message, exitCode = 1) {
    super(message);
    this.name = 'LaunchError';
    this.exitCode = exitCode;
  }
}

/**
 * Runs a program's body and ends the process with a sentence, not a stack, when a `LaunchError` stops it.
 * @param {() => Promise<void>} body
 */
export async function orExplain(body) {
  try {
    await body();
  } catch (error) {
    if (!(error instanceof LaunchError)) throw error;
    process.stderr.write(`${error.message}\n`);
    process.exitCode = error.exitCode;
  }
}

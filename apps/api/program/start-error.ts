/** Exit statuses after sysexits(3). */
export const exitStatus = { usage: 64, unavailable: 69, software: 70 } as const;

/** Why the program does not start, in a sentence for the person at the terminal. */
export class StartError extends Error {
  constructor(
    message: string,
    readonly status: number = exitStatus.unavailable,
  ) {
    super(message);
    this.name = 'StartError';
  }
}

/** What a command says and how it ends. */
export interface Outcome {
  readonly stdout: string;
  readonly stderr: string;
  readonly status: number;
}

/** Exit statuses; 64 is EX_USAGE of sysexits(3). */
export const DONE = 0;
export const NO_PLAN = 2;
export const BAD_INPUT = 64;

/** The command went as asked. */
export function told(stdout: string): Outcome {
  return { stdout, stderr: '', status: DONE };
}

/** Something is wrong with the input, told line by line. */
export function badInput(problems: readonly string[]): Outcome {
  return { stdout: '', stderr: `${problems.join('\n')}\n`, status: BAD_INPUT };
}

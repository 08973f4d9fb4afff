import { shownOnOneLine } from '#units';
import type { Language } from '#words';
import { printed } from './words/index.js';

/** What a command says and how it ends. */
export interface Outcome {
  readonly stdout: string;
  readonly stderr: string;
  readonly status: number;
}

/** Exit statuses; 64 is EX_USAGE of sysexits(3). */
export const DONE = 0;
export const NO_PLAN = 2;
const BAD_INPUT = 64;

/** The command went as asked. */
export function told(stdout: string): Outcome {
  return { stdout, stderr: '', status: DONE };
}

/** Nobody reads more at once; a file may have as many problems as it has lines. */
const MOST_PROBLEMS = 100;

/**
 * The first problems of a list, each as a line, and a last line that counts the rest.
 * @param besides how many there are that the list leaves out
 */
export function problemLines<T>(
  problems: readonly T[],
  lineOf: (problem: T) => string,
  language: Language,
  besides = 0,
): string[] {
  const lines = problems.slice(0, MOST_PROBLEMS).map(lineOf);
  const more = problems.length - lines.length + besides;
  return more > 0 ? [...lines, printed[language].file.more(String(more))] : lines;
}

/** Something is wrong with the input, told line by line. */
export function badInput(problems: readonly string[]): Outcome {
  return { stdout: '', stderr: `${problems.map(shownOnOneLine).join('\n')}\n`, status: BAD_INPUT };
}

/** The same with notes beside the answer, where they get in nobody's way who reads that by program. */
export function withNotes(outcome: Outcome, notes: readonly string[]): Outcome {
  return {
    ...outcome,
    stderr: [...notes.map((note) => `${shownOnOneLine(note)}\n`), outcome.stderr].join(''),
  };
}

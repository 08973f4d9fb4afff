import { shownText } from '#units';
import type { Language } from '#words';
import type { Outcome } from './outcome.js';
import { printed } from './words/index.js';

/** EX_IOERR of sysexits(3). */
const CANNOT_WRITE = 74;

/**
 * Writes what a command says. Nothing that came from a file may steer the terminal it is read on; in JSON, what steers
 * is written in a way that stands for the same text.
 */
export function writeOutcome({ stdout, stderr, status }: Outcome, language: Language): void {
  process.exitCode = status;
  for (const stream of [process.stdout, process.stderr])
    stream.on('error', (error: NodeJS.ErrnoException) => endQuietly(error, language));
  process.stdout.write(shownText(stdout));
  process.stderr.write(shownText(stderr));
}

/** Whoever reads may have seen enough, as in “| head”, and close the pipe: that is no fault of ours or theirs. */
function endQuietly(error: NodeJS.ErrnoException, language: Language): void {
  if (error.code === 'EPIPE') process.exit();
  process.stderr.write(`${printed[language].file.cannotWrite(String(error.code))}\n`);
  process.exit(CANNOT_WRITE);
}

/** Fetched when it is needed, as the schemas are large. */
import { parseWith, runFile } from '#contract';
import { checkInput, runFileInput } from '#runs';

/** Whether the API would take a run file; half of what is typed it would not. */
export function canBeReckoned(file: unknown): boolean {
  const read = parseWith(runFile, file);
  if (!read.ok) return false;
  const input = runFileInput(read.value);
  return input.ok && checkInput(input.value).length === 0;
}

import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The project folder, wherever the program was started from. */
export const projectFolder = fileURLToPath(new URL('../../', import.meta.url));

/** @param {...string} steps below the project folder */
export function inProject(...steps) {
  return join(projectFolder, ...steps);
}

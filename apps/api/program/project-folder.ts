import { existsSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The project folder. Compiled code lies deeper than its source, so it is looked for upwards. */
export function projectFolder(): string {
  let folder = dirname(fileURLToPath(import.meta.url));
  while (!existsSync(join(folder, 'package-lock.json'))) {
    if (folder === dirname(folder))
      throw new Error('The project folder with its package-lock.json is missing.');
    folder = dirname(folder);
  }
  return folder;
}

/** The version of the program, as its package says. */
export function programVersion(): string {
  const text = readFileSync(join(projectFolder(), 'package.json'), 'utf8');
  return (JSON.parse(text) as { version: string }).version;
}

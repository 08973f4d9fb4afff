import { resolve } from 'node:path';
import type { Figure } from '../support/figure.js';
import { finishedRuns } from './history/finished-runs.js';
import { underLoad } from './history/under-load.js';

const parts: Readonly<Record<string, (folder: string) => Promise<Figure[]>>> = {
  'finished-runs': finishedRuns,
  'under-load': underLoad,
};

/**
 * What a workshop's past costs, and whether the program answers while it plans. Without arguments all parts, else those
 * named; `--program FOLDER` measures another build of the project.
 */
export async function figures(args: readonly string[] = []): Promise<Figure[]> {
  const at = args.indexOf('--program');
  const folder = at < 0 ? process.cwd() : resolve(args[at + 1] ?? '');
  const wanted = at < 0 ? args : args.filter((_, i) => i !== at && i !== at + 1);
  const unknown = wanted.find((name) => !Object.hasOwn(parts, name));
  if (unknown !== undefined) {
    throw new RangeError(`There is no part “${unknown}”; there are: ${Object.keys(parts).join(', ')}.`);
  }
  const figures: Figure[] = [];
  for (const [name, run] of Object.entries(parts)) {
    if (wanted.length === 0 || wanted.includes(name)) figures.push(...(await run(folder)));
  }
  return figures;
}

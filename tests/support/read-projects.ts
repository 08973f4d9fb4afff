import { readFileSync } from 'node:fs';
import type { Project } from './project.js';

/** An instance of the literature and what is known of it. */
export interface Instance extends Project {
  readonly name: string;
  /** Activities besides source and sink. */
  readonly n: number;
  /** Missing in files that only state problems. */
  readonly expected?: { readonly status: 'optimal' | 'infeasible' | 'open'; readonly makespan?: number };
  readonly witness?: readonly number[];
}

/**
 * The instances of a file in the form `{"instances": [...]}` described in the CITATION.md of tests/literature/planner.
 * @throws RangeError naming the instance and what is wrong with it
 */
export function readProjects(path: string | URL): Instance[] {
  const { instances } = JSON.parse(readFileSync(path, 'utf8')) as { instances?: Instance[] };
  if (!Array.isArray(instances)) throw new RangeError(`${String(path)} has no list “instances”`);
  for (const instance of instances) check(instance);
  return instances;
}

function check({ name, dur, cap, req, lags }: Instance): void {
  const must = (held: boolean, what: string): void => {
    if (!held) throw new RangeError(`${name}: ${what}`);
  };
  const isCount = (n: unknown): boolean => Number.isInteger(n) && (n as number) >= 0;
  must(
    Array.isArray(dur) && dur.length >= 2 && dur.every(isCount),
    '“dur” has a whole number for each activity',
  );
  must(dur[0] === 0 && dur.at(-1) === 0, 'the source and the sink take no time');
  must(Array.isArray(cap) && cap.every(isCount), '“cap” has a whole number for each resource');
  must(
    Array.isArray(req) &&
      req.length === dur.length &&
      req.every((units) => units.length === cap.length && units.every(isCount)),
    '“req” has a row for each activity and in it a whole number for each resource',
  );
  must(
    Array.isArray(lags) &&
      lags.every(([i, j, w]) => [i, j].every((k) => isCount(k) && k < dur.length) && Number.isInteger(w)),
    '“lags” has [from, to, least] with activities of the project and whole numbers',
  );
}

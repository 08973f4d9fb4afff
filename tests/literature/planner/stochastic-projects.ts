import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { UncertainProject } from '../../bench/partial-order/uncertain-project.js';

export const publishedMethods = ['proactive09', 'reactive', 'proactiveSAA', 'stnu'] as const;

/** What a method reached on a sample; null when it failed. */
export type Published = Readonly<Record<(typeof publishedMethods)[number], number | null>>;

export interface StochasticProject {
  readonly name: string;
  readonly noise: 1 | 2;
  readonly project: UncertainProject;
  readonly samples: readonly {
    readonly dur: readonly number[];
    readonly pi: readonly [string, number | null];
    /** Missing where even perfect information leaves no schedule. */
    readonly published?: Published;
  }[];
}

interface ProjectFile {
  readonly instances: readonly {
    readonly name: string;
    readonly noise: 1 | 2;
    /** A duration is a whole number from the first to below the second; [0, 0] is always 0. */
    readonly durationBounds: readonly (readonly [number, number])[];
    readonly instance: Pick<UncertainProject, 'cap' | 'req' | 'lags'>;
    readonly samples: StochasticProject['samples'];
  }[];
}

/** The projects of `srcpsp-max.json`; see stnu-citation.md. */
export function stochasticProjects(): StochasticProject[] {
  const text = readFileSync(join('tests', 'literature', 'planner', 'srcpsp-max.json'), 'utf8');
  return (JSON.parse(text) as ProjectFile).instances.map(
    ({ name, noise, durationBounds, instance: { cap, req, lags }, samples }) => ({
      name,
      noise,
      project: {
        ...{ cap, req, lags },
        shortest: durationBounds.map(([low]) => low),
        longest: durationBounds.map(([low, end]) => Math.max(low, end - 1)),
      },
      samples,
    }),
  );
}

import type { RunsInput } from '#runs';
import { invalidInput } from '../problems/api-problem.js';
import type { TaskName } from './tasks.js';

/** How much may be computed, for whom, for how long. */
export interface ComputeLimits {
  /** Threads; one of them is kept for what is urgent. At least 2. */
  readonly threads: number;
  /** Seconds that a run's own plan may take. */
  readonly planS: number;
  /** Seconds that remedies, a latest start, a what-if or a preview may take. */
  readonly searchS: number;
  /** Tasks that may wait, of one workshop and of all together. */
  readonly waitingOfOne: number;
  readonly waiting: number;
  /** Megabytes that a thread may hold on to. */
  readonly memoryMb: number;
}

export const usualLimits: Omit<ComputeLimits, 'threads'> = {
  planS: 20,
  searchS: 60,
  waitingOfOne: 32,
  waiting: 256,
  memoryMb: 512,
};

/** Stages of one input, those of all its runs together: 50 runs of a demo design have 500 to 650. */
const MOST_STAGES = 1000;

/**
 * 0: something was done and its plan is awaited. 1: a page is opened. 2: a search that may take its time. 3: something of
 * which nothing is kept.
 */
export type Urgency = 0 | 1 | 2 | 3;

/** From here on it is a search, for which not every thread may be taken. */
export const SEARCH: Urgency = 2;

export const urgencyOf: Readonly<Record<TaskName, Urgency>> = {
  ...{ replan: 0, teach: 0, amounts: 1, clocks: 1, cure: 1, gather: 1, used: 1, lessons: 1 },
  ...{ remedies: 2, 'what-if': 2, 'latest-start': 2, judge: 2 },
  ...{ 'plan-preview': 3, 'amounts-preview': 3, 'clocks-preview': 3 },
};

/** @throws ApiProblem 422 for more stages than are planned together */
export function refuseTooLarge({ runs, designs }: Pick<RunsInput, 'runs' | 'designs'>): void {
  const counts = new Map(designs.map(({ key, stages }) => [key, stages.length]));
  const stages = runs.reduce((sum, { design }) => sum + (counts.get(design) ?? 0), 0);
  if (stages <= MOST_STAGES) return;
  throw invalidInput([{ code: 'plan.too-large', path: ['runs'], value: stages, stages, most: MOST_STAGES }]);
}

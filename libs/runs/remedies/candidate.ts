import type {
  CautionCode,
  DisturbanceCause,
  RemedyChange,
  RemedyChangeBesides,
  RemedyLoss,
  RemedyTitle,
} from '#contract';
import type { OpenInterval } from '#hours';
import type { PlanOptions, RunsInput } from '../input/input.js';
import type { FullPlan } from '../plan/plan-run.js';
import type { AssessedRun } from '../assessed-run.js';
import type { Trouble } from './trouble.js';

/** A change that may help, before anyone has planned it. */
export interface Candidate {
  readonly change: RemedyChange;
  /** Of candidates about the same thing only the best is shown. */
  readonly about: string;
  readonly title: RemedyTitle;
  /** What it asks for by itself, whatever the plan makes of it. */
  readonly asks: readonly { readonly what: DisturbanceCause; readonly points: number }[];
  /** What is worse with it whatever the plan makes of it. */
  readonly worse: readonly RemedyLoss[];
  readonly also: readonly RemedyChangeBesides[];
  readonly cautions: readonly CautionCode[];
}

/** A plan in trouble, as the kinds of remedies see it. */
export interface Situation {
  readonly input: RunsInput;
  readonly options: PlanOptions;
  readonly plan: FullPlan;
  readonly troubles: readonly Trouble[];
  readonly zone: string;
  /** When the maker is at the bench, from now on. */
  readonly open: readonly OpenInterval[];
}

/** One kind of remedy: the changes of that kind that can help, likely ones first. */
export type RemedyKind = (situation: Situation) => Candidate[];

/** Whether nothing of a run has been done yet, well or badly. */
export function isUntouched({ progress }: AssessedRun): boolean {
  return progress.attempts.every(({ status }) => status === 'open');
}

/** The runs that are in trouble. */
export function troubledRuns({ plan, troubles }: Situation): AssessedRun[] {
  const keys = new Set(troubles.map(({ run }) => run));
  return plan.assessedRuns.filter(({ run }) => keys.has(run.order.key));
}

/** The troubles of one run. */
export function troublesOf({ troubles }: Situation, { run }: AssessedRun): Trouble[] {
  return troubles.filter((trouble) => trouble.run === run.order.key);
}

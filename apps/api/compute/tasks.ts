import { createHash } from 'node:crypto';
import type {
  ClocksDocument,
  LatestStartDocument,
  LatestStartRequest,
  PlanDocument,
  PlanJudgement,
  RemediesDocument,
  RunTeachings,
  WhatIf,
  WhatIfAnswer,
  WorkshopFacts,
} from '#contract';
import {
  cureCurve,
  findLatestStart,
  gatherForRuns,
  judgeStanding,
  materialsUsedByRuns,
  planRuns,
  replan,
  suggestRemedies,
  teachingsOf,
  tryOut,
  workshopLessons,
  writeBatchSheet,
  writeClocks,
  type PastRun,
  type Replan,
  type ReplanWish,
  type RunsInput,
  type StandingPlan,
} from '#runs';
import { type Minute, type Result } from '#units';

/**
 * Everything that is computed beside the event loop: each a pure function of the library, its input and answer such as
 * can be copied from thread to thread (no functions, no classes).
 */
export const tasks = {
  replan: (wish: ReplanWish, stop?: () => boolean): Result<Replan> => replan({ ...wish, stop }),
  judge: judgeTask,
  amounts: writeBatchSheet,
  clocks: (input: RunsInput): Result<ClocksDocument> => writeClocks(input),
  cure: cureCurve,
  gather: gatherForRuns,
  used: materialsUsedByRuns,
  lessons: workshopLessons,
  teach: ({ past, facts }: TeachTask): RunTeachings[] => past.map((run) => teachingsOf(run, facts).teachings),
  remedies: ({ input, previous, now }: PlannedRunTask, stop?: () => boolean): Result<RemediesDocument> =>
    suggestRemedies(input, { now, previous, stop }),
  'what-if': ({ input, wish, ...standing }: WhatIfTask, stop?: () => boolean): Result<WhatIfAnswer> =>
    tryOut(input, wish, { ...standing, stop }),
  'latest-start': (
    { input, odds, seed, now }: LatestStartTask,
    stop?: () => boolean,
  ): Result<LatestStartDocument> =>
    findLatestStart(input, { odds }, { now, stop, ...(seed !== undefined && { seed }) }),
  'plan-preview': ({ input, now }: PreviewTask, stop?: () => boolean): Result<PlanDocument> =>
    planRuns(input, { now, stop }),
  'amounts-preview': writeBatchSheet,
  'clocks-preview': (input: RunsInput): Result<ClocksDocument> => writeClocks(input),
};

interface JudgeTask extends StandingPlan {
  /** Digest of what the last judgement of this plan rested on. */
  readonly known: string | undefined;
}

interface JudgeAnswer {
  readonly basis: string;
  readonly judgement: PlanJudgement;
}

/** @returns undefined where it would be the same again, or there is nothing to judge */
function judgeTask({ known, ...plan }: JudgeTask): Result<JudgeAnswer | undefined> {
  let basis = '';
  const found = judgeStanding(plan, (text) => {
    basis = createHash('sha256').update(text).digest('base64url');
    return basis === known;
  });
  if (!found.ok) return found;
  return { ok: true, value: found.value && { basis, judgement: found.value } };
}

interface TeachTask {
  readonly past: readonly PastRun[];
  readonly facts: WorkshopFacts;
}

interface PreviewTask {
  readonly input: RunsInput;
  readonly now: Minute;
}

/** A run's input with its latest plan and the present. */
interface PlannedRunTask {
  readonly input: RunsInput;
  readonly previous: PlanDocument;
  readonly now: Minute;
}

interface WhatIfTask extends PlannedRunTask {
  /** Key of the run. */
  readonly run: string;
  readonly wish: WhatIf;
}

interface LatestStartTask extends Pick<LatestStartRequest, 'odds' | 'seed'> {
  readonly input: RunsInput;
  readonly now: Minute;
}

export type TaskName = keyof typeof tasks;
export type TaskInput<Name extends TaskName> = Parameters<(typeof tasks)[Name]>[0];
export type TaskAnswer<Name extends TaskName> = ReturnType<(typeof tasks)[Name]>;

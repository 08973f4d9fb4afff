import type { PlanDocument, PlannedStage } from '#contract';

/** Plans of one run around something that counts as never happened. */
export interface PlansAround {
  /** The plan just before it. */
  readonly before: PlanDocument;
  /** The plan that it made. */
  readonly after: PlanDocument;
  /** The plan there is now. */
  readonly latest: PlanDocument;
}

/**
 * The plan to hold on to once something counts as never happened: what it moved is back where it was, what was moved
 * since for another reason stays. Only good as `previous` of a plan: where stages are open, and how they can lie now,
 * is for that one to say.
 */
export function planWithoutMoves({ before, after, latest }: PlansAround): PlanDocument {
  const runs = latest.runs.map((run) => {
    const [old, made] = [before, after].map((plan) => plan.runs.find((each) => each.run === run.run)?.stages);
    const back = (old ?? []).filter((stage) => {
      const now = planned(run.stages, stage);
      return (
        stage.status === 'planned' &&
        (now === undefined || now.startAt === planned(made ?? [], stage)?.startAt)
      );
    });
    const kept = run.stages.filter((stage) => !back.some((each) => isSame(each, stage)));
    return { ...run, stages: [...kept, ...back] };
  });
  return { ...latest, runs };
}

function planned(stages: readonly PlannedStage[], like: PlannedStage): PlannedStage | undefined {
  return stages.find((stage) => stage.status === 'planned' && isSame(stage, like));
}

function isSame(a: PlannedStage, b: PlannedStage): boolean {
  return a.key === b.key && a.attempt === b.attempt;
}

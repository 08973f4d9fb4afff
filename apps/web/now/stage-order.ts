import type { PieceDesign, PlannedStage, RunPlan } from '#contract';
import { stagesBefore, startingStage } from '#runs';

/** Whether a stage of that key is done, or logged as done. */
type IsLogged = (key: string) => boolean;

/** The design with the waits that its plan added to it. */
export function withAdded(design: PieceDesign | undefined, { added = [] }: RunPlan): PieceDesign | undefined {
  if (design === undefined) return undefined;
  const waits = added.flatMap((each) => ('after' in each ? [] : [each]));
  return { ...design, waits: [...design.waits, ...waits] };
}

/**
 * Whether it makes sense to say that the soap is not firm enough for a stage: it waits for a state of a part, and
 * that part has been made.
 */
export function waitsForSoap(
  design: PieceDesign | undefined,
  stages: readonly PlannedStage[],
  key: string,
  isLogged: IsLogged,
): boolean {
  // Without its design only the plan tells: a window that is surely open later than likely waits for something.
  if (design === undefined) {
    const stage = stages.find((each) => each.key === key && each.status === 'planned');
    return stage !== undefined && stage.surelyOpenAt !== stage.opensAt;
  }
  return design.waits.some(({ stage, part, opens }) => {
    if (stage !== key || opens === undefined) return false;
    const from = startingStage(design, part, opens)?.key;
    return from !== undefined && (latest(stages, from)?.status === 'done' || isLogged(from));
  });
}

/** Titles of the stages that come before another, by link or because they make its part, and are not done. */
export function openBefore(
  design: PieceDesign | undefined,
  stages: readonly PlannedStage[],
  key: string,
  isLogged: IsLogged,
): string[] {
  if (design === undefined) return [];
  return [...stagesBefore(design, key)].flatMap((from) => {
    const stage = latest(stages, from);
    return stage?.status === 'planned' && !isLogged(from) ? [stage.title] : [];
  });
}

function latest(stages: readonly PlannedStage[], key: string): PlannedStage | undefined {
  return stages
    .filter((stage) => stage.key === key)
    .reduce<PlannedStage | undefined>(
      (last, stage) => (last === undefined || stage.attempt > last.attempt ? stage : last),
      undefined,
    );
}

import { newId, type Session } from '../session.js';
import type { PlanRevision, PlanToSave, SavedPlan } from './plan-to-save.js';
import { holdRun } from './hold-run.js';
import { reconcileNudges, stageOf, toldToQueue } from './reconcile-nudges.js';
import { writePlan } from './write-plan.js';

/**
 * Writes everything that a new revision brings: in one statement, after one that locks the run unless it is held already. Must run in a transaction.
 * @returns null without such a run
 */
export async function savePlan(
  session: Session,
  workshopId: string,
  plan: PlanToSave,
): Promise<SavedPlan | null> {
  const { runId, document, along = {} } = plan;
  const held = plan.held ?? (await holdRun(session, workshopId, runId, { logs: along.entry !== undefined }));
  if (held === null) return null;
  const { key, version, number, sequence, nudges } = held;
  if (along.state !== undefined && along.state.version !== version) {
    throw new RangeError(`The run "${key}" is at version ${String(version)} by now.`);
  }
  const planned = document.value.runs.find(({ run }) => run === key);
  if (planned === undefined) throw new RangeError(`The plan says nothing about the run "${key}".`);

  const open = planned.stages.filter(({ status }) => status === 'planned');
  const openStages = new Set(open.map(({ key: stageKey, attempt }) => stageOf({ stageKey, attempt })));
  const now = session.now();
  const changes = reconcileNudges(nudges, plan.nudges, openStages, { now, newId: () => newId(session) });
  const revision: PlanRevision = {
    ...{ id: newId(session), workshopId, runId, number: number + 1 },
    ...{ madeAt: plan.madeAt, cause: plan.cause, status: document.value.status },
    ...{ document: document.value, changes: plan.changes },
  };
  const logged =
    along.entry === undefined
      ? null
      : {
          ...{ id: along.entry.id, workshopId, runId, sequence: Number(sequence) },
          ...{ at: new Date(along.entry.entry.at), loggedAt: now, entry: along.entry.entry },
        };
  await writePlan(session, { revision, text: document.text, nudges: changes, logged, along });
  return { ...toldToQueue(changes), revision, logged };
}

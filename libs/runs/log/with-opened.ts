import type { LogEntry, PlanDocument } from '#contract';

/**
 * An entry with from when on the plan asked for its stage, as that tells a look that came late from soap that did. Whoever wrote the
 * entry need not know; what they say of it is not taken.
 * @param plan the one in force as the entry was written
 */
export function withOpened(entry: LogEntry, run: string, plan: PlanDocument): LogEntry {
  if (entry.kind !== 'done' && entry.kind !== 'not-yet') return entry;
  const { opened: _, ...rest } = entry;
  const stage = plan.runs
    .find((each) => each.run === run)
    ?.stages.findLast(({ key, status }) => key === entry.stage && status === 'planned');
  return stage === undefined ? rest : { ...rest, opened: stage.opensAt };
}

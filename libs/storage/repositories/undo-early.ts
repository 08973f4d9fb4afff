import type { Session } from '../session.js';

/** Clocks of several machines differ by less; what was delivered this far ahead of now was so by a clock that was wrong. */
const TOLERANCE_MS = 10 * 60_000;
/** A machine whose clock stays ahead would deliver the same nudge again and again. */
const MOST_TIMES = 2;

/** Instants after this one lie further ahead than clocks may differ. */
export function surelyAhead(now: Date): Date {
  return new Date(now.getTime() + TOLERANCE_MS);
}

/**
 * Makes nudges wait again that were delivered, by the clock of that time, well after now: a clock was ahead and has
 * come back, so they were told too early. Those of a stage that is still open in the run's latest plan come again when
 * they are due, or at once where that has passed meanwhile. What a plan made since wants anew is left to that plan.
 * @returns how many
 */
export async function undoEarly({ db }: Session, now: Date): Promise<number> {
  const ahead = surelyAhead(now);
  return db.$executeRaw`
    UPDATE nudge SET status = 'waiting', delivered_at = NULL, inbox_sequence = NULL,
      version = nudge.version + 1, early_deliveries = early_deliveries + 1
    FROM run, plan_revision plan
    WHERE nudge.status = 'delivered' AND nudge.delivered_at > ${ahead} AND early_deliveries < ${MOST_TIMES}
      AND run.workshop_id = nudge.workshop_id AND run.id = nudge.run_id AND run.state IN ('planned', 'making')
      AND plan.workshop_id = run.workshop_id AND plan.run_id = run.id
      AND plan.number = (SELECT max(number) FROM plan_revision
                         WHERE workshop_id = run.workshop_id AND run_id = run.id)
      AND (plan.id = nudge.revision_id OR plan.made_at > ${ahead})
      AND jsonb_path_exists(plan.document,
        '$.runs[*] ? (@.run == $run).stages[*] ? (@.key == $key && @.attempt == $attempt && @.status == "planned")',
        jsonb_build_object('run', run.key, 'key', nudge.stage_key, 'attempt', nudge.attempt))
      AND NOT EXISTS (SELECT 1 FROM nudge other
        WHERE other.workshop_id = nudge.workshop_id AND other.run_id = nudge.run_id AND other.id <> nudge.id
          AND other.stage_key = nudge.stage_key AND other.attempt = nudge.attempt AND other.kind = nudge.kind
          AND (other.status = 'waiting' OR other.inbox_sequence > nudge.inbox_sequence))`;
}

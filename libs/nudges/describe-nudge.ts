import type { NudgeKind, NudgeMessage } from '#contract';

/** What a nudge is about, as it is stored. */
export interface NudgeFacts {
  readonly kind: NudgeKind;
  /** Title of the stage. */
  readonly title: string;
  /** When the stage begins by the plan; null: not known. */
  readonly startAt: Date | null;
  /** null: nothing closes the window, or it is not known. */
  readonly lastCallAt: Date | null;
  readonly dueAt: Date;
}

/** A nudge takes this long from its alarm to the maker without being late. */
const PUNCTUAL_MS = 5 * 60_000;

/**
 * What a nudge says at a moment. “Now” is said only while it is now: before the start of the stage it gives the time, as
 * soap would be unmoulded on its word the evening before; and one that comes late, after an outage, says when it was due.
 */
export function describeNudge(nudge: NudgeFacts, at: Date): NudgeMessage {
  const { kind, title: stage, dueAt } = nudge;
  const isPast = (time: Date): boolean => at.getTime() > time.getTime() + PUNCTUAL_MS;
  const lastCallAt = nudge.lastCallAt?.toISOString() ?? null;
  const saidAt = at.toISOString();
  if (nudge.lastCallAt !== null && lastCallAt !== null && isPast(nudge.lastCallAt))
    return { code: 'nudge.last-call-over', stage, lastCallAt, saidAt };
  if (kind === 'last-call') return { code: 'nudge.last-call', stage, lastCallAt, saidAt };
  // Of a start that is not known only the alarm for it tells.
  const start = nudge.startAt ?? (kind === 'time-for-it' ? dueAt : null);
  const startAt = start?.toISOString() ?? null;
  if (start !== null && startAt !== null && isPast(start))
    return { code: 'nudge.was-planned', stage, startAt, lastCallAt, saidAt };
  if (kind === 'window-opens') return { code: 'nudge.window-opens', stage, startAt, lastCallAt, saidAt };
  return startAt !== null && at.toISOString() < startAt
    ? { code: 'nudge.planned', stage, startAt, lastCallAt, saidAt }
    : { code: 'nudge.now', stage, lastCallAt, saidAt };
}

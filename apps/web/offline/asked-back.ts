import type { LogEntry } from '#contract';

const QUESTIONS: ReadonlySet<string> = new Set([
  'log.time-doubtful',
  'log.weigh-in-doubtful',
  'log.weighing-implausible',
]);

/** Whether the API asks back rather than refuses: what was told is hard to believe, and is taken once it is confirmed. */
export function isAskedBack(issues: readonly { readonly code: string }[] = []): boolean {
  return issues.length > 0 && issues.every(({ code }) => QUESTIONS.has(code));
}

/** The entry once it was asked back and said again; one that cannot be asked about as it is. */
export function confirmedEntry(entry: LogEntry): LogEntry {
  switch (entry.kind) {
    case 'mishap':
    case 'forget':
    case 'take-back':
    case 'note':
      return entry;
    default:
      return { ...entry, confirmed: true };
  }
}

import type { LogEntry } from '#contract';
import type { Issue, Minute } from '#units';
import type { LogLine } from '../input/input.js';

/** A line that stands, with what it is called and its place in the log. */
export interface EffectiveLine {
  readonly ref: string;
  readonly entry: LogEntry;
  readonly place: number;
}

/** Where an entry stands in a log, and when what it tells of happened. */
export interface LogPlace {
  readonly at: Minute;
  readonly ref: string;
  readonly place: number;
}

/**
 * The lines of a run's log that stand. The log only grows, so a slip stays in it; an entry that takes it back makes
 * it count as never written. Those that take back, and those taken back, are left out.
 * @returns the lines, and issues for entries that take back or forget what is not there; paths from the log's root
 */
export function effectiveLog(lines: readonly LogLine[]): {
  readonly effective: EffectiveLine[];
  readonly issues: Issue[];
} {
  const issues: Issue[] = [];
  const effective: EffectiveLine[] = [];
  lines.forEach(({ id, entry }, place) => {
    const ref = id ?? `#${String(place + 1)}`;
    if (entry.kind !== 'take-back' && entry.kind !== 'forget') {
      effective.push({ ref, entry, place });
      return;
    }
    const meant = effective.findIndex((line) => line.ref === entry.entry);
    if (meant < 0) issues.push(unknownEntry(entry.entry, effective, place));
    else if (entry.kind === 'take-back') effective.splice(meant, 1);
    else effective.push({ ref, entry, place });
  });
  return { effective, issues };
}

function unknownEntry(meant: string, effective: readonly EffectiveLine[], place: number): Issue {
  const known = effective.slice(-3).map(({ ref }) => ref);
  return { code: 'log.unknown-entry', path: [place, 'entry'], value: meant, known };
}

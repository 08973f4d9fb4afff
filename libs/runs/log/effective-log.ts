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
 * it count as never written. Those that take back, those taken back, and notes that were corrected are left out.
 * @returns the lines, and issues for entries that take back, forget, or note something of what is not there; paths from the log's root
 */
export function effectiveLog(lines: readonly LogLine[]): {
  readonly effective: EffectiveLine[];
  readonly issues: Issue[];
} {
  const issues: Issue[] = [];
  const effective: EffectiveLine[] = [];
  lines.forEach(({ id, entry }, place) => {
    const ref = id ?? `#${String(place + 1)}`;
    if (entry.kind === 'note') {
      issues.push(...addNote(effective, { ref, entry, place }));
      return;
    }
    if (entry.kind !== 'take-back' && entry.kind !== 'forget') {
      effective.push({ ref, entry, place });
      return;
    }
    const meant = effective.findIndex((line) => line.ref === entry.entry);
    if (meant < 0) issues.push(unknownEntry(entry.entry, effective, [place, 'entry']));
    else if (entry.kind === 'take-back') effective.splice(meant, 1);
    else effective.push({ ref, entry, place });
  });
  return { effective, issues };
}

/** Adds a note, in place of the one that it corrects; one about or for something that is not there is left out. */
function addNote(
  effective: EffectiveLine[],
  line: EffectiveLine & { readonly entry: Extract<LogEntry, { kind: 'note' }> },
): Issue[] {
  const { entry, place } = line;
  const { about, corrects } = entry;
  if (about !== undefined && !effective.some(({ ref }) => ref === about))
    return [unknownEntry(about, effective, [place, 'about'])];
  if (corrects !== undefined) {
    const notes = effective.filter((each) => each.entry.kind === 'note');
    const meant = notes.find(({ ref }) => ref === corrects);
    if (meant === undefined) return [unknownEntry(corrects, notes, [place, 'corrects'])];
    effective.splice(effective.indexOf(meant), 1);
  }
  effective.push(line);
  return [];
}

function unknownEntry(meant: string, known: readonly EffectiveLine[], path: Issue['path']): Issue {
  return {
    code: 'log.unknown-entry',
    path,
    value: meant,
    known: known.slice(-3).map(({ ref }) => ref),
  };
}

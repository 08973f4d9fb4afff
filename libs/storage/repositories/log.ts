import type { LogEntry } from '#contract';
import type { BenchLog as Row } from '../generated/client.js';
import { fromJson, newId, toJson, type Session } from '../session.js';

export interface LoggedEntry {
  readonly id: string;
  readonly workshopId: string;
  readonly runId: string;
  /** Order of logging; rises, with gaps. */
  readonly sequence: number;
  /** When it happened. */
  readonly at: Date;
  /** When it was written down. */
  readonly loggedAt: Date;
  readonly entry: LogEntry;
}

/** The bench log. It can only grow; the database refuses anything else. */
export interface Log {
  /** An id for an entry that is to be appended: for those who must name it before. */
  nextId(): string;
  /** @param id one of `nextId`; a new one if not given */
  append(workshopId: string, runId: string, entry: LogEntry, id?: string): Promise<LoggedEntry>;
  /** In the order of logging; of one run, or of all. */
  list(workshopId: string, filter?: { runId?: string }): Promise<LoggedEntry[]>;
}

export function log(session: Session): Log {
  const { db } = session;
  return {
    nextId: () => newId(session),
    async append(workshopId, runId, entry, id = newId(session)) {
      const data = {
        id,
        workshopId,
        runId,
        at: new Date(entry.at),
        loggedAt: session.now(),
        entry: toJson(entry),
      };
      return read(await db.benchLog.create({ data }));
    },
    async list(workshopId, filter = {}) {
      const where = { workshopId, ...(filter.runId !== undefined && { runId: filter.runId }) };
      return (await db.benchLog.findMany({ where, orderBy: { sequence: 'asc' } })).map(read);
    },
  };
}

function read(row: Row): LoggedEntry {
  return { ...row, sequence: Number(row.sequence), entry: fromJson<LogEntry>(row.entry) };
}

import { readFileSync } from 'node:fs';
import { join } from 'node:path';

/** What a PostgreSQL server says of itself in its data folder. */
export interface Postmaster {
  readonly pid: number;
  readonly port: number;
  /** It takes connections. */
  readonly ready: boolean;
}

/**
 * Reads postmaster.pid: line 1 is the process id, line 4 the port, line 8 the state
 * (PostgreSQL, src/include/utils/pidfile.h).
 * @returns null when there is none, or it is not yet written
 */
export function readPostmaster(dataFolder: string): Postmaster | null {
  let lines: string[];
  try {
    lines = readFileSync(join(dataFolder, 'postmaster.pid'), 'utf8').split('\n');
  } catch {
    return null;
  }
  const pid = Number(lines[0]);
  if (!Number.isSafeInteger(pid) || pid <= 0) return null;
  return { pid, port: Number(lines[3] ?? 0), ready: lines[7]?.trim() === 'ready' };
}

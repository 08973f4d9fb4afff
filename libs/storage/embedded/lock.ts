import { linkSync, readFileSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { HomeInUseError } from './errors.js';
import { startOfProcess } from './process-identity.js';

interface Holder {
  readonly pid: number;
  readonly start: string;
}

/** A takeover lasts microseconds; one this old belongs to a process that was killed in the middle. */
const ABANDONED_TAKEOVER_MS = 10_000;

/**
 * Makes this process the only one that uses the folder.
 * @returns a function that gives it up
 * @throws HomeInUseError when a living process holds it
 */
export async function lockHome(home: string): Promise<() => void> {
  const path = join(home, 'lock');
  const own = JSON.stringify({ pid: process.pid, start: startOfProcess(process.pid) });
  const draft = `${path}.${process.pid}`;
  writeFileSync(draft, own, { mode: 0o644 });
  try {
    while (!placeNew(draft, path)) {
      const found = readLock(path);
      if (found !== null && isAlive(found.holder)) throw new HomeInUseError(home, found.holder.pid);
      if (found !== null && takeOver(draft, path, found.text)) break;
      await pause(20);
    }
  } finally {
    rmSync(draft, { force: true });
  }
  return () => {
    if (readLock(path)?.text === own) rmSync(path, { force: true });
  };
}

/** A hard link appears whole or not at all, so nobody ever reads half a lock. */
function placeNew(draft: string, path: string): boolean {
  try {
    linkSync(draft, path);
    return true;
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'EEXIST') return false;
    throw error;
  }
}

/** Only one of several that saw the same dead holder may replace it; the others look again. */
function takeOver(draft: string, path: string, seen: string): boolean {
  const guard = `${path}.takeover`;
  try {
    writeFileSync(guard, '', { flag: 'wx' });
  } catch {
    if (ageMs(guard) > ABANDONED_TAKEOVER_MS) rmSync(guard, { force: true });
    return false;
  }
  try {
    if (readLock(path)?.text !== seen) return false;
    renameSync(draft, path);
    return true;
  } finally {
    rmSync(guard, { force: true });
  }
}

function ageMs(path: string): number {
  try {
    return Date.now() - statSync(path).mtimeMs;
  } catch {
    return 0;
  }
}

function isAlive(holder: Holder): boolean {
  return startOfProcess(holder.pid) === holder.start;
}

/** A lock that cannot be understood counts as held by nobody: half-written ones do not occur. */
function readLock(path: string): { text: string; holder: Holder } | null {
  let text: string;
  try {
    text = readFileSync(path, 'utf8');
  } catch {
    return null;
  }
  try {
    const { pid, start } = JSON.parse(text) as Partial<Holder>;
    if (typeof pid === 'number' && typeof start === 'string') return { text, holder: { pid, start } };
  } catch {
    // falls through to the dead holder
  }
  return { text, holder: { pid: 0, start: '' } };
}

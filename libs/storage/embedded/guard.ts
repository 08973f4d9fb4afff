import { setTimeout as pause } from 'node:timers/promises';
import { startOfProcess } from './process-identity.js';
import type { Postmaster } from './postmaster-file.js';

/** Pauses before the tries to start a server anew, in milliseconds. After the last the server is given up. */
const PAUSES_MS = [200, 1_000, 3_000, 10_000, 20_000];
/** One that ends this soon after its start did not really run: the tries go on being counted. */
const STEADY_MS = 10 * 60_000;
const LOOK_MS = 500;

export interface Guarded {
  /** Whether it runs, or ended and is being started anew. */
  state(): 'running' | 'restarting';
  /** Ends the watch, waits for a start under way, and tells which server there is to be stopped, if any. */
  release(): Promise<Postmaster | null>;
}

export interface GuardOptions {
  /** Starts the server anew, where the old one was reached. */
  readonly restart: (old: Postmaster) => Promise<Postmaster>;
  readonly log: (line: string) => void;
  /** It ended and could not be started anew; called once. */
  readonly onGivenUp: (reason: Error) => void;
  readonly pausesMs?: readonly number[];
}

/**
 * Watches a server and starts it anew when it ends by itself, for example because the system ran out of memory and
 * killed it. Tries have pauses that grow, and an end.
 */
export function guardServer(first: Postmaster, options: GuardOptions): Guarded {
  const { restart, log, onGivenUp, pausesMs = PAUSES_MS } = options;
  const released = new AbortController();
  let server = first;
  let state: 'running' | 'restarting' = 'running';
  let startedAt = performance.now();
  let tries = 0;

  async function watch(): Promise<void> {
    let born = startOfProcess(server.pid);
    while (!released.signal.aborted) {
      await sleep(LOOK_MS);
      if (released.signal.aborted || lives(server.pid, born)) continue;
      state = 'restarting';
      if (performance.now() - startedAt > STEADY_MS) tries = 0;
      if (!(await startAnew())) return;
      born = startOfProcess(server.pid);
    }
  }
  /** @returns false when there is no server any more, or none is wanted */
  async function startAnew(): Promise<boolean> {
    let reason: unknown = 'it ends again and again';
    for (; tries < pausesMs.length; tries += 1) {
      log(`The database (process ${String(server.pid)}) ended by itself; starting it again`);
      await sleep(pausesMs[tries] ?? 0);
      if (released.signal.aborted) return false;
      try {
        server = await restart(server);
        tries += 1;
        startedAt = performance.now();
        state = 'running';
        log('The database runs again');
        return true;
      } catch (error) {
        reason = error;
      }
    }
    onGivenUp(
      reason instanceof Error ? reason : new Error(`The database cannot be kept running: ${String(reason)}.`),
    );
    return false;
  }
  function sleep(ms: number): Promise<void> {
    return pause(ms, undefined, { signal: released.signal, ref: false }).catch(() => undefined);
  }

  const watching = watch();
  return {
    state: () => state,
    async release() {
      released.abort();
      await watching;
      return state === 'running' ? server : null;
    },
  };
}

/** Asking for the start of a process is costly where it takes a program to do so. */
function lives(pid: number, born: string | null): boolean {
  if (process.platform === 'linux') return born !== null && startOfProcess(pid) === born;
  try {
    return process.kill(pid, 0);
  } catch (error) {
    // The process of another user may not be signalled, but it is there.
    return (error as NodeJS.ErrnoException).code === 'EPERM';
  }
}

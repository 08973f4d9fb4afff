import { setTimeout as pause } from 'node:timers/promises';
import { startOfProcess } from './process-identity.js';

/** Signals of PostgreSQL, from polite to rough, and how long each gets (its manual, "Shutting Down the Server"). */
const STEPS = [
  ['SIGTERM', 2_000],
  ['SIGINT', 20_000],
  ['SIGQUIT', 10_000],
] as const satisfies readonly (readonly [NodeJS.Signals, number])[];

/**
 * Stops a database process and waits until it is gone. First it may finish with its sessions, because ending
 * them at once makes clients report errors that mean nothing.
 */
export async function stopServer(pid: number): Promise<void> {
  const start = startOfProcess(pid);
  if (start === null) return;
  const lives = (): boolean => startOfProcess(pid) === start;
  for (const [signal, patienceMs] of STEPS) {
    try {
      process.kill(pid, signal);
    } catch {
      return;
    }
    if (await becomesFalse(lives, patienceMs)) return;
  }
  throw new Error(`The database process ${pid} does not stop.`);
}

/** Looks every 20 ms. @returns whether the condition ended within the time */
export async function becomesFalse(condition: () => boolean, withinMs: number): Promise<boolean> {
  for (let waited = 0; condition(); waited += 20) {
    if (waited >= withinMs) return false;
    await pause(20);
  }
  return true;
}

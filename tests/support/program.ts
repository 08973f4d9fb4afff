import { spawn, type ChildProcess } from 'node:child_process';
import { chmodSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';

// Tests and benches are run from the project folder; compiled benches do not lie where their sources do.
const START = resolve('apps/launch/start.mjs');
const LONGEST_START_MS = 60_000;
const LAST_LINE = 'Stop with Ctrl-C.';

/** The program as a newcomer starts it, in a process of its own. */
export interface RunningProgram {
  readonly url: string;
  readonly child: ChildProcess;
  /** Everything it has printed so far. */
  readonly printed: () => string;
  /** Resolves with its exit status, or the signal that ended it. */
  readonly ended: Promise<number | NodeJS.Signals | null>;
}

/** A data folder of one's own. Started by root, the database runs as another user, who must be able to pass through. */
export function newHome(): string {
  const home = mkdtempSync(join(tmpdir(), 'benchtide-program-'));
  chmodSync(home, 0o711);
  return home;
}

export function removeHome(home: string): void {
  rmSync(home, { recursive: true, force: true });
}

/** Starts it without waiting for anything. */
export function launch(home: string, port: number): RunningProgram {
  const { DATABASE_URL: _database, REDIS_URL: _redis, ...environment } = process.env;
  const child = spawn(process.execPath, [START], {
    env: { ...environment, BENCHTIDE_HOME: home, PORT: String(port) },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  let text = '';
  for (const stream of [child.stdout, child.stderr])
    stream.on('data', (chunk: Buffer) => (text += String(chunk)));
  const ended = new Promise<number | NodeJS.Signals | null>((resolve) => {
    child.once('close', (status, signal) => resolve(status ?? signal));
  });
  return { url: `http://127.0.0.1:${String(port)}`, child, printed: () => text, ended };
}

/** Starts it and waits until it is healthy and has said all it says at a start, which comes by a pipe of its own. */
export async function startProgram(home: string, port: number): Promise<RunningProgram> {
  const program = launch(home, port);
  const deadline = performance.now() + LONGEST_START_MS;
  while (performance.now() < deadline && program.child.exitCode === null) {
    const answer = await fetch(`${program.url}/api/health`).catch(() => undefined);
    if (answer?.status === 200 && program.printed().includes(LAST_LINE)) return program;
    await pause(100);
  }
  program.child.kill('SIGKILL');
  throw new Error(`It did not become healthy:\n${program.printed()}`);
}

export function accessKey(home: string): string {
  return readFileSync(join(home, 'access-key'), 'utf8').trim();
}

import { spawn, type ChildProcess } from 'node:child_process';
import { randomUUID } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { startEmbeddedPostgres } from '#storage';
import { freePort } from '../../support/free-port.js';
import { accessKey, newHome, removeHome } from '../../support/program.js';
import { cpuMs } from './cpu-time.js';

const LONGEST_START_MS = 60_000;

export interface Answer {
  readonly status: number;
  readonly text: string;
  readonly ms: number;
}

/** The program over a database of its own, with the demo workshop in it. */
export interface WorkshopProgram {
  readonly url: string;
  readonly databaseUrl: string;
  readonly child: ChildProcess;
  call(method: string, path: string, body?: unknown): Promise<Answer>;
  /** Everything it has printed so far. */
  printed(): string;
  /** Processor time of the program and its database so far. */
  cpuMs(): number;
  close(): Promise<void>;
}

/** @param folder of the project whose build is to run; another than this one to compare with */
export async function openWorkshopProgram(folder: string): Promise<WorkshopProgram> {
  const home = newHome();
  const postgres = await startEmbeddedPostgres({ home, log: () => undefined });
  const databasePid = Number(
    readFileSync(join(postgres.dataFolder, 'postmaster.pid'), 'utf8').split('\n')[0],
  );
  const port = await freePort();
  const url = `http://127.0.0.1:${String(port)}`;
  const child = spawn(process.execPath, [resolve(folder, 'apps/launch/start.mjs')], {
    cwd: folder,
    env: {
      ...process.env,
      BENCHTIDE_HOME: home,
      DATABASE_URL: postgres.databaseUrl,
      REDIS_URL: '',
      BENCHTIDE_LOG: 'debug',
      PORT: String(port),
    },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  let printed = '';
  for (const stream of [child.stdout, child.stderr])
    stream.on('data', (chunk: Buffer) => (printed += String(chunk)));
  const ended = new Promise<void>((done) => child.once('close', () => done()));
  const close = async (): Promise<void> => {
    if (child.exitCode === null && child.signalCode === null) child.kill('SIGKILL');
    await ended;
    await postgres.stop();
    removeHome(home);
  };
  try {
    await untilHealthy(url, child);
  } catch {
    await close();
    throw new Error(`It did not become healthy:\n${printed}`);
  }
  const key = accessKey(home);
  return {
    ...{ url, databaseUrl: postgres.databaseUrl, child, close },
    printed: () => printed,
    cpuMs: () => cpuMs(child.pid ?? 0) + cpuMs(databasePid),
    async call(method, path, body) {
      const begun = performance.now();
      const response = await fetch(`${url}/api/${path}`, {
        method,
        headers: {
          authorization: `Bearer ${key}`,
          ...(body !== undefined && { 'content-type': 'application/json' }),
          // As a browser sends it; where it counts for nothing it is not looked at.
          ...(method === 'POST' && { 'idempotency-key': randomUUID() }),
        },
        ...(body !== undefined && { body: JSON.stringify(body) }),
      });
      const text = await response.text();
      return { status: response.status, text, ms: performance.now() - begun };
    },
  };
}

async function untilHealthy(url: string, child: ChildProcess): Promise<void> {
  const deadline = performance.now() + LONGEST_START_MS;
  while (performance.now() < deadline && child.exitCode === null) {
    const answer = await fetch(`${url}/api/health`).catch(() => undefined);
    if (answer?.status === 200) return;
    await pause(100);
  }
  throw new Error('not healthy');
}

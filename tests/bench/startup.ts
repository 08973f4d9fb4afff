import { spawn, type ChildProcess } from 'node:child_process';
import { chmod, mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { type Figure, median } from '../support/figure.js';
import { freePort } from '../support/free-port.js';

const PLAN_RUNS = 5;
const POLL_MS = 20;
const GIVE_UP_MS = 60_000;

/** How long a person waits: for a plan on the command line, and for the program when it is started again. */
export async function figures(): Promise<Figure[]> {
  return [
    {
      ...{ name: 'npm run plan -- rockpool-tiles --json', value: await planSeconds(), unit: 's' },
      ...{ bar: 2, better: 'lower' },
    },
    {
      ...{ name: 'npm start, second time, until healthy', value: await secondStartSeconds(), unit: 's' },
      ...{ bar: 5, better: 'lower' },
    },
  ];
}

/** Median of five, from the shell's point of view: npm is part of the wait. */
async function planSeconds(): Promise<number> {
  const seconds: number[] = [];
  for (let run = 0; run < PLAN_RUNS; run += 1) {
    const started = performance.now();
    const { code, said } = await ended(npm(['run', 'plan', '--', 'rockpool-tiles', '--json']));
    if (code !== 0) throw new Error(`npm run plan ended with ${String(code)}: ${said}`);
    seconds.push((performance.now() - started) / 1000);
  }
  return median(seconds);
}

/** The first start in an empty folder makes the database and is not measured. */
async function secondStartSeconds(): Promise<number> {
  const home = await mkdtemp(join(tmpdir(), 'benchtide-bench-'));
  // As root the database runs as another user, who must be able to reach its folder.
  await chmod(home, 0o711);
  try {
    await secondsToHealthy(home);
    return await secondsToHealthy(home);
  } finally {
    await rm(home, { recursive: true, force: true });
  }
}

async function secondsToHealthy(home: string): Promise<number> {
  const port = await freePort();
  const started = performance.now();
  const child = npm(['start'], { PORT: String(port), BENCHTIDE_HOME: home, DATABASE_URL: '', REDIS_URL: '' });
  const end = ended(child);
  try {
    while (!(await isHealthy(port))) {
      if (child.exitCode !== null) throw new Error(`npm start ended: ${(await end).said}`);
      if (performance.now() - started > GIVE_UP_MS) throw new Error('npm start did not become healthy');
      await sleep(POLL_MS);
    }
    return (performance.now() - started) / 1000;
  } finally {
    child.kill('SIGTERM');
    await end;
  }
}

async function isHealthy(port: number): Promise<boolean> {
  try {
    return (await fetch(`http://127.0.0.1:${port}/api/health`)).ok;
  } catch {
    return false;
  }
}

function npm(args: readonly string[], environment: Record<string, string> = {}): ChildProcess {
  return spawn('npm', args, { env: { ...process.env, ...environment }, stdio: ['ignore', 'pipe', 'pipe'] });
}

function ended(child: ChildProcess): Promise<{ code: number | null; said: string }> {
  let said = '';
  child.stdout?.on('data', (chunk: Buffer) => (said += chunk.toString()));
  child.stderr?.on('data', (chunk: Buffer) => (said += chunk.toString()));
  return new Promise((resolve, reject) => {
    child.once('error', reject);
    child.once('close', (code) => resolve({ code, said }));
  });
}

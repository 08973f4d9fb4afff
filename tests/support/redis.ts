import { spawn, type ChildProcess } from 'node:child_process';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { freePort } from './free-port.js';
import { isRequired } from './required.js';

const START_MS = 10_000;

export interface RunningRedis {
  readonly url: string;
  stop(): Promise<void>;
}

/**
 * A Redis of our own for a test: empty, on a free port, keeping nothing, and like a real one for queues it
 * refuses writes rather than drop keys when memory is full. With TEST_REDIS_URL that server is used instead.
 * @returns null, and a printed warning, where there is no redis-server; tests that need it are then skipped
 * @throws when there is none although BENCHTIDE_REQUIRE asks for `redis`, or when it does not start
 */
export async function startRedis(): Promise<RunningRedis | null> {
  const given = process.env['TEST_REDIS_URL'];
  if (given !== undefined && given !== '') return { url: given, stop: async () => undefined };
  const folder = await mkdtemp(join(tmpdir(), 'benchtide-redis-'));
  const port = await freePort();
  const server = spawn(
    'redis-server',
    [
      ...['--port', String(port), '--bind', '127.0.0.1', '--dir', folder],
      ...['--save', '', '--appendonly', 'no', '--maxmemory-policy', 'noeviction'],
    ],
    { stdio: ['ignore', 'pipe', 'pipe'] },
  );
  // A test process that is killed by its runner gets no chance to stop it in order.
  const kill = (): unknown => server.kill('SIGKILL');
  process.once('exit', kill);
  const gone = new Promise<void>((resolve) => {
    server.once('error', () => resolve());
    server.once('exit', () => resolve());
  });
  const cleanUp = async (): Promise<void> => {
    process.off('exit', kill);
    server.kill('SIGTERM');
    await gone;
    await rm(folder, { recursive: true, force: true });
  };
  const outcome = await started(server);
  if (outcome === 'ready') return { url: `redis://127.0.0.1:${port}`, stop: cleanUp };
  await cleanUp();
  if (outcome !== 'missing') throw new Error(`redis-server did not start: ${outcome}`);
  if (isRequired('redis')) throw new Error('BENCHTIDE_REQUIRE asks for redis, but there is no redis-server.');
  console.warn('There is no redis-server on this machine; what needs one is skipped.');
  return null;
}

/** @returns `ready`, `missing` when there is no such program, or what it said instead of starting */
function started(server: ChildProcess): Promise<'ready' | 'missing' | (string & {})> {
  return new Promise((resolve) => {
    let said = '';
    const late = setTimeout(() => resolve(`not ready after ${START_MS} ms: ${said}`), START_MS);
    const settle = (outcome: string): void => {
      clearTimeout(late);
      resolve(outcome);
    };
    const listen = (chunk: Buffer): void => {
      said += chunk.toString();
      if (said.includes('Ready to accept connections')) settle('ready');
    };
    server.stdout?.on('data', listen);
    server.stderr?.on('data', listen);
    server.once('error', (error: NodeJS.ErrnoException) =>
      settle(error.code === 'ENOENT' ? 'missing' : error.message),
    );
    server.once('exit', () => settle(said));
  });
}

import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { describe, expect, it, onTestFinished } from 'vitest';
import { guardServer } from './guard.js';
import type { Postmaster } from './postmaster-file.js';

/** Any process will do for a server here. */
function begin(): { server: Postmaster; kill: () => Promise<unknown> } {
  const child = spawn('sleep', ['60'], { stdio: 'ignore' });
  onTestFinished(() => void child.kill());
  const ended = once(child, 'exit');
  const kill = async () => {
    child.kill('SIGKILL');
    return ended;
  };
  return { server: { pid: child.pid ?? 0, port: 1, ready: true }, kill };
}

describe('a server that ends by itself', () => {
  it('is started again as often as it ends, until it is given up with the reason', async () => {
    const first = begin();
    const next = [begin(), begin()];
    const started = [...next];
    const givenUp: string[] = [];
    const guarded = guardServer(first.server, {
      async restart({ port }) {
        const heir = started.shift();
        if (heir === undefined) throw new Error(`no start at port ${String(port)}`);
        return heir.server;
      },
      log: () => undefined,
      onGivenUp: ({ message }) => void givenUp.push(message),
      pausesMs: [1, 1, 1, 1],
    });
    for (const [i, each] of [first, ...next].entries()) {
      expect(guarded.state()).toBe('running');
      await each.kill();
      if (i < next.length) await expect.poll(() => started.length, { timeout: 5_000 }).toBe(1 - i);
      await expect.poll(() => guarded.state()).toBe(i < next.length ? 'running' : 'restarting');
    }
    await expect.poll(() => givenUp, { timeout: 5_000 }).toEqual(['no start at port 1']);
    expect(await guarded.release()).toBeNull();
  });

  it('is left alone once it is no longer watched', async () => {
    const { server, kill } = begin();
    let restarts = 0;
    const guarded = guardServer(server, {
      restart: async () => ((restarts += 1), server),
      log: () => undefined,
      onGivenUp: () => undefined,
      pausesMs: [1],
    });
    expect(await guarded.release()).toBe(server);
    await kill();
    await new Promise((resolve) => setTimeout(resolve, 700));
    expect(restarts).toBe(0);
  });
});

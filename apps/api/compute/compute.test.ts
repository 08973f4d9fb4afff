import { join } from 'node:path';
import { afterEach, describe, expect, it } from 'vitest';
import { openCompute, type Compute, type ComputeOptions } from './compute.js';
import type { TaskName } from './tasks.js';

const worker = join(import.meta.dirname, '../../../tests/support/odd-worker.mjs');
/** Long enough for a thread to start on a busy machine. */
const LONG = { planS: 120, searchS: 120 };
let opened: Compute | undefined;

function open(options: ComputeOptions = {}): Compute {
  opened = openCompute({ worker, threads: 2, ...LONG, ...options });
  return opened;
}
afterEach(() => opened?.close());

/** The odd worker takes inputs that no real task has. */
function run(name: TaskName, input: object, workshopId = 'a', leaving?: AbortSignal): Promise<unknown> {
  return opened!.run(name, input as never, { workshopId, leaving });
}
const forever = { forever: true };

describe('the pool', () => {
  it('answers from a thread, and hands on what goes wrong there', async () => {
    open();
    await expect(run('remedies', { n: 1 })).resolves.toEqual({ name: 'remedies', input: { n: 1 } });
    await expect(run('remedies', { fault: 'a bug' })).rejects.toThrow('a bug');
    await expect(run('remedies', { n: 2 })).resolves.toMatchObject({ input: { n: 2 } });
  });

  it('ends what takes longer than it may, says which limit it was, and goes on', async () => {
    open({ searchS: 0.2 });
    await expect(run('remedies', forever)).rejects.toMatchObject({
      ...{ status: 503, slug: 'took-too-long', retryAfterS: 60 },
      extra: { limit: { task: 'remedies', seconds: 0.2 } },
    });
    await opened?.close();
    open({ planS: 0.2 });
    await expect(run('replan', forever)).rejects.toMatchObject({ slug: 'took-too-long' });
    await expect(run('remedies', { n: 3 })).resolves.toMatchObject({ input: { n: 3 } });
  });

  it('lives on when a thread runs out of memory, and says so', async () => {
    open({ memoryMb: 24 });
    await expect(run('what-if', { fill: true })).rejects.toMatchObject({
      ...{ status: 503, slug: 'took-too-much-memory' },
      extra: { limit: { task: 'what-if', megabytes: 24 } },
    });
    await expect(run('what-if', { n: 1 })).resolves.toMatchObject({ input: { n: 1 } });
  });

  it('keeps a thread for what is urgent, however many searches are asked', async () => {
    open();
    const searches = Array.from({ length: 6 }, () => run('remedies', forever));
    for (const search of searches) search.catch(() => undefined);
    await expect(run('replan', { n: 1 })).resolves.toMatchObject({ input: { n: 1 } });
    await expect(run('amounts', { n: 2 }, 'b')).resolves.toMatchObject({ input: { n: 2 } });
    await opened?.close();
    for (const search of searches) await expect(search).rejects.toMatchObject({ slug: 'stopping' });
  });

  it('lets a preview wait for the searches that were asked after it', async () => {
    open();
    const done: string[] = [];
    const asked = (['remedies', 'plan-preview', 'remedies', 'latest-start'] as const).map((name, i) =>
      run(name, { n: i }).then(() => done.push(name)),
    );
    await Promise.all(asked);
    expect(done).toEqual(['remedies', 'remedies', 'latest-start', 'plan-preview']);
  });

  it('ends a task whose asker has left, running or waiting, and gives its thread to the next', async () => {
    open();
    const leaving = new AbortController();
    const running = run('remedies', forever, 'a', leaving.signal);
    const waiting = run('remedies', forever, 'a', leaving.signal);
    const next = run('remedies', { n: 1 });
    leaving.abort();
    await expect(running).rejects.toMatchObject({ status: 499 });
    await expect(waiting).rejects.toMatchObject({ status: 499 });
    await expect(next).resolves.toMatchObject({ input: { n: 1 } });
    await expect(run('remedies', { n: 2 }, 'a', leaving.signal)).rejects.toMatchObject({ status: 499 });
  });

  it('refuses what would wait behind too much, of one workshop or of all', async () => {
    open({ waitingOfOne: 1, waiting: 2 });
    const leaving = new AbortController();
    const kept = ['a', 'a', 'b'].map((workshop) => run('remedies', forever, workshop, leaving.signal));
    for (const each of kept) each.catch(() => undefined);
    await expect(run('remedies', { n: 1 }, 'a')).rejects.toMatchObject({ slug: 'busy', retryAfterS: 5 });
    await expect(run('remedies', { n: 1 }, 'c')).rejects.toMatchObject({ slug: 'busy' });
    leaving.abort();
    await Promise.allSettled(kept);
    await expect(run('remedies', { n: 1 }, 'c')).resolves.toMatchObject({ input: { n: 1 } });
  });

  it('refuses what comes after it was closed', async () => {
    await open().close();
    await expect(run('replan', {})).rejects.toMatchObject({ slug: 'stopping' });
  });
});

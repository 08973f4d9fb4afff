import { describe, expect, it } from 'vitest';
import type { Producer } from './backend.js';
import { untilIdle } from './idle.js';

/** What lies in the queue at one read: tries made by jobs that rest, and how many jobs run or could. */
type Read = { rest: number[] } | { run: Record<string, number> };

/** A queue that is read by a script, and is idle after it. @returns how many reads were made of it */
async function readsUntilIdle(script: readonly Read[]): Promise<number> {
  let reads = 0;
  const next = (): Read => script[reads++] ?? { rest: [], run: {} };
  const producer = {
    getDelayed: async () => {
      const read = next();
      return ('rest' in read ? read.rest : []).map((attemptsMade) => ({ attemptsMade }));
    },
    getJobCounts: async () => {
      const read = next();
      return 'run' in read ? read.run : {};
    },
  };
  await untilIdle(producer as unknown as Producer);
  return reads;
}

const nothing: Read[] = [{ rest: [] }, { run: { active: 0, waiting: 0, prioritized: 0 } }, { rest: [] }];

describe('waiting until a queue is idle', () => {
  it('takes three looks where it is', async () => {
    expect(await readsUntilIdle(nothing)).toBe(3);
  });

  it('does not wait for alarms that are set for later', async () => {
    expect(await readsUntilIdle([{ rest: [0, 0] }, { run: { waiting: 0 } }, { rest: [0] }])).toBe(3);
  });

  it.each<[string, Read[]]>([
    ['runs', [{ rest: [] }, { run: { active: 1, waiting: 0 } }]],
    ['is ready to run', [{ rest: [] }, { run: { active: 0, waiting: 2 } }]],
    ['is between two tries', [{ rest: [0, 1] }]],
    // It ran at the first look and rests by the second.
    ['fails between two looks', [{ rest: [] }, { run: { active: 0 } }, { rest: [3] }]],
  ])('waits for a job that %s', async (_, script) => {
    expect(await readsUntilIdle([...script, ...nothing])).toBe(script.length + 3);
  });
});

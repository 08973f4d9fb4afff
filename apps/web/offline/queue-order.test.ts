import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { inOrder, nextToSend, ofRun, verdict, type QueuedEntry } from './queue-order.js';

const at = '2026-11-27T18:10:00Z';

function queued(place: number, runId: string, isRefused = false): QueuedEntry {
  const entry = { kind: 'done', stage: `stage-${String(place)}`, at } as const;
  const refusal = { status: 422, text: 'no', issues: [] };
  return { id: `id-${String(place)}`, place, runId, entry, ...(isRefused && { refusal }) };
}

describe('the order in which entries are sent', () => {
  it('is the one in which they were made', () => {
    const queue = [queued(3, 'a'), queued(1, 'b'), queued(2, 'a')];
    expect(inOrder(queue).map(({ place }) => place)).toEqual([1, 2, 3]);
    expect(nextToSend(queue)?.place).toBe(1);
    expect(ofRun(queue, 'a').map(({ place }) => place)).toEqual([2, 3]);
  });

  it('lets a refused entry hold back what followed in its run, and nothing else', () => {
    const queue = [queued(1, 'a', true), queued(2, 'a'), queued(3, 'b')];
    expect(nextToSend(queue)?.place).toBe(3);
    expect(nextToSend(queue.filter(({ runId }) => runId === 'a'))).toBeUndefined();
    // What came before the refused one does not build on it.
    expect(nextToSend([queued(1, 'a'), queued(2, 'a', true)])?.place).toBe(1);
  });

  it('has nothing to send when nothing waits', () => {
    expect(nextToSend([])).toBeUndefined();
    expect(nextToSend([queued(1, 'a', true)])).toBeUndefined();
  });

  it('sends each run in its own order and all that is not held back, whatever the queue', () => {
    const entries = fc.array(fc.record({ run: fc.constantFrom('a', 'b', 'c'), refused: fc.boolean() }));
    fc.assert(
      fc.property(entries, (made) => {
        let queue = made.map(({ run, refused }, index) => queued(index, run, refused));
        const sent: QueuedEntry[] = [];
        for (let next = nextToSend(queue); next !== undefined; next = nextToSend(queue)) {
          sent.push(next);
          const { id } = next;
          queue = queue.filter((other) => other.id !== id);
        }
        expect(sent).toEqual(inOrder(sent));
        for (const { runId, place } of queue.filter(({ refusal }) => refusal === undefined)) {
          expect(queue.some((q) => q.refusal && q.runId === runId && q.place < place)).toBe(true);
        }
      }),
    );
  });
});

describe('what an answer means', () => {
  it.each([
    [201, 'sent'],
    [404, 'refused'],
    [409, 'refused'],
    [422, 'refused'],
    [401, 'later'],
    [429, 'later'],
    [500, 'later'],
    [503, 'later'],
  ] as const)('%i: %s', (status, meaning) => {
    expect(verdict(status)).toBe(meaning);
  });
});

import { expect, it } from 'vitest';
import { FairQueue } from './fair-queue.js';

function drained(queue: FairQueue<string>, upTo?: number): string[] {
  const out: string[] = [];
  for (let next = queue.next(upTo); next !== undefined; next = queue.next(upTo)) out.push(next);
  return out;
}

it('lets owners take turns, however much one has waiting', () => {
  const queue = new FairQueue<string>();
  for (const n of [1, 2, 3, 4]) queue.push(`a${String(n)}`, 'a', 0);
  queue.push('b1', 'b', 0);
  queue.push('b2', 'b', 0);
  expect(drained(queue)).toEqual(['a1', 'b1', 'a2', 'b2', 'a3', 'a4']);
});

it('lets the urgent go first, and leaves the less urgent where it is', () => {
  const queue = new FairQueue<string>();
  queue.push('remedies', 'a', 2);
  queue.push('page', 'a', 1);
  queue.push('log', 'b', 0);
  expect(drained(queue, 1)).toEqual(['log', 'page']);
  expect(queue.size()).toBe(1);
  expect(drained(queue)).toEqual(['remedies']);
});

it('counts what waits, and takes out what is not wanted any more', () => {
  const queue = new FairQueue<string>();
  queue.push('one', 'a', 2);
  queue.push('two', 'a', 2);
  queue.push('three', 'b', 2);
  expect([queue.size(), queue.size('a', 2), queue.size('a', 0)]).toEqual([3, 2, 0]);
  expect([queue.remove('one'), queue.remove('one')]).toEqual([true, false]);
  expect([queue.size(), queue.size('a', 2)]).toEqual([2, 1]);
  expect(drained(queue)).toEqual(['two', 'three']);
});

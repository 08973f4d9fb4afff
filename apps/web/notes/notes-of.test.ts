import { expect, it } from 'vitest';
import type { LogEntry } from '#contract';
import type { QueuedEntry } from '../offline/queue-order.js';
import { notesOf } from './notes-of.js';

const at = '2026-11-27T19:00:00Z';
const note = (text: string, fields: object = {}): LogEntry => ({ kind: 'note', note: text, at, ...fields });
const takeBack = (entry: string): LogEntry => ({ kind: 'take-back', entry, at });
const queued = (id: string, entry: LogEntry, fields: object = {}): QueuedEntry => ({
  ...{ id, place: 1, runId: 'run', entry },
  ...fields,
});
const told = (...given: Parameters<typeof notesOf>) =>
  notesOf(...given).map(({ entry, waits }) => `${entry.note ?? ''}${waits ? ' (waits)' : ''}`);

it('stand as they were corrected last, in their first place, without those taken back', () => {
  const log = [
    { id: 'a', entry: note('one') },
    { id: 'b', entry: note('two') },
    { id: 'c', entry: note('three') },
    { id: 'd', entry: note('One', { corrects: 'a' }) },
    { id: 'e', entry: takeBack('b') },
    { id: 'f', entry: note('ONE', { corrects: 'd' }) },
  ];
  expect(told('run', log, [])).toEqual(['ONE', 'three']);
});

it('count what waits on this device, but not what was refused or is of another run', () => {
  const log = [
    { id: 'a', entry: note('one') },
    { id: 'b', entry: note('two') },
  ];
  const refusal = { status: 422, text: 'no', issues: [] };
  const queue = [
    queued('q', note('One', { corrects: 'a' })),
    queued('r', takeBack('b')),
    queued('s', note('three'), { photos: [{ id: 'p', data: '' }] }),
    queued('t', note('four'), { refusal }),
    queued('u', note('five'), { runId: 'other' }),
  ];
  expect(told('run', log, queue)).toEqual(['One (waits)', 'three (waits)']);
  expect(notesOf('run', log, queue)[1]?.photos).toEqual([{ id: 'p', data: '' }]);
});

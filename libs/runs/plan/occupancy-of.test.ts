import { expect, it } from 'vitest';
import { occupancyOf, checkEntry, planRuns } from '#runs';
import { minuteOf } from '#units';
import { loadRunFile } from '../../../tests/support/run-files.js';

const now = minuteOf(Date.parse('2026-11-27T18:00:00Z'));
const file = loadRunFile('ok', 'two-layer');

it('keeps a second run out of the hands and the cavities of the first', () => {
  const first = planRuns(file, { now, scenarios: 100 });
  if (!first.ok) throw new Error('no first plan');
  const busy = occupancyOf(first.value, file);
  expect(busy.filter((b) => b.resource === 'mould:cup')).toHaveLength(1);
  const second = planRuns({ ...file, busy }, { now, scenarios: 100 });
  if (!second.ok) throw new Error('no second plan');
  expect(second.value.status).toBe('planned');
  const pour = second.value.runs[0]?.stages.find((s) => s.key === 'pour-under');
  const freed = first.value.runs[0]?.stages.find((s) => s.key === 'unmould');
  expect(pour && freed && pour.startAt >= freed.endAt).toBe(true);
});

it('lets only entries into the log that can be true', () => {
  const done = { kind: 'done', stage: 'pour-under', at: '2026-11-27T18:32:00Z' } as const;
  expect(checkEntry(file, 'cups', done)).toEqual([]);
  const again = { ...file, log: [{ run: 'cups', entry: done }] };
  expect(checkEntry(again, 'cups', done)).toMatchObject([{ code: 'log.already-done', path: ['stage'] }]);
  expect(checkEntry(file, 'cups', { ...done, startedAt: '2026-11-27T19:00:00Z' })).toMatchObject([
    { code: 'log.ends-before-start', path: ['startedAt'] },
  ]);
  const mishap = { kind: 'mishap', part: 'lid', mishap: 'seized', at: '2026-11-27T18:32:00Z' } as const;
  expect(checkEntry(file, 'cups', mishap)).toMatchObject([{ code: 'part.unknown', value: 'lid' }]);
});

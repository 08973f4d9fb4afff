import { expect, it } from 'vitest';
import type { LogEntry } from '#contract';
import { checkEntry, checkInput, planRuns } from '#runs';
import { minuteOf } from '#units';
import { loadRunFile } from '../../../tests/support/run-files.js';

const file = loadRunFile('ok', 'two-layer');
const withLog = (...entries: LogEntry[]) => ({
  ...file,
  log: entries.map((entry) => ({ run: 'cups', entry })),
});
const under: LogEntry = { kind: 'done', stage: 'pour-under', at: '2026-11-27T18:32:00Z' };
const over: LogEntry = { kind: 'done', stage: 'pour-over', at: '2026-11-27T19:52:00Z' };

it('refuses a stage before those it comes after, and names them', () => {
  const unmould: LogEntry = { kind: 'done', stage: 'unmould', at: '2026-11-29T18:00:00Z' };
  expect(checkEntry(withLog(under), 'cups', unmould)).toMatchObject([
    { code: 'log.out-of-order', missing: ['Pour the upper layer'] },
  ]);
  expect(checkEntry(withLog(under, over), 'cups', unmould)).toEqual([]);
});

it('takes “not yet” only for soap that is setting', () => {
  const notYet = (stage: string): LogEntry => ({ kind: 'not-yet', stage, at: '2026-11-27T20:00:00Z' });
  expect(checkEntry(withLog(), 'cups', notYet('unmould'))).toMatchObject([
    { code: 'log.nothing-to-wait-for' },
  ]);
  expect(checkEntry(withLog(), 'cups', notYet('pour-under'))).toMatchObject([
    { code: 'log.nothing-to-wait-for' },
  ]);
  expect(checkEntry(withLog(under, over), 'cups', notYet('unmould'))).toEqual([]);
});

it('sees soap through that can no longer be cured by its day', () => {
  const late = { ...withLog(under, over), runs: file.runs.map((r) => ({ ...r, readyBy: '2026-12-06' })) };
  const planned = planRuns(late, { now: minuteOf(Date.parse('2026-11-27T20:00Z')), scenarios: 100 });
  if (!planned.ok) throw new Error('refused');
  expect(planned.value.status).toBe('planned');
  expect(planned.value.runs[0]?.stages.filter((s) => s.status === 'planned')).toHaveLength(2);
  expect(planned.value.runs[0]?.cautions).toMatchObject([
    { code: 'caution.missed-day', readyBy: expect.any(String) },
  ]);
});

it('refuses a wait for a state that the part has no clock for', () => {
  const designs = file.designs.map((design) => ({
    ...design,
    waits: [...design.waits, { stage: 'turn', part: 'over', opens: 'glaze-set' as const }],
  }));
  expect(checkInput({ ...file, designs })).toMatchObject([
    { code: 'design.state-without-clock', path: ['designs', 0, 'waits', 2, 'opens'], value: 'glaze-set' },
  ]);
});

import { expect, it } from 'vitest';
import { planDocument, type LogEntry, type PlanDocument } from '#contract';
import { instantOf } from '#hours';
import { planRuns, type RunsInput } from '#runs';
import { loadRunFile } from '../../../tests/support/run-files.js';

function planned(input: RunsInput, at = '2026-11-27T18:00'): PlanDocument {
  const now = instantOf(at, 'Europe/Dublin');
  if (now === undefined) throw new Error(at);
  const result = planRuns(input, { now, scenarios: 100 });
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  return result.value;
}

it('names the day and the cure that may miss it, and holds once there is no day', () => {
  const file = loadRunFile('demo', 'rockpool-tiles');
  const { guarantee } = planned(file);
  expect(guarantee).toMatchObject({ holds: false, bandPercent: 80 });
  expect(guarantee?.reasons.map(({ code }) => code).toSorted()).toEqual(['plan.lag-at-least', 'plan.latest']);
  const text = guarantee?.reasons.map((reason) => reason.text).join(' ');
  expect(text).toContain('must be by Sat 16 Jan 00:00');
  expect(text).toContain('cures for');
  const runs = file.runs.map(({ readyBy: _day, ...run }) => run);
  expect(planned({ ...file, runs }).guarantee).toEqual({ holds: true, bandPercent: 80, reasons: [] });
});

it('holds for the loaves, whose layers are firm and too firm to cut on one clock', () => {
  expect(planned(loadRunFile('demo', 'orchard-loaves')).guarantee?.holds).toBe(true);
});

it('says nothing without a plan, nor when all is done', () => {
  const file = loadRunFile('ok', 'two-layer');
  const [run] = file.runs;
  if (run === undefined) throw new Error('no run');
  const conflict = planned({ ...file, runs: [{ ...run, readyBy: '2026-12-06' }] });
  expect(conflict).toMatchObject({ status: 'conflict', guarantee: null });

  expect(planned(file).guarantee).not.toBeNull();
  const times = {
    'pour-under': ['2026-11-27T18:00:00Z', '2026-11-27T18:32:00Z'],
    'pour-over': ['2026-11-27T19:30:00Z', '2026-11-27T19:52:00Z'],
    unmould: ['2026-11-30T18:00:00Z', '2026-11-30T18:20:00Z'],
    turn: ['2026-12-01T18:00:00Z', '2026-12-01T18:10:00Z'],
  };
  const log = Object.entries(times).map(([stage, [startedAt = '', at = '']]) => {
    const entry: LogEntry = { kind: 'done', stage, startedAt, at };
    return { run: run.key, entry };
  });
  expect(planned({ ...file, log }, '2026-12-02T18:00')).toMatchObject({ status: 'planned', guarantee: null });
});

it('is none in a document from before there were guarantees', () => {
  const { guarantee: _later, ...older } = planned(loadRunFile('ok', 'two-layer'));
  expect(planDocument.parse(older).guarantee).toBeNull();
});

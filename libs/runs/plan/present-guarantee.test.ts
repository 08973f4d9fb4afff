import { expect, it } from 'vitest';
import { planDocument, type LogEntry, type PlanDocument } from '#contract';
import { instantOf } from '#hours';
import { planRuns, type RunsInput } from '#runs';
import type { Minute } from '#units';
import { loadRunFile } from '../../../tests/support/run-files.js';
import { planInFull } from './plan-run.js';
import { presentGuarantee } from './present-guarantee.js';

function at(local: string): Minute {
  const found = instantOf(local, 'Europe/Dublin');
  if (found === undefined) throw new Error(local);
  return found;
}

function planned(input: RunsInput, now = '2026-11-27T18:00'): PlanDocument {
  const result = planRuns(input, { now: at(now), scenarios: 100 });
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  return result.value;
}

it('names the day and the cure that may miss it, and holds once there is no day', () => {
  const file = loadRunFile('ok', 'plain-tiles');
  const { guarantee } = planned(file);
  expect(guarantee).toMatchObject({ holds: false, bandPercent: 80 });
  expect(guarantee?.reasons.map(({ code }) => code).toSorted()).toEqual([
    'conflict.cures',
    'conflict.ready-by',
  ]);
  expect(guarantee?.reasons).toContainEqual(
    expect.objectContaining({ code: 'conflict.ready-by', day: '2027-01-16' }),
  );
  const runs = file.runs.map(({ readyBy: _day, ...run }) => run);
  expect(planned({ ...file, runs }).guarantee).toEqual({ holds: true, bandPercent: 80, reasons: [] });
});

it('holds for the loaves, whose layers are firm and too firm to cut on one clock', () => {
  expect(planned(loadRunFile('demo', 'orchard-loaves')).guarantee?.holds).toBe(true);
});

it('tells an order of hands that does not fit the soap', () => {
  const full = planInFull(loadRunFile('ok', 'two-layer'), { now: at('2026-11-27T18:00'), scenarios: 100 });
  if (!full.ok) throw new Error(JSON.stringify(full.issues));
  const { assessedRuns, solved } = full.value;
  if (solved.outcome?.status !== 'planned') throw new Error('no plan');
  const { schedule } = solved.outcome;
  const turnedFirst = { before: 'cups/turn#1', after: 'cups/pour-over#1', resource: 'hands' };
  const wrong = { ...schedule, precedences: [turnedFirst] };
  const found = presentGuarantee(solved, wrong, assessedRuns);
  expect(found?.holds).toBe(false);
  const stages = ['turn', 'pour-over'].map(
    (stage) => expect.objectContaining({ run: 'cups', stage }) as unknown,
  );
  expect(found?.reasons).toContainEqual({ code: 'conflict.order', resource: { kind: 'hands' }, stages });
  expect(found?.reasons.some(({ code }) => /^conflict\.(after|at-least|made|opens)$/.test(code))).toBe(true);
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

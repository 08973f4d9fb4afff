import { describe, expect, it } from 'vitest';
import type { PlanDocument, PlannedStage } from '#contract';
import { keepOpenStages, planRuns } from '#runs';
import { minuteOfIso } from '#units';
import { loadRunFile } from '../../../tests/support/run-files.js';

const planned = planRuns(loadRunFile('ok', 'two-layer'), {
  now: minuteOfIso('2026-11-26T12:00:00Z'),
  scenarios: 50,
});
if (!planned.ok) throw new Error('refused');
const before = planned.value;
const [pour] = before.runs[0]?.stages ?? [];
if (pour === undefined) throw new Error('nothing planned');

/** No plan from here: of the run, only these stages are told. */
function conflict(...stages: PlannedStage[]): PlanDocument {
  return { ...before, status: 'conflict', runs: before.runs.map((run) => ({ ...run, stages, ready: null })) };
}

const told = ({ runs }: PlanDocument): string[] =>
  (runs[0]?.stages ?? []).map(({ key, attempt, status }) => `${key} ${String(attempt)} ${status}`);

describe('a plan that cannot be', () => {
  it('keeps what is still open where it was, and tells what is done once', () => {
    const kept = keepOpenStages(conflict({ ...pour, status: 'done' }), before);
    expect(told(kept)).toEqual([
      'pour-under 1 done',
      'pour-over 1 planned',
      'unmould 1 planned',
      'turn 1 planned',
    ]);
    expect(kept.runs[0]?.stages.slice(1)).toEqual(before.runs[0]?.stages.slice(1));
    expect(kept.runs[0]?.ready).toEqual(before.runs[0]?.ready);
  });

  it('keeps a second attempt that is still open beside the first', () => {
    const twice = conflict({ ...pour, status: 'spoilt' }, { ...pour, attempt: 2 });
    expect(told(keepOpenStages(conflict({ ...pour, status: 'spoilt' }), twice))).toEqual([
      'pour-under 1 spoilt',
      'pour-under 2 planned',
    ]);
  });

  it('brings nothing back that was done before and is not any more', () => {
    expect(told(keepOpenStages(conflict(), conflict({ ...pour, status: 'done' })))).toEqual([]);
  });

  it('keeps each run its own stages, in the order of their times', () => {
    const other = { ...before.runs[0]!, run: 'others', stages: [{ ...pour, key: 'melt' }], ready: null };
    const both = { ...before, runs: [other, ...before.runs] };
    const late: PlannedStage = { ...pour, key: 'wrap', startAt: '2030-01-01T00:00:00.000Z' };
    const none = conflict(late);
    const kept = keepOpenStages({ ...none, runs: [...none.runs, { ...other, stages: [] }] }, both);
    expect(told(kept)).toEqual([
      ...[
        'pour-under 1 planned',
        'pour-over 1 planned',
        'unmould 1 planned',
        'turn 1 planned',
        'wrap 1 planned',
      ],
    ]);
    expect(kept.runs[1]?.stages.map(({ key }) => key)).toEqual(['melt']);
  });

  it('has nothing to keep of a run that is new', () => {
    const [run] = conflict().runs;
    const fresh = { ...conflict(), runs: [{ ...run!, run: 'new' }] };
    expect(keepOpenStages(fresh, before).runs).toEqual(fresh.runs);
  });

  it('is left alone where it can be', () => {
    expect(keepOpenStages(before, conflict())).toBe(before);
  });
});

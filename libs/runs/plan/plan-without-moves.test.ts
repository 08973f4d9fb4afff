import { describe, expect, it } from 'vitest';
import type { PlanDocument, PlannedStage } from '#contract';
import { planRuns, planWithoutMoves } from '#runs';
import { minuteOfIso } from '#units';
import { loadRunFile } from '../../../tests/support/run-files.js';

const planned = planRuns(loadRunFile('ok', 'two-layer'), {
  now: minuteOfIso('2026-11-26T12:00:00Z'),
  scenarios: 50,
});
if (!planned.ok) throw new Error('refused');
const plan = planned.value;

/** The plan with some stages changed. */
function withStages(change: Record<string, Partial<PlannedStage>>): PlanDocument {
  const runs = plan.runs.map((run) => ({
    ...run,
    stages: run.stages.map((stage) => ({ ...stage, ...change[stage.key] })),
  }));
  return { ...plan, runs };
}

const at = (stages: PlanDocument, key: string): string[] =>
  (stages.runs[0]?.stages ?? []).filter((stage) => stage.key === key).map(({ startAt }) => startAt);

const LATER = '2026-12-24T18:00:00.000Z';
const LATEST = '2026-12-26T18:00:00.000Z';

describe('a plan without the moves of something that never happened', () => {
  it('has what it moved where that was before', () => {
    const moved = withStages({ unmould: { startAt: LATER }, turn: { startAt: LATER } });
    const held = planWithoutMoves({ before: plan, after: moved, latest: moved });
    for (const key of ['unmould', 'turn']) expect(at(held, key)).toEqual(at(plan, key));
  });

  it('keeps what was moved since for another reason', () => {
    const moved = withStages({ unmould: { startAt: LATER }, turn: { startAt: LATER } });
    const latest = withStages({ unmould: { startAt: LATER }, turn: { startAt: LATEST } });
    const held = planWithoutMoves({ before: plan, after: moved, latest });
    expect(at(held, 'unmould')).toEqual(at(plan, 'unmould'));
    expect(at(held, 'turn')).toEqual([LATEST]);
  });

  it('has a stage back that was told done', () => {
    const done = withStages({ unmould: { status: 'done', startAt: LATER } });
    const held = planWithoutMoves({ before: plan, after: done, latest: done });
    expect(at(held, 'unmould')).toEqual(at(plan, 'unmould'));
  });

  it('leaves a stage alone that was done before', () => {
    const done = withStages({ unmould: { status: 'done', startAt: LATER } });
    const held = planWithoutMoves({ before: done, after: done, latest: done });
    expect(at(held, 'unmould')).toEqual([LATER]);
  });
});

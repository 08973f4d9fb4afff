import { describe, expect, it } from 'vitest';
import type { PlanDocument, PlannedStage } from '#contract';
import { comparePlans, planRuns } from '#runs';
import { minuteOfIso } from '#units';
import { loadRunFile } from '../../../tests/support/run-files.js';

const planned = planRuns(loadRunFile('ok', 'two-layer'), {
  now: minuteOfIso('2026-11-26T12:00:00Z'),
  scenarios: 10,
});
if (!planned.ok) throw new Error('refused');
const plan = planned.value;

/** The plan with its stages as this makes them. */
function having(make: (stage: PlannedStage) => PlannedStage[]): PlanDocument {
  return { ...plan, runs: plan.runs.map((run) => ({ ...run, stages: run.stages.flatMap(make) })) };
}

const change = (key: string, over: Partial<PlannedStage>): PlanDocument =>
  having((stage) => [stage.key === key ? { ...stage, ...over } : stage]);
const startOf = (key: string): string => plan.runs[0]!.stages.find((stage) => stage.key === key)!.startAt;

const EARLY = '2026-11-27T00:00:00.000Z';
const LATE = '2027-03-01T00:00:00.000Z';
const why = [{ code: 'why.free' }] as const;
const about = (stage: string, attempt = 1) => ({ run: 'cups', stage, attempt });

describe('the changes between two plans', () => {
  it('are none where nothing moved', () => {
    expect(comparePlans(plan, plan)).toEqual([]);
    expect(comparePlans(change('turn', { status: 'done' }), change('turn', { status: 'done' }))).toEqual([]);
  });

  it('are what comes later or earlier, with why', () => {
    const later = change('turn', { startAt: LATE, why: [...why] });
    const moved = { ...about('turn'), fromAt: startOf('turn'), toAt: LATE };
    expect(comparePlans(plan, later)).toEqual([{ ...moved, change: 'later', why }]);
    const earlier = change('turn', { startAt: EARLY, why: [...why] });
    expect(comparePlans(plan, earlier)).toEqual([{ ...moved, toAt: EARLY, change: 'earlier', why }]);
  });

  it('are what is done or spoilt since, wherever it was', () => {
    for (const status of ['done', 'spoilt'] as const) {
      const after = change('turn', { status, startAt: LATE, why: [...why] });
      expect(comparePlans(plan, after)).toEqual([
        { ...about('turn'), fromAt: startOf('turn'), toAt: LATE, change: status, why },
      ]);
    }
    // What was done is told another time: it is no news that it is done.
    const [before, after] = [LATE, EARLY].map((startAt) => change('turn', { status: 'done', startAt }));
    expect(comparePlans(before!, after!)).toMatchObject([{ change: 'earlier' }]);
  });

  it('are what is new, and each attempt at a stage for itself', () => {
    const again = having((stage) =>
      stage.key === 'unmould' ? [stage, { ...stage, attempt: 2, startAt: LATE, why: [...why] }] : [stage],
    );
    expect(comparePlans(plan, again)).toEqual([
      { ...about('unmould', 2), fromAt: null, toAt: LATE, change: 'added', why },
    ]);
  });

  it('are what is left out, or cannot be planned any more', () => {
    const without = having((stage) => (stage.key === 'turn' ? [] : [stage]));
    const turn = about('turn');
    const title = 'Turn';
    const removed = { ...turn, title, fromAt: startOf('turn'), toAt: null, change: 'removed' };
    expect(comparePlans(plan, without)).toEqual([{ ...removed, why: [{ code: 'why.left-out' }] }]);
    expect(comparePlans(plan, { ...without, status: 'conflict' })).toEqual([
      { ...removed, why: [{ code: 'why.no-plan' }] },
    ]);
  });

  it('come in the order of their new times, what goes by when it was', () => {
    const after = having((stage) => {
      if (stage.key === 'unmould') return [];
      return [stage.key === 'pour-under' ? { ...stage, startAt: LATE } : { ...stage, startAt: EARLY }];
    });
    expect(comparePlans(plan, after).map(({ stage }) => stage)).toEqual([
      ...['pour-over', 'turn', 'unmould', 'pour-under'],
    ]);
  });
});

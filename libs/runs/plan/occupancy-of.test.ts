import { describe, expect, it } from 'vitest';
import type { PlanDocument, PlannedStage } from '#contract';
import { occupancyOf, checkEntry, planRuns } from '#runs';
import { minuteOf, minuteOfIso } from '#units';
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

describe('what a run keeps busy', () => {
  const planned = planRuns(file, { now, scenarios: 10 });
  if (!planned.ok) throw new Error('no plan');
  const plan = planned.value;
  const stages = plan.runs[0]?.stages ?? [];
  const stage = (key: string): PlannedStage => stages.find((each) => each.key === key)!;
  const time = (from: PlannedStage, to = from) => ({
    from: minuteOfIso(from.startAt),
    to: minuteOfIso(to.endAt),
  });
  /** The plan with some stages told otherwise. */
  const told = (change: Record<string, Partial<PlannedStage>>, count = 12): PlanDocument => ({
    ...plan,
    runs: plan.runs.map((run) => ({
      ...{ ...run, count },
      stages: stages.map((each) => ({ ...each, ...change[each.key] })),
    })),
  });
  const hands = (key: string) => ({ resource: 'hands', amount: 1, ...time(stage(key)) });
  const tray = { resource: 'equipment:tray', amount: 1, ...time(stage('unmould')) };
  const cups = (amount: number) => ({
    ...{ resource: 'mould:cup', amount },
    ...time(stage('pour-under'), stage('unmould')),
  });

  it('is the hands and equipment of each stage to come, and the cavities until it is unmoulded', () => {
    expect(occupancyOf(plan, file)).toEqual([
      ...[hands('pour-under'), hands('pour-over'), hands('unmould'), tray, hands('turn')],
      cups(12),
    ]);
  });

  it('is nothing any more for what is done or was spoilt', () => {
    const done = { status: 'done' } as const;
    const poured = told({ 'pour-under': done, 'pour-over': done });
    expect(occupancyOf(poured, file)).toEqual([hands('unmould'), tray, hands('turn'), cups(12)]);
    const out = told({ 'pour-under': done, 'pour-over': done, unmould: done });
    expect(occupancyOf(out, file)).toEqual([hands('turn')]);
    const spoilt = { status: 'spoilt' } as const;
    expect(occupancyOf(told({ 'pour-under': spoilt, 'pour-over': spoilt }), file)).toEqual([
      ...[hands('unmould'), tray, hands('turn')],
    ]);
    expect(occupancyOf(told({ unmould: spoilt }), file)).not.toContainEqual(cups(12));
  });

  it('is a cavity for each piece, or for as many as share one', () => {
    const shared = {
      ...file,
      designs: file.designs.map((design) => ({
        ...design,
        parts: design.parts.map((part) => ({ ...part, piecesPerCavity: 5 })),
      })),
    } as typeof file;
    expect([10, 11].map((count) => occupancyOf(told({}, count), shared).at(-1)?.amount)).toEqual([2, 3]);
  });

  it('is nothing for a run that is not told, nor a mould that nothing is cast in', () => {
    expect(occupancyOf(plan, { ...file, runs: [] })).toEqual([]);
    const spare = { ...file.moulds[0]!, key: 'spare' };
    expect(occupancyOf(plan, { ...file, moulds: [spare, ...file.moulds] })).toEqual(occupancyOf(plan, file));
  });
});

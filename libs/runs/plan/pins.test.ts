import { describe, expect, it } from 'vitest';
import type { PlanDocument, PlannedStage } from '#contract';
import { instantOf } from '#hours';
import { planRuns, type StagePin } from '#runs';
import { isoInstant, minuteOfIso, type Minute } from '#units';
import { loadRunFile } from '../../../tests/support/run-files.js';

const file = loadRunFile('demo', 'orchard-loaves');
const run = file.runs[0]?.key ?? '';
const at = (local: string): Minute => instantOf(local, 'Europe/Dublin') ?? (0 as Minute);

function planned(pins: readonly StagePin[] = [], previous?: PlanDocument): PlanDocument {
  const result = planRuns(file, { now: at('2026-11-27T12:00'), scenarios: 400, pins, previous });
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  return result.value;
}

const stageOf = (plan: PlanDocument, key: string): PlannedStage | undefined =>
  plan.runs[0]?.stages.find((stage) => stage.key === key);

describe('a stage tried at another start', () => {
  const before = planned();

  it('is planned there, with a window that is still the soap’s', () => {
    const last = before.runs[0]?.stages.at(-1);
    const startAt = (minuteOfIso(last?.startAt ?? '') + 30) as Minute;
    const tried = planned([{ run, stage: last?.key ?? '', startAt }], before);
    expect(tried.status).toBe('planned');
    const moved = stageOf(tried, last?.key ?? '');
    expect(minuteOfIso(moved?.startAt ?? '')).toBe(startAt);
    expect(moved?.opensAt).toBe(last?.opensAt);
    expect(moved?.lastCallAt).toBe(last?.lastCallAt);
    const others = (plan: PlanDocument): unknown =>
      plan.runs[0]?.stages.filter(({ key }) => key !== last?.key).map(({ key, startAt: s }) => [key, s]);
    expect(others(tried)).toEqual(others(before));
  });

  it('changes nothing where every stage is put where it is', () => {
    const pins = (before.runs[0]?.stages ?? []).map((stage) => ({
      run,
      stage: stage.key,
      startAt: minuteOfIso(stage.startAt),
    }));
    expect(planned(pins).odds).toEqual(before.odds);
  });

  it('is refused where there is no such stage', () => {
    const result = planRuns(file, {
      now: at('2026-11-27T12:00'),
      pins: [{ run, stage: 'fly', startAt: at('2026-11-30T19:00') }],
    });
    expect(result).toMatchObject({ ok: false, issues: [{ path: ['pins', 0, 'stage'], value: 'fly' }] });
  });

  it('is a conflict where it cannot be, told with the start that was asked for', () => {
    // Three in the morning is outside the hours of the demo.
    const tried = planned([{ run, stage: 'unmould', startAt: at('2026-11-30T03:00') }], before);
    expect(tried.status).toBe('conflict');
    expect(tried.odds).toBeNull();
    const stage = expect.objectContaining({ stage: 'unmould', title: 'Lift the loaves out' }) as unknown;
    const start = isoInstant(at('2026-11-30T03:00'));
    expect(tried.conflict).toContainEqual({ code: 'conflict.start', stage, at: start });
    expect(tried.conflict.map(({ code }) => code)).toContain('conflict.hours');
  });
});

import { describe, expect, it } from 'vitest';
import { checkProblem, odds, plan, schedule } from '#planner';
import { scheduleFaults } from '../../tests/support/check-schedule.js';
import { tileProblem } from '../../tests/support/tile-problem.js';
import { likelyEnd } from './likely-end.js';

describe('plan', () => {
  const p = tileProblem();
  const best = plan(p, { seed: 1, scenarios: 1000 });

  it('plans the example run, and nothing is wrong with the schedule', () => {
    expect(checkProblem(p)).toEqual([]);
    if (best.outcome.status !== 'planned') throw new Error(best.outcome.status);
    expect(scheduleFaults(p, best.outcome.schedule)).toEqual([]);
  });

  /** A hundredth is worth six hours, and what is within a hundredth, or two standard errors of a difference, is as good. */
  it('chooses no worse odds than any certainty on its own, but for what is ready so much sooner', () => {
    if (best.outcome.status !== 'planned') throw new Error(best.outcome.status);
    const own = likelyEnd(p, best.outcome.schedule).waited;
    let compared = 0;
    for (const certainty of [0.9, 0.85, 0.8, 0.7, 0.6, 0.5]) {
      const outcome = schedule(p, { certainty, seed: 1 });
      if (outcome.status !== 'planned') continue;
      compared++;
      const { onTime } = odds(p, outcome.schedule, { seed: 1, scenarios: 1000 });
      const later = (likelyEnd(p, outcome.schedule).waited - own) / (6 * 60);
      expect(best.odds!.onTime).toBeGreaterThan(onTime - later / 100 - 0.04);
    }
    expect(compared).toBeGreaterThan(1);
  });

  it('says what stands in the way when no certainty gives a schedule', () => {
    const cut = { ...p, until: 2 * 1440 };
    const { outcome, odds: none } = plan(cut, { seed: 1, scenarios: 100 });
    expect(none).toBeNull();
    expect(outcome).toMatchObject({ status: 'conflict' });
    expect(outcome.status === 'conflict' && outcome.requirements).toContainEqual({ kind: 'horizon' });
  });

  it('has pinned stages where they are pinned, with the odds of that schedule and no others', () => {
    if (best.outcome.status !== 'planned') throw new Error(best.outcome.status);
    const { starts } = best.outcome.schedule;
    const [id, at] = [...starts].reduce((last, each) => (each[1] > last[1] ? each : last));
    const moved = plan(p, { seed: 1, scenarios: 1000, pins: new Map([[id, at + 15]]) });
    if (moved.outcome.status !== 'planned') throw new Error(moved.outcome.status);
    expect(moved.outcome.schedule.starts.get(id)).toBe(at + 15);
    expect(scheduleFaults(p, moved.outcome.schedule)).toEqual([]);
    expect(moved.odds).toEqual(odds(p, moved.outcome.schedule, { seed: 1, scenarios: 1000 }));
  });

  it('says why a stage cannot be pinned there', () => {
    const [first] = p.stages;
    const { outcome } = plan(p, { seed: 1, scenarios: 100, pins: new Map([[first!.id, p.from - 60]]) });
    expect(outcome.status === 'conflict' && outcome.requirements).toContainEqual({
      kind: 'latest',
      stage: first!.id,
    });
  });
});

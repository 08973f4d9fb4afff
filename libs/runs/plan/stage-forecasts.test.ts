import lognormalCdf from '@stdlib/stats-base-dists-lognormal-cdf';
import { describe, expect, it } from 'vitest';
import type { LogEntry, PlanDocument, PlannedStage, StageForecast } from '#contract';
import { planRuns } from '#runs';
import { minuteOfIso } from '#units';
import { loadRunFile } from '../../../tests/support/run-files.js';

const file = loadRunFile('ok', 'two-layer');

function planned(now: string, ...entries: LogEntry[]): PlanDocument {
  const log = entries.map((entry) => ({ run: 'cups', entry }));
  const result = planRuns({ ...file, log }, { now: minuteOfIso(now), scenarios: 200 });
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  return result.value;
}

function stageOf(plan: PlanDocument, key: string): PlannedStage {
  const found = plan.runs[0]!.stages.find((stage) => stage.key === key);
  if (found === undefined) throw new Error(`no stage ${key}`);
  return found;
}

function firmOf(plan: PlanDocument): StageForecast {
  const found = stageOf(plan, 'unmould').forecasts?.find(({ state }) => state === 'firm');
  if (found === undefined) throw new Error('no forecast of its firmness');
  return found;
}

const pours: LogEntry[] = [
  { kind: 'done', stage: 'pour-under', startedAt: '2026-11-27T18:00:00Z', at: '2026-11-27T18:32:00Z' },
  { kind: 'done', stage: 'pour-over', startedAt: '2026-11-27T19:30:00Z', at: '2026-11-27T19:52:00Z' },
];

describe('what a stage waits for, as twenty equally likely times', () => {
  const plan = planned('2026-11-27T18:00:00Z');

  /** Oracle: the log-normal distribution of @stdlib, with median and σ of the clock as the plan shows it. */
  it('are the quantiles of the clock, counted from its start', () => {
    let count = 0;
    for (const stage of plan.runs[0]!.stages) {
      for (const { part, state, minutes, closes } of stage.forecasts ?? []) {
        const clock = plan.runs[0]!.clocks.find((each) => each.part === part.part && each.state === state)!;
        expect(closes).toBe(clock.closes);
        minutes.forEach((at, k) => {
          // Whole minutes: half a minute either way.
          const [low, high] = [at - 0.5, at + 0.5].map((each) =>
            lognormalCdf(each, Math.log(clock.band.likely), clock.sigma),
          );
          expect(low).toBeLessThanOrEqual((k + 0.5) / 20 + 1e-9);
          expect(high).toBeGreaterThanOrEqual((k + 0.5) / 20 - 1e-9);
        });
        count++;
      }
    }
    expect(count).toBeGreaterThanOrEqual(3);
  });

  it('count from the end of what starts the clock, as planned and then as logged', () => {
    const pour = stageOf(plan, firmOf(plan).part.part === 'over' ? 'pour-over' : 'pour-under');
    expect(firmOf(plan).fromAt).toBe(pour.endAt);
    const logged = planned('2026-11-27T20:00:00Z', ...pours);
    expect(firmOf(logged).fromAt).toBe(
      firmOf(logged).part.part === 'over' ? '2026-11-27T19:52:00.000Z' : '2026-11-27T18:32:00.000Z',
    );
  });

  it('all lie after a look that found it not ready', () => {
    const looked = '2026-11-30T06:00:00Z';
    const before = planned('2026-11-28T06:01:00Z', ...pours);
    const after = planned('2026-11-30T06:01:00Z', ...pours, {
      kind: 'not-yet',
      stage: 'unmould',
      at: looked,
    });
    const at = ({ fromAt, minutes }: StageForecast): number[] =>
      minutes.map((each) => Date.parse(fromAt) + each * 60_000);
    expect(Math.min(...at(firmOf(before)))).toBeLessThan(Date.parse(looked));
    const blamed = stageOf(after, 'unmould').forecasts!.filter(
      (each) => each.state === 'firm' && Math.min(...at(each)) >= Date.parse(looked),
    );
    expect(blamed.length).toBeGreaterThan(0);
  });

  it('are not told of batter in the bowl, nor of what is done', () => {
    const states = plan.runs[0]!.stages.flatMap(({ forecasts = [] }) => forecasts.map(({ state }) => state));
    expect(states).not.toContain('light-trace');
    const logged = planned('2026-11-27T20:00:00Z', ...pours);
    expect(stageOf(logged, 'pour-over').forecasts).toBeUndefined();
  });
});

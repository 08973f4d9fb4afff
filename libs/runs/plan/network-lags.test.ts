import lognormalCdf from '@stdlib/stats-base-dists-lognormal-cdf';
import { describe, expect, it } from 'vitest';
import type { LogEntry, PlanDocument } from '#contract';
import { planRuns } from '#runs';
import { minuteOfIso, normalQuantile } from '#units';
import { loadRunFile } from '../../../tests/support/run-files.js';

const DAY = 1440;
/** Of the normal distribution, any table (from memory): a band holds eight of ten, so its ends lie at ± this. */
const NINE_OF_TEN = 1.28155;
const file = loadRunFile('ok', 'two-layer');

/** A slow unmoulding, two days from first to last piece. It is winter, so midnight in Dublin is midnight UTC. */
const unmoulded = '2026-12-01T20:00:00Z';
const out: LogEntry[] = [
  { kind: 'done', stage: 'pour-under', at: '2026-11-27T18:32:00Z' },
  { kind: 'done', stage: 'pour-over', at: '2026-11-27T19:52:00Z' },
  { kind: 'done', stage: 'unmould', startedAt: '2026-11-29T20:00:00Z', at: unmoulded },
];

/** The cups, out of their moulds and not turned yet, to be cured by a day. */
function plannedFor(readyBy: string, now: string, weighIns: readonly LogEntry[] = []): PlanDocument {
  const input = {
    ...file,
    runs: file.runs.map((run) => ({ ...run, readyBy })),
    log: [...out, ...weighIns].map((entry) => ({ run: 'cups', entry })),
  };
  const planned = planRuns(input, { now: minuteOfIso(now), scenarios: 20_000 });
  if (!planned.ok) throw new Error(JSON.stringify(planned.issues));
  expect(planned.value.status).toBe('planned');
  return planned.value;
}

/** Oracle: the log-normal of @stdlib whose band this is, minutes from the end of the unmoulding, at midnight of the day. */
function chanceOf(band: { low: number; likely: number; high: number }, day: string): number {
  const sigma = Math.log(band.high / band.low) / (2 * NINE_OF_TEN);
  const passed = minuteOfIso(`${day}T00:00:00Z`) - minuteOfIso(unmoulded);
  return lognormalCdf(passed, Math.log(band.likely), sigma);
}

/**
 * Two pours of one recipe have all in common but the luck of a batch, of σ 0.2: what they have in common is summed over, in
 * equally likely slices.
 */
function bothCured({ band, sigma }: { band: { likely: number }; sigma: number }, day: string): number {
  const passed = minuteOfIso(`${day}T00:00:00Z`) - minuteOfIso(unmoulded);
  const common = Math.sqrt(sigma ** 2 - 0.2 ** 2);
  const count = 400;
  let sum = 0;
  for (let i = 0; i < count; i++) {
    const median = band.likely * Math.exp(common * normalQuantile((i + 0.5) / count));
    sum += lognormalCdf(passed, Math.log(median), 0.2) ** 2;
  }
  return sum / count;
}

/** Within four standard errors. */
function expectOdds({ odds }: PlanDocument, chance: number): void {
  expect(Math.abs((odds?.soundByTheDay ?? NaN) - chance)).toBeLessThan(4 * (odds?.standardError ?? NaN));
}

describe('the odds that a lot is cured by a day', () => {
  it('count its cure from the end of the unmoulding', () => {
    const plan = plannedFor('2027-01-15', '2026-12-01T20:30:00Z');
    const cured = plan.runs[0]?.clocks.find(({ part, state }) => part === 'over' && state === 'cured');
    const chance = bothCured(cured!, '2027-01-15');
    expect(chance).toBeGreaterThan(0.2);
    expect(chance).toBeLessThan(0.9);
    expectOdds(plan, chance);
  });

  it('have the spread that its weighings leave', () => {
    const weighed = [
      [1, 1500],
      [8, 1458],
      [15, 1420],
      [22, 1390],
    ] as const;
    const at = (days: number): string =>
      new Date((minuteOfIso(unmoulded) + days * DAY) * 60_000).toISOString();
    const weighIns = weighed.map(([days, massG]): LogEntry => ({
      kind: 'weigh-in',
      pieces: 12,
      massG,
      at: at(days),
    }));
    // About the day from which the weighings call it cured nine times out of ten.
    const plan = plannedFor('2027-01-08', at(23), weighIns);
    const ready = plan.runs[0]?.ready;
    const since = (instant: string): number => minuteOfIso(instant) - minuteOfIso(unmoulded);
    const band = { low: since(ready!.low), likely: since(ready!.likely), high: since(ready!.high) };
    const chance = chanceOf(band, '2027-01-08');
    expect(chance).toBeGreaterThan(0.85);
    expect(chance).toBeLessThan(0.95);
    expectOdds(plan, chance);
  });
});

import { expect, it } from 'vitest';
import type { RunsInput } from '#runs';
import { planRuns } from '#runs';
import { minuteOf } from '#units';
import { loadRunFile } from '../../../tests/support/run-files.js';

const file = loadRunFile('ok', 'two-layer');
const done = (
  [
    ['pour-under', '2026-11-27T18:32:00Z'],
    ['pour-over', '2026-11-27T19:52:00Z'],
    ['unmould', '2026-11-30T18:20:00Z'],
    ['turn', '2026-12-01T18:30:00Z'],
  ] as const
).map(([stage, at]) => ({ run: 'cups', entry: { kind: 'done' as const, stage, at } }));

function curing(readyBy?: string) {
  const [run] = file.runs;
  const { readyBy: _day, ...order } = run!;
  const input: RunsInput = {
    ...file,
    log: done,
    runs: [{ ...order, ...(readyBy !== undefined && { readyBy }) }],
  };
  const planned = planRuns(input, { now: minuteOf(Date.parse('2026-12-02T10:00Z')), scenarios: 1000 });
  if (!planned.ok) throw new Error(JSON.stringify(planned.issues));
  return planned.value;
}

it('the odds of a day are those of the cure once all is done, and none are lost at any stage', () => {
  const { low, likely, high } = curing().runs[0]!.ready!;
  // Oracle: nothing is left but the cure, so the band of the lot tells the odds: 1 in 10 by its start, 9 in 10 by its end.
  const byDay = (iso: string): number => curing(iso.slice(0, 10)).odds!.soundByTheDay;
  expect(byDay(low)).toBeLessThan(0.2);
  expect(byDay(likely)).toBeGreaterThan(0.35);
  expect(byDay(likely)).toBeLessThan(0.65);
  expect(byDay(high)).toBeGreaterThan(0.8);
  expect(byDay(high)).toBeLessThan(0.96);
});

it('a day that cannot be kept any more is told by its odds, and the lot still has a plan', () => {
  const { status, odds, weakLinks } = curing('2026-12-10');
  expect(status).toBe('planned');
  expect(odds!.soundAtAll).toBe(1);
  expect(odds!.soundByTheDay).toBeLessThan(0.01);
  expect(weakLinks.map(({ stage }) => stage)).toEqual(['ready']);
});

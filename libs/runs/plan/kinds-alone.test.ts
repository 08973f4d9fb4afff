import { describe, expect, it } from 'vitest';
import type { RunPlan } from '#contract';
import { planRuns } from '#runs';
import { minuteOfIso } from '#units';
import { loadRunFile } from '../../../tests/support/run-files.js';

const HOUR = 60;
const DAY = 24 * HOUR;

/** A piece of which only the kinds of its stages are told: no waits, no links, no times, the unmoulding near the end. */
const file = loadRunFile('ok', 'nothing-but-kinds');

function planned(): RunPlan {
  const found = planRuns(file, { now: minuteOfIso('2026-11-27T12:00:00Z'), scenarios: 100 });
  if (!found.ok) throw new Error(JSON.stringify(found.issues));
  expect(found.value.status).toBe('planned');
  const [run] = found.value.runs;
  if (run === undefined) throw new Error('no run');
  return run;
}

describe('a piece of which only the kinds of its stages are told', () => {
  const run = planned();
  const stage = (key: string) => {
    const found = run.stages.find((each) => each.key === key);
    if (found === undefined) throw new Error(key);
    return found;
  };
  const start = (key: string): number => minuteOfIso(stage(key).startAt);
  const end = (key: string): number => minuteOfIso(stage(key).endAt);
  const likely = (part: string, state: string): number =>
    run.clocks.find((clock) => clock.part === part && clock.state === state)?.now.likely ?? NaN;

  it('is done in the order of the craft, each stage once the soap bears it', () => {
    expect(run.stages.map(({ key }) => key)).toEqual(['pour', 'unmould', 'coat', 'pipe', 'wrap']);
    expect(start('unmould') - end('pour')).toBeGreaterThanOrEqual(Math.floor(likely('base', 'firm')));
    expect(start('pipe') - end('coat')).toBeGreaterThanOrEqual(Math.floor(likely('coat', 'coat-turnable')));
    expect(start('wrap') - end('unmould')).toBeGreaterThanOrEqual(Math.floor(likely('base', 'cured')));
  });

  it('takes the time that such work takes', () => {
    // By hand, for 24 pieces: 35 min and 8 s each; 5 min and 30 s each; 35 min and 30 s each.
    expect(end('pour') - start('pour')).toBe(39);
    expect(end('unmould') - start('unmould')).toBe(17);
    expect(end('pipe') - start('pipe')).toBe(47);
  });

  it('has a last call where the soap has one, and none where only the end of the hours looked up would be one', () => {
    const lastCall = (key: string): number | undefined => {
      const found = stage(key);
      if (found.status !== 'planned') throw new Error(key);
      return found.lastCallAt === null ? undefined : minuteOfIso(found.lastCallAt);
    };
    expect(lastCall('pour')).toBeUndefined();
    expect(lastCall('wrap')).toBeUndefined();
    expect((lastCall('coat') ?? NaN) - end('unmould')).toBeLessThan(5 * DAY);
    expect((lastCall('pipe') ?? NaN) - end('coat')).toBeLessThan(4 * DAY);
  });

  it('waits for the slowest soap to cure, which olive oil alone makes', () => {
    expect(start('wrap') - end('unmould')).toBeGreaterThan(60 * DAY);
  });
});

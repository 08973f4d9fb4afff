import { describe, expect, it } from 'vitest';
import type { Problem, Schedule } from './problem.js';
import { selectByPairedSimulation } from './paired-simulation.js';

const p: Problem = {
  stages: [
    { id: 'pour', duration: 10, uses: [] },
    { id: 'cut', duration: 10, uses: [] },
  ],
  lags: [
    {
      ...{ id: 'open', from: 'pour', point: 'end', to: 'cut' },
      atMost: { kind: 'uncertain', median: 600, sigma: 0.2, draw: 'soft' },
    },
  ],
  ...{ holds: [], resources: [], calendars: {}, draws: {}, from: 0, until: 2000 },
};
const cutAt = (at: number): { schedule: Schedule; total: number } => ({
  schedule: {
    starts: new Map([
      ['pour', 0],
      ['cut', at],
    ]),
    ...{ precedences: [], certainty: 0.5 },
  },
  total: at,
});

describe('paired simulation', () => {
  const scenariosBy = (stopAfter: number, scenarios: number): number => {
    let asked = 0;
    const stop = (): boolean => ++asked >= stopAfter;
    return selectByPairedSimulation(p, [cutAt(500), cutAt(620)], { seed: 1, scenarios, stop }).odds.scenarios;
  };

  it('hears a stop within a batch that is long', () => {
    expect(scenariosBy(6, 2000)).toBe(150);
    expect(scenariosBy(12, 2000)).toBe(300);
  });

  it('simulates the best in enough scenarios, however soon it is stopped', () => {
    expect(scenariosBy(1, 2000)).toBe(100);
    expect(scenariosBy(1, 80)).toBe(10);
  });

  it('lives through all scenarios that were asked for where nobody stops it', () => {
    expect(scenariosBy(Infinity, 2000)).toBe(2000);
  });

  it('chooses the same however often it is asked to stop in vain', () => {
    const candidates = [cutAt(620), cutAt(500)];
    const { odds, schedule } = selectByPairedSimulation(p, candidates, {
      seed: 1,
      scenarios: 2000,
      stop: () => false,
    });
    expect(schedule).toBe(candidates[1]!.schedule);
    expect(selectByPairedSimulation(p, candidates, { seed: 1, scenarios: 2000 }).odds).toEqual(odds);
  });
});

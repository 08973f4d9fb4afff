import { describe, expect, it } from 'vitest';
import { Draw } from './draws.js';
import type { Lag, Problem, Schedule } from './problem.js';
import { ON_TIME, Tally } from './tally.js';

/** A piece is patched while it is soft by two clocks, and glazed before it has dried by a third. */
const lag = (id: string, to: string): Lag => ({
  ...{ id, from: 'pour', point: 'end', to },
  atMost: { kind: 'uncertain', median: 100, sigma: 1, draw: id },
});
const p: Problem = {
  stages: ['pour', 'patch', 'glaze'].map((id) => ({ id, duration: 0, uses: [] })),
  lags: [lag('firm', 'patch'), lag('brittle', 'patch'), lag('dry', 'glaze')],
  ...{ holds: [], resources: [], calendars: {}, draws: {}, from: 0, until: 1000 },
};
const s: Schedule = {
  starts: new Map([
    ['pour', 0],
    ['patch', 100],
    ['glaze', 100],
  ]),
  ...{ precedences: [], certainty: 0.5 },
};

/** Which of the clocks runs out before, scenario by scenario. */
const SCENARIOS = ['', 'dry', 'firm', 'brittle', 'brittle', '', '', 'firm', 'brittle', ''];

function tally(): Tally {
  const draws = new Map(
    p.lags.map(({ id }) => {
      let k = 0;
      return [id, new Draw(() => (SCENARIOS[k++] === id ? -1 : 1))] as const;
    }),
  );
  return new Tally(p, s, draws, SCENARIOS.length);
}

describe('a tally', () => {
  it('counts what is met, and what is lost at each stage with the window that was missed most often there', () => {
    const found = tally().simulate(10);
    expect([...found.outcomes]).toEqual([3, 0, 0, 0, 0, 3, 3, 0, 0, 3]);
    expect(found.shareOf(ON_TIME)).toBe(0.4);
    const odds = found.odds(5);
    expect(odds).toMatchObject({ onTime: 0.4, scenarios: 10, seed: 5 });
    expect(odds.standardError).toBeCloseTo(Math.sqrt((0.4 * 0.6) / 10), 12);
    expect(odds.losses).toEqual([
      { stage: 'patch', share: 0.5, loses: 'requirement', missed: { kind: 'lag-at-most', lag: 'brittle' } },
      { stage: 'glaze', share: 0.1, loses: 'requirement', missed: { kind: 'lag-at-most', lag: 'dry' } },
    ]);
  });

  it('goes on from where it was', () => {
    const found = tally().simulate(3);
    expect(found.odds(1)).toMatchObject({ scenarios: 3, onTime: 1 / 3 });
    expect(found.simulate(10).odds(1)).toEqual(tally().simulate(10).odds(1));
    expect(found.simulate(4).scenarios).toBe(10);
  });
});

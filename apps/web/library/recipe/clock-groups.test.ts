import { describe, expect, it } from 'vitest';
import { soapStates } from '#contract';
import { listClockRules } from '#runs';
import { groupClocks, groupOf, logDomain } from './clock-groups.js';

describe('clocks by kind', () => {
  it('are grouped as the rules have them, state by state', () => {
    const { states } = listClockRules();
    expect(states).toHaveLength(soapStates.length);
    expect(states.map(({ state }) => groupOf(state))).toEqual(states.map(({ clock }) => clock));
  });

  it('come in the order of time, without empty groups', () => {
    const clock = (state: string, likely: number) => ({
      state,
      band: { low: likely / 2, likely, high: likely * 2 },
    });
    const grouped = groupClocks([clock('firm', 60), clock('skinned', 2), clock('cured', 900)] as never);
    expect(grouped.map(({ group, clocks }) => [group, clocks.map(({ state }) => state)])).toEqual([
      ['set', ['skinned', 'firm']],
      ['cure', ['cured']],
    ]);
  });

  it('stand on one scale', () => {
    const [low, high] = logDomain([
      { low: 11, high: 20 },
      { low: 15, high: 100 },
    ]);
    expect(low).toBeCloseTo(10, 9);
    expect(high).toBeCloseTo(110, 9);
  });
});

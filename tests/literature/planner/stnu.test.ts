import { describe, expect, it } from 'vitest';
import { controllability } from '#planner';
import { lengthsAlong } from '../../support/lengths-along.js';
import { labelledNetworks } from './stnu-networks.js';

/** Source: stnu-citation.md beside this file. */
describe('STNUs with known dynamic controllability', () => {
  const networks = [...labelledNetworks('stnu-examples.json'), ...labelledNetworks('stnu-random.json')];

  it('has all 32 networks', () => expect(networks).toHaveLength(32));

  it.each(networks)('$name: $controllable', ({ stnu, controllable }) => {
    expect(controllability(stnu).controllable).toBe(controllable);
  });

  it.each(networks.filter(({ controllable }) => !controllable))('$name: the cycle is enough', ({ stnu }) => {
    const found = controllability(stnu);
    if (found.controllable) throw new Error('controllable');
    const named = new Set(found.cycle.map(({ kind, index, bound }) => `${kind} ${index} ${bound}`));
    const requirements = stnu.requirements.map(({ from, to, min, max }, r) => ({
      ...{ from, to },
      ...(named.has(`requirement ${r} min`) && { min: min! }),
      ...(named.has(`requirement ${r} max`) && { max: max! }),
    }));
    const contingents = stnu.contingents.filter(
      (_, c) => named.has(`contingent ${c} min`) || named.has(`contingent ${c} max`),
    );
    expect(controllability({ ...stnu, requirements, contingents }).controllable).toBe(false);
    expect(named.size).toBe(found.cycle.length);
  });

  it.each(networks.filter(({ controllable }) => !controllable))(
    '$name: the lengths along the cycle come to less than 0',
    ({ stnu }) => {
      const found = controllability(stnu);
      if (found.controllable) throw new Error('controllable');
      const { sum, surplus } = lengthsAlong(stnu, found.cycle);
      expect(sum).toBeLessThan(0);
      expect(surplus.every((each) => each === 0)).toBe(true);
    },
  );

  /** Magic loops are made so that each link more doubles how often the cycle must go through some side. */
  it.each([
    ['magic-loop-2', 2],
    ['magic-loop-3', 4],
    ['magic-loop-5', 16],
  ])('%s: the cycle goes through some side %i times', (name, times) => {
    const found = controllability(networks.find((each) => each.name === name)!.stnu);
    if (found.controllable) throw new Error('controllable');
    expect(Math.max(...found.cycle.map((side) => side.times))).toBe(times);
  });
});

import { describe, expect, it } from 'vitest';
import { controllability } from '#planner';
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
});

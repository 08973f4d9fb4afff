import { describe, expect, it } from 'vitest';
import { forecast } from './forecast.js';
import { referenceInputs } from './inputs.js';
import { ruleList, stateList } from './rule-list.js';
import { rules } from './rules.js';
import { stateIds, states } from './states.js';

describe('the list of rules', () => {
  it('shows the points of a measure and of a choice', () => {
    const line = (id: string) => ruleList().find(({ rule }) => rule === id);
    expect(line('sodium-lactate')).toEqual({
      rule: 'sodium-lactate',
      acts: expect.arrayContaining(['firm', 'bonds-until']) as unknown,
      reads: 'sodiumLactatePercent',
      table: [
        { value: 0, factor: 1 },
        { value: 1, factor: 0.82 },
        { value: 2, factor: 0.68 },
        { value: 3, factor: 0.6 },
      ],
      sigma: 0.1,
      evidence: { kind: 'common practice' },
    });
    expect(line('mixing')).toMatchObject({
      table: [
        { value: 'blender', factor: 1 },
        { value: 'to-emulsion', factor: 2 },
        { value: 'hand', factor: 4 },
      ],
      evidence: { kind: 'from memory' },
    });
  });

  it('has every rule, in their order', () => {
    expect(ruleList().map(({ rule }) => rule)).toEqual(rules.map(({ id }) => id));
  });

  it('has every state with the base that a forecast starts from', () => {
    expect(stateList().map(({ state }) => state)).toEqual(stateIds);
    for (const { state, baseMin, sigma } of stateList()) {
      expect(forecast(state, referenceInputs)).toMatchObject({ medianMin: baseMin, batchSigma: sigma });
    }
  });

  it('says which pace a state keeps', () => {
    expect(stateList().find(({ state }) => state === 'coat-turnable')).toEqual({
      state: 'coat-turnable',
      clock: 'set',
      pace: 'set',
      baseMin: 600,
      sigma: 0.25,
      evidence: { kind: 'common practice' },
    });
  });

  it('leaves no state of the soap without a rule; what is not soap yet cools and keeps by none, as does cast base', () => {
    const soap = stateIds.filter(
      (state) => !['lye', 'fats', 'paste'].includes(states[state].clock) && state !== 'melt-firm',
    );
    const named = new Set(ruleList().flatMap(({ acts }) => acts));
    expect([...named].sort()).toEqual([...soap].sort());
  });
});

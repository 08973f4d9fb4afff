import { describe, expect, it } from 'vitest';
import { forecast } from './forecast.js';
import { referenceInputs } from './inputs.js';
import { ruleList, stateList } from './rule-list.js';
import { rules } from './rules.js';
import { stateIds } from './states.js';

describe('the list of rules', () => {
  it('shows a measure with its unit and a choice in words', () => {
    const line = (id: string) => ruleList().find(({ rule }) => rule === id);
    expect(line('sodium-lactate')).toEqual({
      rule: 'sodium-lactate',
      acts: expect.arrayContaining(['firm', 'bonds-until']) as unknown,
      reads: 'sodiumLactatePercent',
      table: '0 % ×1, 1 % ×0.82, 2 % ×0.68, 3 % ×0.6',
      sigma: 0.1,
      why: 'Sodium lactate hardens fresh soap, so that it leaves the mould sooner and cleaner.',
      evidence: 'common practice, no source',
    });
    expect(line('mixing')).toMatchObject({
      table: 'blender ×1, by hand ×4',
      evidence: 'from memory',
    });
    expect(line('batter-temperature')?.table).toBe('28 °C ×1.8, 38 °C ×1, 48 °C ×0.55, 58 °C ×0.3');
  });

  it('has every rule with its evidence', () => {
    expect(ruleList().map(({ rule }) => rule)).toEqual(rules.map(({ id }) => id));
    for (const { evidence, rule } of ruleList())
      expect(evidence, rule).toMatch(/common practice|from memory/);
  });

  it('has every state with the base that a forecast starts from', () => {
    expect(stateList().map(({ state }) => state)).toEqual(stateIds);
    for (const { state, baseMin, sigma } of stateList()) {
      expect(forecast(state, referenceInputs)).toMatchObject({ medianMin: baseMin, batchSigma: sigma });
    }
  });

  it('says what a state counts from and which pace it keeps', () => {
    expect(stateList().find(({ state }) => state === 'coat-turnable')).toEqual({
      state: 'coat-turnable',
      title: 'firm enough to turn without marks',
      clock: 'set',
      pace: 'set',
      baseMin: 600,
      sigma: 0.25,
      from: 'from the end of dipping',
      evidence: 'common practice, no source',
    });
  });

  it('leaves no state without a rule', () => {
    const named = new Set(ruleList().flatMap(({ acts }) => acts));
    expect([...named].sort()).toEqual([...stateIds].sort());
  });
});

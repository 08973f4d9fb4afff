import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anyInputs } from '../../tests/support/clock-inputs.js';
import { checkInputs } from './check-inputs.js';
import type { Point } from './engine/factor-at.js';
import { band } from './engine/quantile.js';
import { evaluate } from './evaluate.js';
import { forecast } from './forecast.js';
import { measures, referenceInputs, type ClockInputs, type Measure } from './inputs.js';
import { paceOf, type Pace } from './paces.js';
import { rules } from './rules.js';
import { stateIds, states, type StateId } from './states.js';

fc.configureGlobal({ seed: 1843 });

const anyState = fc.constantFrom(...stateIds);
const anyMeasure = fc.constantFrom(...(Object.keys(measures) as Measure[]));
const given = (state: StateId, inputs: Partial<ClockInputs>) =>
  forecast(state, { ...referenceInputs, ...inputs });

describe('a forecast', () => {
  it('is the base, without reasons, at the reference point', () => {
    for (const state of stateIds) {
      const { baseMin, sigma } = states[state];
      expect(given(state, {})).toEqual({
        state,
        baseMin,
        medianMin: baseMin,
        batchSigma: sigma,
        ...{ ruleSigma: 0, recipeSigma: 0.15, sharedSigma: 0.35 },
        // What is not known of a workshop (0.35) and of a recipe (0.15).
        sigma: expect.closeTo(Math.sqrt(sigma * sigma + 0.35 ** 2 + 0.15 ** 2), 12) as number,
        reasons: [],
        beyond: [],
      });
    }
  });

  /**
   * By hand: 60 h · 1.3 (lye 28 %) · 0.68 (lactate 2 %) = 53.04 h, and
   * σ² = 0.25² + 0.10² + 0.10² = 0.0825 from batch to batch, and 0.0825 + 0.35² + 0.15² = 0.2275 in all.
   */
  it('multiplies the factors, adds the variances and says why', () => {
    const firm = given('firm', { lyeConcentrationPercent: 28, sodiumLactatePercent: 2 });
    expect(firm.medianMin / 60).toBeCloseTo(53.04, 10);
    expect(firm.batchSigma).toBe(0.25);
    expect(firm.ruleSigma).toBeCloseTo(Math.sqrt(0.02), 12);
    expect(firm.recipeSigma).toBeCloseTo(Math.sqrt(0.0425), 12);
    expect(firm.sigma).toBeCloseTo(Math.sqrt(0.2275), 12);
    expect(firm.reasons).toEqual([
      {
        rule: 'lye-on-set',
        ...{ input: 'lyeConcentrationPercent', value: 28, usual: 33 },
        factor: 1.3,
        evidence: { kind: 'common practice' },
      },
      {
        rule: 'sodium-lactate',
        ...{ input: 'sodiumLactatePercent', value: 2, usual: 0 },
        factor: 0.68,
        evidence: { kind: 'common practice' },
      },
    ]);
  });

  it('has the product of its reasons as its likely value, to the last digit', () => {
    fc.assert(
      fc.property(anyState, anyInputs, (state, inputs) => {
        const f = forecast(state, inputs);
        const product = f.reasons.reduce((so, reason) => so * reason.factor, f.baseMin);
        expect(band(f).likely).toBe(product);
        expect(f.medianMin).toBeGreaterThan(0);
      }),
    );
  });

  it('has the very numbers of its evaluation without words', () => {
    fc.assert(
      fc.property(anyState, anyInputs, (state, inputs) => {
        const evaluated = evaluate(state, inputs);
        expect(forecast(state, inputs)).toMatchObject(evaluated);
      }),
    );
  });

  it('gives every reason once, none of them idle, and a σ no less than the base’s', () => {
    fc.assert(
      fc.property(anyState, anyInputs, (state, inputs) => {
        const f = forecast(state, inputs);
        expect(new Set(f.reasons.map((reason) => reason.rule)).size).toBe(f.reasons.length);
        expect(f.reasons.filter((reason) => reason.factor === 1)).toEqual([]);
        expect(f.batchSigma).toBeGreaterThanOrEqual(states[state].sigma);
        expect(f.sigma).toBeGreaterThan(f.batchSigma);
        const { low, likely, high } = band(f);
        expect(low < likely && likely < high).toBe(true);
      }),
    );
  });

  it('holds the factor beyond a table, says so and widens the band', () => {
    const edge = given('firm', { sodiumLactatePercent: 3 });
    const past = given('firm', { sodiumLactatePercent: 4 });
    expect(edge.beyond).toEqual([]);
    expect(past.medianMin).toBe(edge.medianMin);
    expect(past.beyond).toEqual([
      {
        rule: 'sodium-lactate',
        input: 'sodiumLactatePercent',
        value: 4,
        side: 'above',
        from: 0,
        to: 3,
        factor: 0.6,
      },
    ]);
    // By hand: (2 · 0.10)² = 0.04 instead of 0.10² = 0.0725.
    expect(past.ruleSigma).toBeCloseTo(0.2, 12);
  });

  it('widens the band beyond a table whose end is no 1', () => {
    const light = given('light-trace', { castorPercent: 40 });
    expect(light.beyond).toEqual([
      { rule: 'castor', input: 'castorPercent', value: 40, side: 'above', from: 0, to: 30, factor: 0.8 },
    ]);
    expect(light.ruleSigma).toBeGreaterThan(given('light-trace', { castorPercent: 30 }).ruleSigma);
  });

  it('refuses inputs that were not checked', () => {
    expect(() => given('firm', { lyeConcentrationPercent: 60 })).toThrow(
      'clocks.out-of-range at lyeConcentrationPercent',
    );
  });
});

describe('forecasts together', () => {
  const inOrder: readonly (readonly [StateId, StateId])[] = [
    ['emulsion', 'light-trace'],
    ['light-trace', 'medium-trace'],
    ['medium-trace', 'thick-trace'],
    ['thick-trace', 'stiff'],
    ['holds-layer', 'skinned'],
    ['skinned', 'bonds-until'],
    ['skinned', 'ash-safe'],
    ['holds-layer', 'bonds-until'],
    ['patchable', 'firm'],
    ['firm', 'pliable-until'],
    ['pliable-until', 'handled'],
    ['cuttable', 'cuttable-until'],
    ['coat-tacky-until', 'coat-turnable'],
    ['piping-skinned', 'piping-firm'],
    ['piping-firm', 'piping-turnable'],
    ['glaze-set', 'glaze-turnable'],
    ['usable', 'cured'],
    ['cured', 'best'],
  ];

  it('come in the order in which soap passes through its states, whatever the batch', () => {
    fc.assert(
      fc.property(fc.constantFrom(...inOrder), anyInputs, ([first, then], inputs) => {
        expect(forecast(first, inputs).medianMin).toBeLessThan(forecast(then, inputs).medianMin);
      }),
      { numRuns: 2000 },
    );
  });

  /** Which way makers say each goes (common practice, no source). */
  const direction: Readonly<Record<Measure, 'sooner' | 'later'>> = {
    lyeConcentrationPercent: 'sooner',
    sodiumLactatePercent: 'sooner',
    saltPercent: 'sooner',
    sugarPercent: 'sooner',
    clayPercent: 'sooner',
    alcoholPercent: 'sooner',
    superfatPercent: 'later',
    kohSharePercent: 'later',
    hardFattyAcidsPercent: 'sooner',
    oleicPercent: 'later',
    polyunsaturatedPercent: 'later',
    castorPercent: 'sooner',
    buttersPercent: 'sooner',
    olivePomacePercent: 'sooner',
    lardPercent: 'later',
    freeAcidsPercent: 'sooner',
    waxPercent: 'sooner',
    batterTemperatureC: 'sooner',
    roomTemperatureC: 'sooner',
    roomHumidityPercent: 'later',
    castMl: 'sooner',
    pieceMl: 'later',
    coatMm: 'later',
    beadMm: 'later',
    meltMl: 'later',
    gelPercent: 'sooner',
    hardGelPercent: 'sooner',
    hotHours: 'later',
  };
  /** What goes the other way for some paces: melt-and-pour only cools, and castor oil that hurries the batter is slow to harden. */
  const otherwise: Partial<Readonly<Record<Measure, Pace>>> = {
    roomTemperatureC: 'glaze',
    castorPercent: 'cure',
  };

  it('move one way with every measure', () => {
    fc.assert(
      fc.property(anyState, anyMeasure, anyInputs, anyInputs, (state, key, inputs, other) => {
        const moved = { ...inputs, [key]: other[key] };
        fc.pre(checkInputs(moved).length === 0);
        const [small, large] = moved[key] < inputs[key] ? [moved, inputs] : [inputs, moved];
        // Gel hurries the soap, but where it would be firm while it is hot jelly it has to cool first.
        fc.pre(!forecast(state, large).reasons.some(({ rule }) => rule === 'gel-cools'));
        const change = forecast(state, large).medianMin / forecast(state, small).medianMin;
        const delays = direction[key] === 'later' || paceOf[state] === otherwise[key];
        if (delays) expect(change).toBeGreaterThanOrEqual(1 - 1e-12);
        else expect(change).toBeLessThanOrEqual(1 + 1e-12);
      }),
      { numRuns: 3000 },
    );
  });
});

describe('the rules', () => {
  it('have names of their own', () => {
    expect(new Set(rules.map((rule) => rule.id)).size).toBe(rules.length);
  });

  it('never read the same quantity twice for one state, which would count it twice', () => {
    // Rules of one choice, such as those of fragrances, are each about choices of their own.
    const readings = rules.flatMap(({ acts, reads, table }) => {
      const about = Array.isArray(table)
        ? ['']
        : Object.entries<number>(table as Record<string, number>).flatMap(([choice, factor]) =>
            factor === 1 ? [] : [choice],
          );
      return acts.flatMap((state) => about.map((choice) => `${state} ${reads} ${choice}`));
    });
    expect(new Set(readings).size).toBe(readings.length);
  });

  it('have tables in order that do not turn, with factors above 0', () => {
    for (const { id, table } of rules) {
      const points: Point[] = Array.isArray(table) ? [...(table as readonly Point[])] : [];
      const factors =
        points.length > 0
          ? points.map(([, factor]) => factor)
          : Object.values<number>(table as Record<string, number>);
      expect(Math.min(...factors), id).toBeGreaterThan(0);
      const steps = points.slice(1).map(([x, factor], i) => {
        const [before, was] = points[i] ?? [NaN, NaN];
        expect(x, id).toBeGreaterThan(before);
        return Math.sign(factor - was);
      });
      expect(steps.includes(1) && steps.includes(-1), id).toBe(false);
    }
  });
});

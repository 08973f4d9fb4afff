import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { castLoaf as loaf, castPiece as usual } from '../../../tests/support/cast-pieces.js';
import { heatBalance, heatCurve } from './heat-balance.js';
import type { PieceHeatInputs } from './piece-heat.js';

fc.configureGlobal({ seed: 1843 });

const given = (inputs: Partial<PieceHeatInputs>, of = usual) => heatBalance({ ...of, ...inputs });

/** Common practice, no source, all of it. */
describe('what makers see', () => {
  it('a 20 mL piece in silicone stays as it is', () => {
    expect(given({ volumeMl: 20 }).gelShare).toBeLessThan(0.01);
    expect(given({ volumeMl: 100 }).gelShare).toBeLessThan(0.05);
  });

  it('a loaf of 1.2 L in wood gels, surely where it is wrapped, seldom in the refrigerator', () => {
    const { gel } = given({}, loaf);
    expect(gel.whole + gel.part).toBeGreaterThan(0.8);
    expect(given({ kept: 'wrapped' }, loaf).gel.whole).toBeGreaterThan(0.95);
    expect(given({ kept: 'chilled' }, loaf).gelShare).toBeLessThan(0.3);
  });

  it('a loaf turns to gel after one to four hours at 60 to 80 °C, and is cool enough after four to twelve', () => {
    const { hottestC, hottestMin, cooledMin } = given({}, loaf);
    expect(hottestC.likely).toBeGreaterThan(60);
    expect(hottestC.likely).toBeLessThan(82);
    expect(hottestMin / 60).toBeGreaterThan(1);
    expect(hottestMin / 60).toBeLessThan(4);
    expect(cooledMin / 60).toBeGreaterThan(4);
    expect(cooledMin / 60).toBeLessThan(12);
  });

  it('a gelled middle alone comes with an open loaf sooner than with a wrapped one', () => {
    expect(given({ kept: 'open' }, loaf).gel.part).toBeGreaterThan(0.15);
    expect(given({ kept: 'wrapped' }, loaf).gel.part).toBeLessThan(0.05);
  });

  it('35 kg in one block overheat, and a loaf does not', () => {
    expect(given({ volumeMl: 34_000, batterTemperatureC: 45 }, loaf).overheats).toBeGreaterThan(0.8);
    expect(given({ volumeMl: 34_000 }, loaf).overheats).toBeGreaterThan(0.5);
    expect(given({}, loaf).overheats).toBeLessThan(0.1);
  });

  it('sugar and a quick batter bring it nearer, and wet soap gels at less', () => {
    expect(given({ sugarPercent: 3 }, loaf).overheats).toBeGreaterThan(2 * given({}, loaf).overheats);
    const cool = { ...loaf, batterTemperatureC: 30 };
    expect(given({ pace: 1.5 }, cool).gelShare).toBeGreaterThan(given({}, cool).gelShare + 0.1);
    const wet = { ...usual.make, lyePercent: 28, fatsShare: 0.65, lyeShare: 0.33 };
    expect(given({ make: wet }, cool).gelC).toBeLessThan(given({}, cool).gelC - 5);
  });
});

describe('the balance', () => {
  const any = fc.record({
    volumeMl: fc.double({ min: 0.1, max: 50_000, noNaN: true }),
    mould: fc.constantFrom('silicone-cavity', 'lined-wood', 'lined-carton', 'rigid-plastic'),
    kept: fc.constantFrom('open', 'covered', 'wrapped', 'chilled'),
    batterTemperatureC: fc.integer({ min: 15, max: 90 }),
    roomTemperatureC: fc.integer({ min: 5, max: 35 }),
    lyePercent: fc.integer({ min: 20, max: 50 }),
    pace: fc.double({ min: 0.5, max: 2, noNaN: true }),
    sugarPercent: fc.integer({ min: 0, max: 20 }),
  });
  type Any = typeof any extends fc.Arbitrary<infer T> ? T : never;
  const of = ({ lyePercent, ...rest }: Any) =>
    heatBalance({ ...usual, ...rest, make: { ...usual.make, lyePercent } });

  it('is a balance of chances at any size and temperature', () => {
    fc.assert(
      fc.property(any, (inputs) => {
        const { gel, gelShare, overheats, hottestC, cooledMin } = of(inputs);
        expect(gel.whole + gel.part + gel.none).toBeCloseTo(1, 12);
        for (const chance of [gel.whole, gel.part, gel.none, gelShare, overheats]) {
          expect(chance).toBeGreaterThanOrEqual(-1e-12);
          expect(chance).toBeLessThanOrEqual(1 + 1e-12);
        }
        expect(hottestC.low).toBeLessThanOrEqual(hottestC.high);
        expect(cooledMin).toBeGreaterThanOrEqual(0);
        expect(cooledMin).toBeLessThanOrEqual(14 * 1440);
      }),
      { numRuns: 60 },
    );
  });

  it('has more gel and heat in what is larger, warmer, in a warmer room, quicker, sweeter or better wrapped', () => {
    const moreOf: readonly ((inputs: Any) => Any)[] = [
      (inputs) => ({ ...inputs, volumeMl: 1.5 * inputs.volumeMl }),
      (inputs) => ({ ...inputs, batterTemperatureC: inputs.batterTemperatureC + 4 }),
      (inputs) => ({ ...inputs, roomTemperatureC: inputs.roomTemperatureC + 4 }),
      (inputs) => ({ ...inputs, pace: 1.2 * inputs.pace }),
      (inputs) => ({ ...inputs, sugarPercent: Math.min(5, inputs.sugarPercent + 2) }),
      (inputs) => ({ ...inputs, kept: 'wrapped' as const }),
    ];
    fc.assert(
      fc.property(any, fc.constantFrom(...moreOf), (inputs, more) => {
        const [less, now] = [of({ ...inputs, sugarPercent: 0 }), of(more({ ...inputs, sugarPercent: 0 }))];
        expect(now.gelShare).toBeGreaterThanOrEqual(less.gelShare - 0.01);
        expect(now.overheats).toBeGreaterThanOrEqual(less.overheats - 0.01);
      }),
      { numRuns: 120 },
    );
  });

  it('moves by little where its inputs do', () => {
    for (let volumeMl = 100; volumeMl < 5000; volumeMl *= 1.1) {
      const change = given({ volumeMl: 1.01 * volumeMl }, loaf).gelShare - given({ volumeMl }, loaf).gelShare;
      expect(Math.abs(change)).toBeLessThan(0.03);
    }
  });

  it('refuses what has no size', () => {
    for (const volumeMl of [0, -1, NaN, Infinity]) expect(() => given({ volumeMl })).toThrow(RangeError);
    expect(() => given({ pace: 0 })).toThrow(RangeError);
  });

  it('has a curve of few points, in order, up to its hottest and down to where it can be handled', () => {
    const curve = heatCurve(loaf);
    expect(curve.length).toBeLessThan(100);
    expect(curve[0]).toEqual({ min: 0, middleC: 38, edgeC: 38 });
    expect(curve.at(-1)?.middleC).toBeLessThan(40);
    expect(Math.max(...curve.map(({ middleC }) => middleC))).toBeCloseTo(
      given({}, loaf).hottestC.likely,
      -0.5,
    );
    for (const [i, { min, middleC, edgeC }] of curve.entries()) {
      expect(min).toBeGreaterThan(curve[i - 1]?.min ?? -1);
      expect(edgeC).toBeLessThanOrEqual(middleC + 0.1);
    }
  });
});

import { describe, expect, it } from 'vitest';
import { beadMl, coatMl, weighedMl } from './amount-per-piece.js';

describe('the amount per piece', () => {
  /** Check: the shell between two cubes, to first order in a thin coat; 6 · 5² = 150 cm². */
  it('of a coat is its area times its thickness', () => {
    const thicknessMm = 0.01;
    const shell = (5 + (2 * thicknessMm) / 10) ** 3 - 5 ** 3;
    expect(coatMl({ areaCm2: 150, thicknessMm }) / shell).toBeCloseTo(1, 3);
    expect(coatMl({ areaCm2: 150, thicknessMm: 2 })).toBeCloseTo(30, 12);
  });

  /** Check: a stack of discs, each a sum of strips across a circle. */
  it('of a round bead is that of a cylinder', () => {
    const [lengthMm, widthMm, strips] = [300, 8, 20_000];
    let section = 0;
    for (let i = 0; i < strips; i += 1) {
      const x = ((i + 0.5) / strips - 0.5) * widthMm;
      section += 2 * Math.sqrt((widthMm / 2) ** 2 - x * x) * (widthMm / strips);
    }
    expect(beadMl({ lengthMm, widthMm })).toBeCloseTo((lengthMm * section) / 1000, 4);
    expect(beadMl({ lengthMm, sectionMm2: section })).toBeCloseTo(beadMl({ lengthMm, widthMm }), 4);
  });

  it('weighed is its mass over its density', () => {
    expect(weighedMl(105, 1.05)).toBeCloseTo(100, 12);
  });

  it('refuses sizes that nothing has', () => {
    expect(() => coatMl({ areaCm2: 0, thicknessMm: 1 })).toThrow(RangeError);
    expect(() => coatMl({ areaCm2: 1, thicknessMm: -1 })).toThrow(RangeError);
    expect(() => beadMl({ lengthMm: NaN, widthMm: 1 })).toThrow(RangeError);
    expect(() => beadMl({ lengthMm: 1, widthMm: 0 })).toThrow(RangeError);
    expect(() => beadMl({ lengthMm: 1, sectionMm2: 0 })).toThrow(RangeError);
    expect(() => weighedMl(1, 0)).toThrow(/densityGPerMl is 0; accepted: a finite number above 0/);
    expect(() => weighedMl(Infinity, 1)).toThrow(RangeError);
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { kohDensity, lyeDensity, lyeSolutionDensity } from '#chemistry';

fc.configureGlobal({ seed: 1 });

const strength = fc.double({ min: 16, max: 50, noNaN: true });
const heat = fc.double({ min: 20, max: 80, noNaN: true });
const share = fc.double({ min: 0, max: 1, noNaN: true });

describe('kohDensity', () => {
  it('rises with strength and falls with heat', () => {
    const step = fc.double({ min: 0.01, max: 1, noNaN: true });
    fc.assert(
      fc.property(strength, heat, step, (c, t, by) => {
        expect(kohDensity(c + by, t)).toBeGreaterThan(kohDensity(c, t));
        expect(kohDensity(c, t + by)).toBeLessThan(kohDensity(c, t));
      }),
    );
  });

  it('is told from pure water up to the strongest and the hottest lye that was measured', () => {
    expect(kohDensity(0, 20)).toBeCloseTo(0.9982, 4);
    expect(kohDensity(51.86, 4)).toBeGreaterThan(kohDensity(51.86, 95));
    expect(() => kohDensity(52, 20)).toThrow('52 % KOH; accepted: 0 to 51.86 % KOH');
    expect(() => kohDensity(30, 96)).toThrow('96 °C; accepted: 4 to 95 °C');
  });

  it.each([
    [-0.1, 20],
    [51.9, 20],
    [33, 3.9],
    [33, 95.1],
    [NaN, 20],
  ])('refuses %d %% at %d °C', (c, t) => {
    expect(() => kohDensity(c, t)).toThrow(RangeError);
  });
});

describe('lyeSolutionDensity', () => {
  it('is that of the one alkali when there is no other', () => {
    fc.assert(
      fc.property(strength, heat, (c, t) => {
        const waterG = 100 - c;
        expect(lyeSolutionDensity({ naohG: c, kohG: 0, waterG }, t)).toBeCloseTo(lyeDensity(c, t), 3);
        expect(lyeSolutionDensity({ naohG: 0, kohG: c, waterG }, t)).toBeCloseTo(kohDensity(c, t), 3);
      }),
    );
  });

  it('lies between the two, nearer to the one there is more of', () => {
    fc.assert(
      fc.property(strength, heat, share, share, (c, t, a, b) => {
        const at = (s: number): number =>
          lyeSolutionDensity({ naohG: c * (1 - s), kohG: c * s, waterG: 100 - c }, t);
        const [naoh, koh] = [lyeDensity(c, t), kohDensity(c, t)];
        expect(at(a)).toBeLessThanOrEqual(Math.max(naoh, koh) + 1e-9);
        expect(at(a)).toBeGreaterThanOrEqual(Math.min(naoh, koh) - 1e-9);
        expect((at(a) - at(b)) * (a - b) * (koh - naoh)).toBeGreaterThanOrEqual(-1e-12);
      }),
    );
  });

  it('does not depend on the size of the batch', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 1000, noNaN: true }), (k) => {
        const one = lyeSolutionDensity({ naohG: 60, kohG: 90, waterG: 300 }, 40);
        expect(lyeSolutionDensity({ naohG: 60 * k, kohG: 90 * k, waterG: 300 * k }, 40)).toBeCloseTo(one, 10);
      }),
    );
  });

  it('takes the strongest and the weakest lye, however the division rounds', () => {
    const amount = fc.double({ min: 1, max: 1000, noNaN: true });
    fc.assert(
      fc.property(amount, share, (alkaliG, s) => {
        const alkalis = { naohG: alkaliG * (1 - s), kohG: alkaliG * s };
        expect(lyeSolutionDensity({ ...alkalis, waterG: alkaliG }, 40)).toBeGreaterThan(1.49);
        expect(lyeSolutionDensity({ ...alkalis, waterG: (alkaliG / 16) * 84 }, 40)).toBeLessThan(1.17);
      }),
    );
  });

  it('says whether it is an amount that cannot be, or a strength', () => {
    const lye = (waterG: number) => () => lyeSolutionDensity({ naohG: 20, kohG: 20, waterG }, 40);
    expect(lye(-1)).toThrow('20 g NaOH, 20 g KOH, -1 g water; accepted: 0 g or more of each');
    expect(lye(0)).toThrow('100 % NaOH; accepted: 16 to 50 % NaOH');
  });

  it.each([
    [{ naohG: 0, kohG: 0, waterG: 100 }, 40],
    [{ naohG: 0, kohG: 0, waterG: 0 }, 40],
    [{ naohG: -1, kohG: 40, waterG: 60 }, 40],
    [{ naohG: 40, kohG: -1, waterG: 60 }, 40],
    [{ naohG: 400, kohG: 0, waterG: -1 }, 40],
    [{ naohG: NaN, kohG: 20, waterG: 60 }, 40],
    [{ naohG: 30, kohG: 30, waterG: 40 }, 40],
    [{ naohG: 20, kohG: 20, waterG: 60 }, 19],
    [{ naohG: 20, kohG: 20, waterG: 60 }, 81],
  ])('refuses %o at %d °C', (solution, t) => {
    expect(() => lyeSolutionDensity(solution, t)).toThrow(RangeError);
  });
});

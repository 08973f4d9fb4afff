import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { describeUse, learnUse, priorUse, type PieceUse } from './piece-use.js';

fc.configureGlobal({ seed: 1889 });

const expected = fc.record({
  meanMl: fc.double({ min: 0.05, max: 5000, noNaN: true }),
  spreadPercent: fc.double({ min: 0.1, max: 50, noNaN: true }),
  meanUncertaintyPercent: fc.double({ min: 0.1, max: 50, noNaN: true }),
});
const weighing = fc.record({
  pieces: fc.integer({ min: 1, max: 200 }),
  usedMl: fc.double({ min: 0.1, max: 9000, noNaN: true }),
});

function expectSame(a: PieceUse, b: PieceUse): void {
  for (const field of ['meanMl', 'pieces', 'shape', 'scale'] as const) {
    expect(Math.abs(a[field] / b[field] - 1)).toBeLessThan(1e-9);
  }
}

describe('what a piece takes', () => {
  it('starts from what the maker expects, on paper', () => {
    // κ = (6/3)² = 4, α = 10/2, β = 5 · (0.06 · 20)² = 7.2
    const use = priorUse({ meanMl: 20, spreadPercent: 6, meanUncertaintyPercent: 3 });
    expect(use.pieces).toBeCloseTo(4, 12);
    expect(use.shape).toBe(5);
    expect(use.scale).toBeCloseTo(7.2, 12);
    // Six pieces took 126 mL: m̄ = 21, μ = (4·20 + 6·21)/10 = 20.6, β = 7.2 + 4·6·1²/(2·10) = 8.4
    const learnt = learnUse(use, [{ pieces: 6, usedMl: 126 }]);
    expect(learnt.meanMl).toBeCloseTo(20.6, 12);
    expect(learnt.pieces).toBeCloseTo(10, 12);
    expect(learnt.shape).toBe(5.5);
    expect(learnt.scale).toBeCloseTo(8.4, 12);
  });

  it('counts the pieces of one day for less where days differ, on paper', () => {
    // r = 6/6 = 1, so six pieces of one day count for 1 / (1/6 + 1) = 6/7 of a piece, and κ = 4.
    const prior = priorUse({ meanMl: 20, spreadPercent: 6, meanUncertaintyPercent: 3, dayPercent: 6 });
    expect(prior.dayRatio).toBeCloseTo(1, 12);
    const learnt = learnUse(prior, [{ pieces: 6, usedMl: 126 }]);
    expect(learnt.pieces).toBeCloseTo(4 + 6 / 7, 12);
    expect(learnt.meanMl).toBeCloseTo(20 + 6 / 7 / (4 + 6 / 7), 12);
    expect(learnt.dayRatio).toBe(prior.dayRatio);
  });

  it('may differ from day to day by as much as the mean, and says what else it may', () => {
    const foam = { meanMl: 20, spreadPercent: 10, meanUncertaintyPercent: 3 };
    expect(priorUse({ ...foam, dayPercent: 100 }).dayRatio).toBeCloseTo(10, 12);
    for (const dayPercent of [-0.1, 100.1, NaN]) {
      expect(() => priorUse({ ...foam, dayPercent })).toThrow(
        `dayPercent is ${String(dayPercent)}; accepted: 0 to 100 %`,
      );
    }
  });

  it('is described in the terms it was stated in', () => {
    fc.assert(
      fc.property(expected, (stated) => {
        const said = describeUse(priorUse(stated));
        expect(said.meanMl).toBe(stated.meanMl);
        expect(said.spreadPercent / stated.spreadPercent).toBeCloseTo(1, 10);
        expect(said.meanUncertaintyPercent / stated.meanUncertaintyPercent).toBeCloseTo(1, 10);
      }),
    );
  });

  it('is learnt alike one by one, together and in any order', () => {
    fc.assert(
      fc.property(expected, fc.array(weighing, { minLength: 2, maxLength: 8 }), (stated, weighings) => {
        const prior = priorUse(stated);
        const together = learnUse(prior, weighings);
        expectSame(
          weighings.reduce((use, one) => learnUse(use, [one]), prior),
          together,
        );
        expectSame(learnUse(prior, weighings.toReversed()), together);
      }),
    );
  });

  it('is learnt alike from weighings of as many pieces one by one, and from their mean and squares', () => {
    const grams = fc.array(fc.double({ min: 0.1, max: 9000, noNaN: true }), { minLength: 1, maxLength: 30 });
    fc.assert(
      fc.property(expected, fc.integer({ min: 1, max: 200 }), grams, (stated, pieces, used) => {
        const prior = priorUse({ ...stated, dayPercent: 3 });
        const usedMl = used.reduce((sum, each) => sum + each, 0) / used.length;
        const squares = used.reduce((sum, each) => sum + (each - usedMl) ** 2, 0);
        expectSame(
          learnUse(prior, [{ pieces, usedMl, times: used.length, squares }]),
          learnUse(
            prior,
            used.map((each) => ({ pieces, usedMl: each })),
          ),
        );
      }),
    );
  });

  it('moves its mean alike for pieces weighed together or singly, but learns the spread from single ones', () => {
    fc.assert(
      fc.property(expected, weighing, (stated, { pieces, usedMl }) => {
        const prior = priorUse(stated);
        const group = learnUse(prior, [{ pieces, usedMl }]);
        const single = { pieces: 1, usedMl: usedMl / pieces };
        const singly = learnUse(
          prior,
          Array.from({ length: pieces }, () => single),
        );
        expect(group.meanMl / singly.meanMl).toBeCloseTo(1, 9);
        expect(group.pieces / singly.pieces).toBeCloseTo(1, 9);
        expect(singly.shape - group.shape).toBeCloseTo((pieces - 1) / 2, 9);
      }),
    );
  });

  it('is known better after weighings that agree with it, and is left alone by none', () => {
    fc.assert(
      fc.property(expected, fc.integer({ min: 1, max: 50 }), (stated, pieces) => {
        const prior = priorUse(stated);
        const after = describeUse(learnUse(prior, [{ pieces, usedMl: pieces * stated.meanMl }]));
        expect(after.meanMl / stated.meanMl).toBeCloseTo(1, 12);
        expect(after.meanUncertaintyPercent).toBeLessThan(stated.meanUncertaintyPercent);
        expect(learnUse(prior, [])).toEqual(prior);
      }),
    );
  });

  it('does not depend on the unit of volume', () => {
    fc.assert(
      fc.property(expected, weighing, (stated, { pieces, usedMl }) => {
        const inMl = describeUse(learnUse(priorUse(stated), [{ pieces, usedMl }]));
        const inLitres = describeUse(
          learnUse(priorUse({ ...stated, meanMl: stated.meanMl / 1000 }), [
            { pieces, usedMl: usedMl / 1000 },
          ]),
        );
        expect((inLitres.meanMl * 1000) / inMl.meanMl).toBeCloseTo(1, 9);
        expect(inLitres.spreadPercent / inMl.spreadPercent).toBeCloseTo(1, 9);
      }),
    );
  });

  it('gives in to many weighings and stays put when it is sure', () => {
    const unsure = priorUse({ meanMl: 10, spreadPercent: 0.1, meanUncertaintyPercent: 50 });
    expect(learnUse(unsure, [{ pieces: 24, usedMl: 360 }]).meanMl).toBeCloseTo(15, 3);
    const sure = priorUse({ meanMl: 10, spreadPercent: 50, meanUncertaintyPercent: 0.1 });
    expect(learnUse(sure, [{ pieces: 24, usedMl: 360 }]).meanMl).toBeCloseTo(10, 2);
  });

  it.each([
    { meanMl: 0, spreadPercent: 5, meanUncertaintyPercent: 5 },
    { meanMl: Infinity, spreadPercent: 5, meanUncertaintyPercent: 5 },
    { meanMl: 10, spreadPercent: 0, meanUncertaintyPercent: 5 },
    { meanMl: 10, spreadPercent: 101, meanUncertaintyPercent: 5 },
    { meanMl: 10, spreadPercent: 5, meanUncertaintyPercent: 0 },
    { meanMl: 10, spreadPercent: 5, meanUncertaintyPercent: NaN },
  ])('refuses to expect %o', (stated) => {
    expect(() => priorUse(stated)).toThrow(RangeError);
  });

  it.each([
    { pieces: 0, usedMl: 10 },
    { pieces: 1.5, usedMl: 10 },
    { pieces: 2, usedMl: 0 },
    { pieces: 2, usedMl: NaN },
    { pieces: 2, usedMl: 20, times: 0 },
    { pieces: 2, usedMl: 20, times: 2, squares: -1 },
  ])('refuses to learn from %o', (wrong) => {
    const use = priorUse({ meanMl: 10, spreadPercent: 5, meanUncertaintyPercent: 5 });
    expect(() => learnUse(use, [wrong])).toThrow(RangeError);
  });
});

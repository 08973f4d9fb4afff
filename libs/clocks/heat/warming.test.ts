import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { castLoaf as loaf, castPiece as usual } from '../../../tests/support/cast-pieces.js';
import { pieceOf, type Piece } from './piece-heat.js';
import { warm, type WarmingPoint } from './warming.js';

fc.configureGlobal({ seed: 1843 });

/** W/(m K), as the code has it: what a batter conducts is from memory, and only its effect is tested here. */
const CONDUCTIVITY = 0.3;
const SMALL_K = 0.1;

/** Nothing reacts any more: it only cools. */
const inert = (piece: Piece): Piece => ({ ...piece, ownRiseK: 0 });

function curveOf(piece: Piece, stepK?: number): WarmingPoint[] {
  const points: WarmingPoint[] = [];
  warm(piece, (point) => points.push(point), stepK);
  return points;
}

/**
 * A sphere that cools in a medium: θ = Σ 4 (sin ζ − ζ cos ζ) / (2 ζ − sin 2ζ) · exp(−ζ² Fo) · sin(ζ r) / (ζ r) over the roots of
 * 1 − ζ cot ζ = Bi (Carslaw and Jaeger, Conduction of Heat in Solids, ch. 9; from memory), averaged over the shell from r = a to b:
 * ∫ sin(ζ r) r dr / ζ = [sin(ζ r) − ζ r cos(ζ r)] / ζ³, times 3 / (b³ − a³).
 */
function sphere(biot: number): (fourier: number, shell: readonly [number, number]) => number {
  const roots = Array.from({ length: 30 }, (_, n) => {
    let [low, high] = [n * Math.PI + 1e-12, (n + 1) * Math.PI - 1e-12];
    for (let step = 0; step < 60; step++) {
      const middle = (low + high) / 2;
      if (1 - middle / Math.tan(middle) < biot) low = middle;
      else high = middle;
    }
    return low;
  });
  return (fourier, [a, b]) =>
    roots.reduce((theta, zeta) => {
      const first = (4 * (Math.sin(zeta) - zeta * Math.cos(zeta))) / (2 * zeta - Math.sin(2 * zeta));
      const within = (r: number): number => Math.sin(zeta * r) - zeta * r * Math.cos(zeta * r);
      const shape = (3 * (within(b) - within(a))) / (zeta ** 3 * (b ** 3 - a ** 3));
      return theta + first * Math.exp(-(zeta ** 2) * fourier) * shape;
    }, 0);
}

describe('a piece in which nothing reacts', () => {
  it.each([
    ['a bar in still air', { ...usual, volumeMl: 100 }],
    ['a loaf in wood', loaf],
    ['a block in a draught', { ...usual, volumeMl: 8000 }],
  ])('cools as the series for a sphere has it: %s', (_, inputs) => {
    const piece = inert(pieceOf({ ...inputs, batterTemperatureC: 75 }));
    const { radiusM, heatPerM3K, lossWPerM2K } = piece;
    const theta = sphere((lossWPerM2K * radiusM) / CONDUCTIVITY);
    const points = curveOf(piece, SMALL_K);
    expect(points.length).toBeGreaterThan(100);
    for (const { min, middleC, edgeC } of points.filter((_point, i) => i % 40 === 39)) {
      const fourier = (CONDUCTIVITY * min * 60) / heatPerM3K / radiusM ** 2;
      const at = (shell: readonly [number, number]): number => 20 + 55 * theta(fourier, shell);
      expect(Math.abs(middleC - at([0, 1 / 6]))).toBeLessThan(1);
      expect(Math.abs(edgeC - at([5 / 6, 1]))).toBeLessThan(1);
    }
  });

  /** A drop whose surface is all that holds the heat back: Bi near 0, and θ = exp(−3 h t / (ρ c r)). */
  it('is Newton’s law of cooling where only the air holds the heat back', () => {
    const piece = { ...inert(pieceOf({ ...usual, volumeMl: 1, batterTemperatureC: 60 })), lossWPerM2K: 1 };
    const { radiusM, heatPerM3K } = piece;
    const timeConstantMin = (heatPerM3K * radiusM) / 3 / 60;
    const far = curveOf(piece, SMALL_K).map(({ min, middleC }) =>
      Math.abs(middleC - (20 + 40 * Math.exp(-min / timeConstantMin))),
    );
    expect(far.length).toBeGreaterThan(100);
    expect(Math.max(...far)).toBeLessThan(0.3);
    expect(warm(piece).cooledMin / (timeConstantMin * Math.LN2)).toBeCloseTo(1, 1);
  });

  it('is hottest when it is poured, and never warmer than that', () => {
    const { highestC, hottestMin } = warm(inert(pieceOf({ ...loaf, batterTemperatureC: 60 })));
    expect(highestC).toEqual([60, 60, 60, 60, 60, 60]);
    expect(hottestMin).toBe(0);
  });

  it('has cooled at once where it never was too hot, and never where the room is', () => {
    expect(warm(inert(pieceOf({ ...loaf, batterTemperatureC: 39 }))).cooledMin).toBe(0);
    expect(warm(inert(pieceOf({ ...loaf, batterTemperatureC: 41 }))).cooledMin).toBeGreaterThan(0);
    const oven = inert(pieceOf({ ...loaf, batterTemperatureC: 60, roomTemperatureC: 50 }));
    expect(warm(oven).cooledMin).toBe(14 * 24 * 60);
  });
});

describe('a piece that loses nothing', () => {
  /** Energy in is energy kept: what it had and its own heat, to the last tenth that is not yet made when the curve ends. */
  it.each([20, 38, 45])('ends up by its own rise above %d °C, in the middle as at the edge', (startC) => {
    const piece = { ...pieceOf({ ...usual, batterTemperatureC: startC }), lossWPerM2K: 0 };
    const { highestC } = warm(piece);
    for (const each of highestC) expect(Math.abs(each - startC - piece.ownRiseK)).toBeLessThan(0.2);
  });

  /** dX/dt = k (X + x₀)(1 − X) at one temperature: half is made after ln((½ + x₀) / (½ x₀)) / (k (1 + x₀)) = 1.472 h at 40 °C. */
  it('has half of its heat by the law of the reaction', () => {
    // So little heat that it stays at 40 °C.
    const piece = { ...pieceOf({ ...usual, batterTemperatureC: 40 }), lossWPerM2K: 0, ownRiseK: 0.01 };
    const half = curveOf(piece, 1e-4).find(({ middleC }) => middleC >= 40.005);
    expect((half?.min ?? NaN) / 60).toBeCloseTo(1.472, 1);
    const quick = curveOf({ ...piece, pace: 2 }, 1e-4).find(({ middleC }) => middleC >= 40.005);
    expect((half?.min ?? NaN) / (quick?.min ?? NaN)).toBeCloseTo(2, 1);
  });

  it('does not get hotter than water boils', () => {
    const hot = warm(pieceOf({ ...loaf, batterTemperatureC: 75 }));
    expect(hot.highestC[0]).toBe(102);
    // It is as hot as it gets when it begins to boil, not when it ends.
    expect(hot.hottestMin).toBeLessThan(30);
    expect(hot.cooledMin).toBeGreaterThan(180);
  });
});

/**
 * 0.69 · 195 J/g of fats over 0.69 · 2.04 + 0.29 · 3.51 + 0.02 · 0.95 = 2.45 J/(g K): 55 K. Three moles of acid neutralised, 56 kJ
 * each, for 880 g of fat make 190 J/g; handbooks tell up to 270, which would be 76 K.
 */
it('has a rise of its own between neutralisation and handbooks', () => {
  const rise = pieceOf(usual).ownRiseK;
  expect(rise).toBeGreaterThan((0.69 * 190) / 2.45 - 0.5);
  expect(rise).toBeLessThan((0.69 * 270) / 2.45);
});

/** The same by plain small steps, explicit and with one layer: a piece so small that it is as warm everywhere. */
it('warms as one lump does, worked out in steps of a second', () => {
  const piece = {
    ...pieceOf({ ...usual, volumeMl: 2, batterTemperatureC: 45, pace: 3 }),
    lossWPerM2K: 0.6,
  };
  let [lumpC, made, highestC] = [45, 0, 45];
  for (let s = 0; s < 10 * 3600; s++) {
    const perS = (3 * 2 * Math.exp((50_000 / 8.314) * (1 / 313.15 - 1 / (lumpC + 273.15)))) / 3600;
    const more = perS * (made + 0.05) * (1 - made);
    made += more;
    lumpC += piece.ownRiseK * more - (3 * 0.6 * (lumpC - 20)) / (piece.heatPerM3K * piece.radiusM);
    highestC = Math.max(highestC, lumpC);
  }
  expect(highestC).toBeGreaterThan(60);
  expect(Math.abs((warm(piece).highestC[0] ?? NaN) - highestC)).toBeLessThan(0.3);
});

describe('the steps', () => {
  const any = fc.record({
    volumeMl: fc.double({ min: 20, max: 40_000, noNaN: true }),
    mould: fc.constantFrom('silicone-cavity', 'lined-wood', 'lined-carton', 'rigid-plastic'),
    kept: fc.constantFrom('open', 'covered', 'wrapped', 'chilled'),
    batterTemperatureC: fc.integer({ min: 20, max: 50 }),
    roomTemperatureC: fc.integer({ min: 10, max: 30 }),
    pace: fc.double({ min: 0.6, max: 1.8, noNaN: true }),
  });

  /** Half the step and the same to half a degree, but where a piece hangs between runaway and cooling, and a breath decides. */
  it('do not matter: half of them come to the same', () => {
    const differences: number[] = [];
    fc.assert(
      fc.property(any, (inputs) => {
        const piece = pieceOf({ ...usual, ...inputs });
        const [coarse, fine] = [warm(piece), warm(piece, undefined, 0.75)];
        const [middle = NaN, edge = NaN] = [0, 5].map((i) =>
          Math.abs((coarse.highestC[i] ?? NaN) - (fine.highestC[i] ?? NaN)),
        );
        differences.push(middle, edge);
        expect(Math.max(middle, edge)).toBeLessThan(1);
        if ((fine.highestC[0] ?? NaN) < 42) return;
        expect(Math.abs(coarse.cooledMin - fine.cooledMin)).toBeLessThan(1 + 0.02 * fine.cooledMin);
      }),
      { numRuns: 100 },
    );
    const far = differences.filter((each) => each > 0.5).length;
    expect(far / differences.length).toBeLessThan(0.03);
  });
});

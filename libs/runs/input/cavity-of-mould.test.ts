import { describe, expect, it } from 'vitest';
import { mould, type Mould } from '#contract';
import { cavityMl, checkInput, checkMould } from '#runs';
import { loadRunFile } from '../../../tests/support/run-files.js';

function mouldWith(cavity: object): Mould {
  return mould.parse({ key: 'cup', title: 'Cups', kind: 'silicone-cavity', cavities: 12, ...cavity });
}

describe('cavityMl', () => {
  it.each<[object, number]>([
    [{ cavityMl: 84 }, 84],
    // CRC Handbook: water weighs 0.9982 g/mL at 20 °C, 0.99222 at 40 °C.
    [{ waterFillG: 84 }, 84 / 0.9982],
    [{ waterFillG: 84, waterC: 40 }, 84 / 0.99222],
    // 6 × 5 × 2 cm.
    [{ shape: { form: 'box', lengthMm: 60, widthMm: 50, heightMm: 20 } }, 60],
    // 3 × 2 × 1 in = 6 cu in of 16.387064 mL.
    [{ shape: { form: 'box', lengthMm: '3 in', widthMm: '2 in', heightMm: '1 in' } }, 98.322384],
  ])('of %o is %d mL', (cavity, volume) => {
    expect(checkMould(mouldWith(cavity))).toEqual([]);
    expect(Math.abs(cavityMl(mouldWith(cavity)) / volume - 1)).toBeLessThan(1e-4);
  });

  /** 6 × 5 × 2 cm are 60 mL. */
  const box = { form: 'box', lengthMm: 60, widthMm: 50, heightMm: 20 };

  it.each([52.5, 58, 60, 70])(
    'of a mould whose measures come near it is %d mL, as its volume says',
    (volume) => {
      expect(checkMould(mouldWith({ cavityMl: volume, shape: box }))).toEqual([]);
      expect(cavityMl(mouldWith({ cavityMl: volume, shape: box }))).toBe(volume);
    },
  );

  it.each<[object, number]>([
    [{ cavityMl: 50 }, 50],
    [{ cavityMl: 72 }, 72],
    [{ waterFillG: 600 }, 601.1],
  ])('is asked about where %o and the measures are far apart', (stated, statedMl) => {
    const issues = checkMould(mouldWith({ ...stated, shape: box }));
    expect(issues).toMatchObject([{ code: 'mould.shape-differs', path: ['shape'], value: 60, holdsMl: 60 }]);
    expect((issues[0] as { statedMl: number }).statedMl).toBeCloseTo(statedMl, 0);
  });

  it('is not made up for a mould that was refused', () => {
    const ring = mouldWith({ shape: { form: 'torus', outerDiameterMm: 60, tubeDiameterMm: 40 } });
    expect(() => cavityMl(ring)).toThrow(RangeError);
  });
});

describe('checkMould', () => {
  it.each<[object, string, string[]]>([
    [{ form: 'torus', outerDiameterMm: 60, tubeDiameterMm: 40 }, 'shape.tube-too-thick', ['tubeDiameterMm']],
    [{ form: 'hemisphere', diameterMm: 2 }, 'mould.cavity-out-of-range', []],
    [{ form: 'box', lengthMm: 900, widthMm: 900, heightMm: 900 }, 'mould.cavity-out-of-range', []],
  ])('refuses %o', (shape, code, path) => {
    expect(checkMould(mouldWith({ shape }))).toMatchObject([{ code, path: ['shape', ...path] }]);
  });
});

describe('a run file', () => {
  const file = loadRunFile('ok', 'two-layer');
  const withCavity = (cavity: object) => ({ ...file, moulds: [mouldWith(cavity)] });

  it('may measure its moulds instead of naming their volume', () => {
    expect(checkInput(withCavity({ waterFillG: 80 }))).toEqual([]);
    expect(checkInput(withCavity({ shape: { form: 'cylinder', diameterMm: 60, heightMm: 30 } }))).toEqual([]);
  });

  it('is told of an impossible shape at the mould, once', () => {
    const ring = { form: 'half-torus', outerDiameterMm: 60, tubeDiameterMm: 40 };
    expect(checkInput(withCavity({ shape: ring }))).toMatchObject([
      { code: 'shape.tube-too-thick', path: ['moulds', 0, 'shape', 'tubeDiameterMm'], value: 40 },
    ]);
  });

  it('is told when measured cavities overflow', () => {
    expect(checkInput(withCavity({ waterFillG: 70 }))).toMatchObject([{ code: 'design.cavity-overfull' }]);
  });
});

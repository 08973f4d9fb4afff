import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { freshVolume, shapeVolume, waterFillVolume, type CavityShape } from '#chemistry';
import { waterDensity } from './water-density.js';

fc.configureGlobal({ seed: 1 });

const size = fc.double({ min: 1, max: 100, noNaN: true });

function volume(shape: CavityShape): number {
  const result = shapeVolume(shape);
  if (!result.ok) throw new Error(`${shape.form} was refused`);
  return result.value;
}

/** Any shape that can be, with measures up to 100 mm. */
const anyShape: fc.Arbitrary<CavityShape> = fc.oneof(
  fc.record({ form: fc.constant('box' as const), lengthMm: size, widthMm: size, heightMm: size }),
  fc.record({ form: fc.constant('cylinder' as const), diameterMm: size, heightMm: size }),
  fc.record({
    form: fc.constant('cone-frustum' as const),
    bottomDiameterMm: size,
    topDiameterMm: size,
    heightMm: size,
  }),
  fc.record({ form: fc.constant('hemisphere' as const), diameterMm: size }),
  fc.record({ form: fc.constant('spherical-cap' as const), rimDiameterMm: size, depthMm: size }),
  fc
    .record({
      form: fc.constantFrom('torus' as const, 'half-torus' as const),
      outerDiameterMm: size,
      part: size,
    })
    .map(({ part, ...ring }) => ({ ...ring, tubeDiameterMm: (ring.outerDiameterMm / 2) * (part / 100) })),
);

function scaled(shape: CavityShape, by: number): CavityShape {
  const entries = Object.entries(shape).map(([name, value]) => [
    name,
    typeof value === 'number' ? value * by : value,
  ]);
  return Object.fromEntries(entries) as CavityShape;
}

describe('shapeVolume', () => {
  it('grows with the cube of the size', () => {
    fc.assert(
      fc.property(anyShape, fc.double({ min: 0.1, max: 10, noNaN: true }), (shape, by) => {
        expect(volume(scaled(shape, by)) / (volume(shape) * by ** 3)).toBeCloseTo(1, 9);
      }),
    );
  });

  it('has a cylinder for a frustum as wide above as below', () => {
    fc.assert(
      fc.property(size, size, (diameterMm, heightMm) => {
        const frustum = { bottomDiameterMm: diameterMm, topDiameterMm: diameterMm, heightMm };
        expect(volume({ form: 'cone-frustum', ...frustum })).toBeCloseTo(
          (Math.PI * (diameterMm / 2) ** 2 * heightMm) / 1000,
          9,
        );
        expect(volume({ form: 'cylinder', diameterMm, heightMm })).toBeCloseTo(
          volume({ form: 'cone-frustum', ...frustum }),
          9,
        );
      }),
    );
  });

  it('puts two half rings together to a whole one', () => {
    fc.assert(
      fc.property(size, size, (outerDiameterMm, part) => {
        const ring = { outerDiameterMm, tubeDiameterMm: (outerDiameterMm * part) / 200 };
        expect(2 * volume({ form: 'half-torus', ...ring })).toBeCloseTo(
          volume({ form: 'torus', ...ring }),
          9,
        );
      }),
    );
  });

  it('has a hemisphere for the cap as deep as its rim is wide from the middle', () => {
    fc.assert(
      fc.property(size, (diameterMm) => {
        const cap = { form: 'spherical-cap', rimDiameterMm: diameterMm, depthMm: diameterMm / 2 } as const;
        expect(volume(cap)).toBeCloseTo(volume({ form: 'hemisphere', diameterMm }), 9);
      }),
    );
  });

  it('turns upside down without changing', () => {
    fc.assert(
      fc.property(size, size, size, (a, b, heightMm) => {
        const upright = { form: 'cone-frustum', bottomDiameterMm: a, topDiameterMm: b, heightMm } as const;
        const turned = { ...upright, bottomDiameterMm: b, topDiameterMm: a };
        expect(volume(upright)).toBeCloseTo(volume(turned), 9);
      }),
    );
  });

  it.each<[CavityShape, string, string]>([
    [{ form: 'box', lengthMm: 0, widthMm: 5, heightMm: 5 }, 'shape.measure-out-of-range', 'lengthMm'],
    [{ form: 'cylinder', diameterMm: 60, heightMm: -3 }, 'shape.measure-out-of-range', 'heightMm'],
    [{ form: 'hemisphere', diameterMm: NaN }, 'shape.measure-out-of-range', 'diameterMm'],
    [{ form: 'hemisphere', diameterMm: 2001 }, 'shape.measure-out-of-range', 'diameterMm'],
    [
      { form: 'cone-frustum', bottomDiameterMm: 0, topDiameterMm: 0, heightMm: 5 },
      'shape.measure-out-of-range',
      'topDiameterMm',
    ],
    [{ form: 'torus', outerDiameterMm: 80, tubeDiameterMm: 41 }, 'shape.tube-too-thick', 'tubeDiameterMm'],
    [
      { form: 'half-torus', outerDiameterMm: 80, tubeDiameterMm: 80 },
      'shape.tube-too-thick',
      'tubeDiameterMm',
    ],
  ])('refuses %o', (shape, code, field) => {
    expect(shapeVolume(shape)).toMatchObject({ ok: false, issues: [{ code, path: [field] }] });
  });

  it('says what it would have taken', () => {
    const upTo2Metres = { kind: 'range', low: 0, high: 2000, unit: 'mm' };
    expect(shapeVolume({ form: 'hemisphere', diameterMm: 2001 })).toMatchObject({
      issues: [{ value: 2001, foundMm: 2001, accepted: { ...upTo2Metres, isOpen: true } }],
    });
    const cone = { form: 'cone-frustum', bottomDiameterMm: -1, topDiameterMm: 60, heightMm: 40 } as const;
    expect(shapeVolume(cone)).toMatchObject({
      issues: [{ path: ['bottomDiameterMm'], accepted: { ...upTo2Metres, isOpen: false } }],
    });
    expect(shapeVolume({ form: 'torus', outerDiameterMm: 80, tubeDiameterMm: 41 })).toMatchObject({
      issues: [{ value: 41, accepted: { kind: 'range', high: 40, unit: 'mm' }, tubeMm: 41, outerMm: 80 }],
    });
  });

  /** 24 · 9 · 7 cm. */
  it('has 1512 mL for a loaf mould of 240 by 90 by 70 mm', () => {
    expect(volume({ form: 'box', lengthMm: 240, widthMm: 90, heightMm: 70 })).toBe(1512);
  });

  it('takes measures up to two metres, and names each one beyond', () => {
    const pipe = { form: 'cylinder', diameterMm: 2000, heightMm: 2000 } as const;
    expect(volume(pipe)).toBeCloseTo(Math.PI * 2_000_000, 3);
    const issues = shapeVolume({ form: 'box', lengthMm: 0, widthMm: 2001, heightMm: 5 });
    expect(issues).toMatchObject({ issues: [{ path: ['lengthMm'] }, { path: ['widthMm'] }] });
  });

  it('takes a cone with a point and a ring without a hole', () => {
    const cone = { form: 'cone-frustum', bottomDiameterMm: 0, topDiameterMm: 60, heightMm: 40 } as const;
    expect(volume(cone)).toBeCloseTo(volume({ form: 'cylinder', diameterMm: 60, heightMm: 40 }) / 3, 9);
    expect(volume({ form: 'torus', outerDiameterMm: 80, tubeDiameterMm: 40 })).toBeGreaterThan(0);
  });
});

describe('freshVolume', () => {
  it('shrinks back to the finished volume', () => {
    fc.assert(
      fc.property(size, fc.double({ min: 0, max: 50, noNaN: true }), (finished, shrinkage) => {
        expect(freshVolume(finished, shrinkage) * (1 - shrinkage / 100)).toBeCloseTo(finished, 9);
      }),
    );
  });

  it('is twice as much for soap that shrinks to half, and the same for soap that does not shrink', () => {
    expect(freshVolume(60, 50)).toBe(120);
    expect(freshVolume(60, 0)).toBe(60);
    expect(freshVolume(0, 5)).toBe(0);
  });

  it.each([
    [-1, 5],
    [Infinity, 5],
    [NaN, 5],
    [80, -0.1],
    [80, 50.1],
    [80, NaN],
  ])('refuses %d mL at %d %%', (finished, shrinkage) => {
    expect(() => freshVolume(finished, shrinkage)).toThrow(RangeError);
  });
});

/** IAPWS-95 at one atmosphere, kg/m³; from memory; Kell's equation is within 0.02 kg/m³ of it. */
describe('waterDensity', () => {
  it.each([
    [0, 999.84],
    [50, 988.03],
    [60, 983.2],
    [80, 971.79],
    [100, 958.35],
  ])('at %d °C is %d kg/m³', (temperatureC, kgPerM3) => {
    expect(Math.abs(1000 * waterDensity(temperatureC) - kgPerM3)).toBeLessThan(0.05);
  });

  it.each([-0.1, 100.1, NaN])('is not told of ice and steam: %d °C', (temperatureC) => {
    expect(() => waterDensity(temperatureC)).toThrow(RangeError);
  });
});

describe('waterFillVolume', () => {
  it('takes tap water from freezing to hot, and says so', () => {
    for (const temperature of [-1, 41]) {
      expect(() => waterFillVolume(80, temperature)).toThrow(
        `Water of ${String(temperature)} °C; accepted: 0 to 40 °C`,
      );
    }
    expect(waterFillVolume(100, 0)).toBeCloseTo(100.016, 2);
    expect(waterFillVolume(100, 40)).toBeCloseTo(100.784, 2);
  });

  it.each([
    [0, 20],
    [Infinity, 20],
    [NaN, 20],
    [80, -1],
    [80, 41],
    [80, NaN],
  ])('refuses %d g at %d °C', (mass, temperature) => {
    expect(() => waterFillVolume(mass, temperature)).toThrow(RangeError);
  });
});

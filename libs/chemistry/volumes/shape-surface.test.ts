import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { shapeSurface } from './shape-surface.js';
import { shapeVolume, type CavityShape } from './shape-volume.js';

fc.configureGlobal({ seed: 1843 });

const mm = fc.integer({ min: 5, max: 400 });
const anyShape: fc.Arbitrary<CavityShape> = fc.oneof(
  fc.record({ form: fc.constant('box' as const), lengthMm: mm, widthMm: mm, heightMm: mm }),
  fc.record({ form: fc.constant('cylinder' as const), diameterMm: mm, heightMm: mm }),
  fc.record({
    form: fc.constant('cone-frustum' as const),
    ...{ bottomDiameterMm: mm, topDiameterMm: mm, heightMm: mm },
  }),
  fc.record({ form: fc.constant('hemisphere' as const), diameterMm: mm }),
  fc.record({ form: fc.constant('spherical-cap' as const), rimDiameterMm: mm, depthMm: mm }),
  fc
    .record({
      form: fc.constantFrom('torus' as const, 'half-torus' as const),
      outerDiameterMm: mm,
      thin: fc.double({ min: 0.05, max: 0.5, noNaN: true }),
    })
    .map(({ form, outerDiameterMm, thin }) => ({
      form,
      outerDiameterMm,
      tubeDiameterMm: outerDiameterMm * thin,
    })),
);

describe('surface of what is cast', () => {
  /** A cube of 1 dm; a cylinder as high as wide; a ball's half and its great circle; all by hand. */
  it.each<[CavityShape, number]>([
    [{ form: 'box', lengthMm: 100, widthMm: 100, heightMm: 100 }, 600],
    [{ form: 'cylinder', diameterMm: 100, heightMm: 100 }, 471.2389],
    [{ form: 'cone-frustum', bottomDiameterMm: 0, topDiameterMm: 60, heightMm: 40 }, 75.3982],
    [{ form: 'hemisphere', diameterMm: 100 }, 235.6194],
    [{ form: 'spherical-cap', rimDiameterMm: 100, depthMm: 50 }, 235.6194],
    [{ form: 'torus', outerDiameterMm: 100, tubeDiameterMm: 20 }, 157.9137],
    [{ form: 'half-torus', outerDiameterMm: 100, tubeDiameterMm: 20 }, 129.2224],
  ])('of %o is %d cm²', (shape, cm2) => {
    expect(shapeSurface(shape, 1)).toBeCloseTo(cm2, 3);
  });

  it('is never smaller than that of a ball of its volume, however far it is filled', () => {
    fc.assert(
      fc.property(anyShape, fc.double({ min: 0.05, max: 1, noNaN: true }), (shape, filled) => {
        const volume = shapeVolume(shape);
        if (!volume.ok) throw new Error('no volume');
        const ball = (36 * Math.PI) ** (1 / 3) * (volume.value * filled) ** (2 / 3);
        expect(shapeSurface(shape, filled)).toBeGreaterThanOrEqual(ball * 0.999999);
      }),
    );
  });

  it('of a box is lower by its walls where it is filled to the half', () => {
    expect(shapeSurface({ form: 'box', lengthMm: 100, widthMm: 100, heightMm: 100 }, 0.5)).toBeCloseTo(
      400,
      9,
    );
  });
});

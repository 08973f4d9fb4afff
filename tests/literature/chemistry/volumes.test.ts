import { describe, expect, it } from 'vitest';
import { shapeVolume, waterFillVolume, type CavityShape } from '#chemistry';

function volume(shape: CavityShape): number {
  const result = shapeVolume(shape);
  if (!result.ok) throw new Error(`${shape.form} was refused`);
  return result.value;
}

describe('volume of a cavity', () => {
  /** Archimedes, On the Sphere and Cylinder I, 33-34: hemisphere : cylinder around it = 2 : 3. */
  it('has the hemisphere at two thirds of the cylinder around it', () => {
    const cylinder = volume({ form: 'cylinder', diameterMm: 64, heightMm: 32 });
    expect(volume({ form: 'hemisphere', diameterMm: 64 }) / cylinder).toBeCloseTo(2 / 3, 12);
  });

  /** Euclid, Elements XII, 10: a cone is a third of the cylinder around it. */
  it('has the cone at a third of the cylinder around it', () => {
    const cone = volume({ form: 'cone-frustum', bottomDiameterMm: 0, topDiameterMm: 64, heightMm: 32 });
    expect(cone / volume({ form: 'cylinder', diameterMm: 64, heightMm: 32 })).toBeCloseTo(1 / 3, 12);
  });

  /** Pappus: a solid of revolution is its section's area times the way of the section's centroid. */
  it('has the ring at the area of its tube times the way around its middle', () => {
    const area = Math.PI * 13 ** 2;
    const ring = { outerDiameterMm: 90, tubeDiameterMm: 26 };
    expect(volume({ form: 'torus', ...ring })).toBeCloseTo((area * 2 * Math.PI * 32) / 1000, 9);
    // The half circle of a ring mould keeps its centroid above the middle of the tube.
    expect(volume({ form: 'half-torus', ...ring })).toBeCloseTo((area * Math.PI * 32) / 1000, 9);
  });
});

describe('volume by the weight of water', () => {
  /** Density of water, CRC Handbook and IAPWS-95, kg/m³; the library computes it by Kell's equation. */
  it.each([
    [4, 999.97],
    [15, 999.1],
    [20, 998.2],
    [25, 997.04],
    [30, 995.65],
    [40, 992.22],
  ])('at %d °C is that of the handbook’s water', (temperatureC, kgPerM3) => {
    expect(Math.abs(100 / waterFillVolume(100, temperatureC) - kgPerM3 / 1000)).toBeLessThan(0.00003);
  });
});

import * as mathjs from 'mathjs';
import { describe, expect, it } from 'vitest';
import { shapeVolume, type CavityShape } from '#chemistry';

/** The part of mathjs' solveODE that is used here; its own declarations leave it out. */
interface Integrator {
  readonly solveODE: (
    slope: (at: number) => number[],
    span: [from: number, to: number],
    start: number[],
    options: { method: string; tol: number; maxStep: number; maxIter: number },
  ) => { readonly y: number[][] };
}
const { solveODE } = mathjs as unknown as Integrator;

function volume(shape: CavityShape): number {
  const result = shapeVolume(shape);
  if (!result.ok) throw new Error(`${shape.form} was refused`);
  return result.value;
}

/** Volume in mL of what has this cross-section (mm²) from `from` to `to` (mm), integrated by mathjs (RK45, adaptive). */
function integrated(crossSection: (at: number) => number, from: number, to: number): number {
  const solution = solveODE((at) => [crossSection(at)], [from, to], [0], {
    method: 'RK45',
    tol: 1e-7,
    maxStep: (to - from) / 200,
    maxIter: 1e6,
  });
  return (solution.y.at(-1)?.[0] ?? NaN) / 1000;
}

/** Half the height of a circle of radius r at x from its middle. */
function halfChord(r: number, x: number): number {
  return Math.sqrt(Math.max(0, r * r - x * x));
}

describe('volume of a cavity', () => {
  /** Oracle: numerical integration of the cross-section's area along the axis, by a mathematics library. */
  it.each<[CavityShape, (z: number) => number, number, number]>([
    [{ form: 'box', lengthMm: 240, widthMm: 90, heightMm: 70 }, () => 240 * 90, 0, 70],
    [{ form: 'cylinder', diameterMm: 75, heightMm: 30 }, () => Math.PI * 37.5 ** 2, 0, 30],
    [
      { form: 'cone-frustum', bottomDiameterMm: 50, topDiameterMm: 70, heightMm: 28 },
      (z) => Math.PI * (25 + (10 * z) / 28) ** 2,
      0,
      28,
    ],
    [{ form: 'hemisphere', diameterMm: 64 }, (z) => Math.PI * halfChord(32, z) ** 2, 0, 32],
    [
      // A sphere of radius 50 cut 20 below its top: rim radius √(50² − 30²) = 40.
      { form: 'spherical-cap', rimDiameterMm: 80, depthMm: 20 },
      (z) => Math.PI * halfChord(50, z) ** 2,
      30,
      50,
    ],
    [
      // Horizontal cuts through a ring are rings: π (R + s)² − π (R − s)² with s half the tube's width there.
      { form: 'torus', outerDiameterMm: 90, tubeDiameterMm: 26 },
      (z) => Math.PI * ((32 + halfChord(13, z)) ** 2 - (32 - halfChord(13, z)) ** 2),
      -13,
      13,
    ],
    [
      { form: 'half-torus', outerDiameterMm: 90, tubeDiameterMm: 26 },
      (z) => Math.PI * ((32 + halfChord(13, z)) ** 2 - (32 - halfChord(13, z)) ** 2),
      0,
      13,
    ],
  ])('%o is its cross-section, summed up', (shape, crossSection, from, to) => {
    // A ring's cross-section ends with an upright tangent, which costs the integrator its last digits.
    expect(Math.abs(volume(shape) / integrated(crossSection, from, to) - 1)).toBeLessThan(1e-4);
  });
});

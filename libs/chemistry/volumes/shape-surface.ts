import type { CavityShape } from './shape-volume.js';

const MM2_PER_CM2 = 100;

/**
 * The whole surface of what is cast in a cavity, its open top included, by elementary solid geometry (r, R radii; h height, s slant):
 * box 2 (l w + l h + w h) · cylinder 2 π r (r + h) · cone frustum π (r² + R² + (r + R) s) · hemisphere 3 π r² · spherical cap
 * π (2 r² + h²) with r at the rim · torus 4 π² R r, half of it and the ring 4 π R r on top for the half torus, R to the middle of the
 * tube of radius r.
 * @param shape one whose volume `shapeVolume` tells
 * @param filled how much of the cavity is filled, above 0, at most 1: boxes and cylinders are lower by it, any other shape is
 * taken as smaller all over
 * @returns cm²
 */
export function shapeSurface(shape: CavityShape, filled: number): number {
  switch (shape.form) {
    case 'box': {
      const { lengthMm: l, widthMm: w, heightMm } = shape;
      const h = heightMm * filled;
      return (2 * (l * w + l * h + w * h)) / MM2_PER_CM2;
    }
    case 'cylinder':
      return frustum(shape.diameterMm / 2, shape.diameterMm / 2, shape.heightMm * filled);
    default:
      return whole(shape) * filled ** (2 / 3);
  }
}

function whole(shape: Exclude<CavityShape, { readonly form: 'box' | 'cylinder' }>): number {
  switch (shape.form) {
    case 'cone-frustum':
      return frustum(shape.bottomDiameterMm / 2, shape.topDiameterMm / 2, shape.heightMm);
    case 'hemisphere':
      return cap(shape.diameterMm / 2, shape.diameterMm / 2);
    case 'spherical-cap':
      return cap(shape.rimDiameterMm / 2, shape.depthMm);
    case 'torus':
      return ring(shape.outerDiameterMm / 2, shape.tubeDiameterMm / 2, 4 * Math.PI ** 2);
    case 'half-torus':
      return ring(shape.outerDiameterMm / 2, shape.tubeDiameterMm / 2, 2 * Math.PI ** 2 + 4 * Math.PI);
  }
}

function frustum(bottom: number, top: number, height: number): number {
  const slant = Math.hypot(height, top - bottom);
  return (Math.PI * (bottom ** 2 + top ** 2 + (bottom + top) * slant)) / MM2_PER_CM2;
}

function cap(rim: number, depth: number): number {
  return (Math.PI * (2 * rim ** 2 + depth ** 2)) / MM2_PER_CM2;
}

/** @param factor of R r */
function ring(outer: number, tube: number, factor: number): number {
  return (factor * (outer - tube) * tube) / MM2_PER_CM2;
}

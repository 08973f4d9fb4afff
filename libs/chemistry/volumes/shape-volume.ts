import type { Issue, Result } from '#units';

/**
 * A cavity by its inner measures in millimetres, as taken with a ruler. Rings are measured across the outside and
 * across the tube; a half torus is a ring mould, the ring cut flat at its widest.
 */
export type CavityShape =
  | { readonly form: 'box'; readonly lengthMm: number; readonly widthMm: number; readonly heightMm: number }
  | { readonly form: 'cylinder'; readonly diameterMm: number; readonly heightMm: number }
  | {
      readonly form: 'cone-frustum';
      /** 0 for a cone that comes to a point. */
      readonly bottomDiameterMm: number;
      readonly topDiameterMm: number;
      readonly heightMm: number;
    }
  | { readonly form: 'hemisphere'; readonly diameterMm: number }
  | { readonly form: 'spherical-cap'; readonly rimDiameterMm: number; readonly depthMm: number }
  | {
      readonly form: 'torus' | 'half-torus';
      readonly outerDiameterMm: number;
      readonly tubeDiameterMm: number;
    };

/**
 * Volume of a cavity from its measures, by elementary solid geometry (r, R radii; h height; all mm, then / 1000):
 * box l·w·h · cylinder π r² h · cone frustum π h (r² + r R + R²) / 3 · hemisphere 2/3 π r³ ·
 * spherical cap π h (3 r² + h²) / 6 with r at the rim · torus 2 π² R r², half of it for the half torus, R to the middle
 * of the tube of radius r.
 * @param shape each measure more than 0, at most 2000 mm (the bottom of a frustum from 0)
 * @returns mL; or the issues `shape.measure-out-of-range`, `shape.tube-too-thick`, at the measure's path
 */
export function shapeVolume(shape: CavityShape): Result<number> {
  const issues = [...measureIssues(shape), ...ringIssues(shape)];
  return issues.length > 0 ? { ok: false, issues } : { ok: true, value: volumeMl(shape) };
}

/** Longer than any bench mould, to catch metres typed as millimetres. */
const LARGEST_MM = 2000;
const MM3_PER_ML = 1000;

function volumeMl(shape: CavityShape): number {
  switch (shape.form) {
    case 'box':
      return (shape.lengthMm * shape.widthMm * shape.heightMm) / MM3_PER_ML;
    case 'cylinder':
      return frustumMl(shape.diameterMm / 2, shape.diameterMm / 2, shape.heightMm);
    case 'cone-frustum':
      return frustumMl(shape.bottomDiameterMm / 2, shape.topDiameterMm / 2, shape.heightMm);
    case 'hemisphere':
      return capMl(shape.diameterMm / 2, shape.diameterMm / 2);
    case 'spherical-cap':
      return capMl(shape.rimDiameterMm / 2, shape.depthMm);
    case 'torus':
      return torusMl(shape.outerDiameterMm / 2, shape.tubeDiameterMm / 2);
    case 'half-torus':
      return torusMl(shape.outerDiameterMm / 2, shape.tubeDiameterMm / 2) / 2;
  }
}

function frustumMl(bottom: number, top: number, height: number): number {
  return (Math.PI * height * (bottom ** 2 + bottom * top + top ** 2)) / 3 / MM3_PER_ML;
}

function capMl(rim: number, depth: number): number {
  return (Math.PI * depth * (3 * rim ** 2 + depth ** 2)) / 6 / MM3_PER_ML;
}

function torusMl(outer: number, tube: number): number {
  return (2 * Math.PI ** 2 * (outer - tube) * tube ** 2) / MM3_PER_ML;
}

function measureIssues(shape: CavityShape): Issue[] {
  const { form: _, ...measures } = shape;
  return Object.entries(measures).flatMap(([name, value]): Issue[] => {
    const least = name === 'bottomDiameterMm' ? 0 : Number.MIN_VALUE;
    if (value >= least && value <= LARGEST_MM) return [];
    const accepted = { kind: 'range', low: 0, high: LARGEST_MM, isOpen: least > 0, unit: 'mm' } as const;
    return [
      {
        code: 'shape.measure-out-of-range',
        path: [name],
        value,
        accepted,
        foundMm: value,
      },
    ];
  });
}

function ringIssues(shape: CavityShape): Issue[] {
  if (shape.form !== 'torus' && shape.form !== 'half-torus') return [];
  const { outerDiameterMm, tubeDiameterMm } = shape;
  if (!(tubeDiameterMm > outerDiameterMm / 2)) return [];
  const accepted = { kind: 'range', high: outerDiameterMm / 2, unit: 'mm' } as const;
  return [
    {
      code: 'shape.tube-too-thick',
      path: ['tubeDiameterMm'],
      value: tubeDiameterMm,
      accepted,
      tubeMm: tubeDiameterMm,
      outerMm: outerDiameterMm,
    },
  ];
}

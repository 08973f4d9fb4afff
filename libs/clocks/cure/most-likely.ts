import { posterior, type Evidence, type Posterior, type Unknowns } from './posterior.js';
import { cholesky, solveLower, solveUpper, type Rows } from './small-matrix.js';

/** Where the posterior is highest. */
export interface Peak {
  readonly unknowns: Unknowns;
  readonly value: number;
  readonly noise: number;
  /** L of the curvature L Lᵀ there, of the unknowns that were free. */
  readonly lower: Rows;
}

/** Steps shorter than this, in standard deviations of the posterior, change no figure anyone reads. */
const CLOSE = 1e-4;
const MOST_STEPS = 200;
/** Almost Gauss-Newton's own step, which is right unless it turns out not to be. */
const LEAST_DAMPED = 1e-6;
const TOO_DAMPED = 1e12;

/**
 * Climbs to the highest posterior density over the first `free` unknowns with the others held, by K. Levenberg's
 * and D. W. Marquardt's damped Gauss-Newton steps (Quart. Appl. Math. 2 (1944) 164-168; J. SIAM 11 (1963) 431-441,
 * both from memory).
 * @param free 1 to 4
 */
export function mostLikely(evidence: Evidence, start: Unknowns, free: number): Peak {
  let unknowns = start;
  let at = posterior(evidence, unknowns);
  let damping = LEAST_DAMPED;
  for (let round = 0; round < MOST_STEPS && damping < TOO_DAMPED; round += 1) {
    const step = dampedStep(at, free, damping);
    const tried = moved(unknowns, step);
    const there = posterior(evidence, tried);
    if (there.value <= at.value) {
      const length = lengthOf(at, step);
      unknowns = tried;
      at = there;
      damping = Math.max(LEAST_DAMPED, damping / 10);
      if (length < CLOSE) break;
    } else {
      damping *= 10;
    }
  }
  return { unknowns, value: at.value, noise: at.noise, lower: cholesky(leading(at.curvature, free)) };
}

/** The unknowns with a step added to as many of the first as the step has. */
export function moved(unknowns: Unknowns, step: readonly number[]): Unknowns {
  const [a, b, c, d] = unknowns;
  return [a + (step[0] ?? 0), b + (step[1] ?? 0), c + (step[2] ?? 0), d + (step[3] ?? 0)];
}

function dampedStep({ gradient, curvature }: Posterior, free: number, damping: number): number[] {
  const damped = leading(curvature, free).map((row, i) =>
    row.map((value, j) => (i === j ? value * (1 + damping) : value)),
  );
  const lower = cholesky(damped);
  const downhill = gradient.slice(0, free).map((slope) => -slope);
  return solveUpper(lower, solveLower(lower, downhill));
}

function lengthOf({ curvature }: Posterior, step: readonly number[]): number {
  let square = 0;
  for (const [i, a] of step.entries()) {
    for (const [j, b] of step.entries()) square += a * b * (curvature[i]?.[j] ?? NaN);
  }
  return Math.sqrt(square);
}

function leading(rows: Rows, size: number): number[][] {
  return rows.slice(0, size).map((row) => row.slice(0, size));
}

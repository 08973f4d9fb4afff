import normalCdf from '@stdlib/stats-base-dists-normal-cdf';
import { add, diag, inv, matrix, multiply, type Matrix } from 'mathjs';
import { describe, expect, it } from 'vitest';
import { learn, type Observation } from '#clocks';
import { seededRandom } from '#units';

const prior = {
  ...{ workshopSigma: 0.35, recipeSigma: 0.15 },
  ...{ spreads: [{ times: 1, prior: 1 }], slips: 0 },
  habits: [{ writes: 0.9, looks: 0.9, prior: 1 }],
};

type Seen = Pick<Observation, 'recipe' | 'exact' | 'above' | 'below' | 'sigma'>;
const learned = (seen: readonly Seen[], with_: typeof prior = prior) =>
  learn(
    seen.map((each) => ({ ...each, ...{ doubt: 0, looks: 0, missed: 0, day: 0, entries: [] } })),
    with_,
  );

describe('exact observations', () => {
  /**
   * D. V. Lindley, A. F. M. Smith, J. R. Statist. Soc. B 34 (1972) 1-41 (from memory): the posterior of a linear
   * model y = Aθ + ε with θ ~ N(0, C) and ε ~ N(0, D) has precision Aᵀ D⁻¹ A + C⁻¹. Here θ holds the workshop's
   * offset and one for each recipe, and the matrix is inverted as it stands by mathjs.
   */
  it('are the posterior of the joint normal, inverted as a matrix', () => {
    const random = seededRandom(4);
    const keys = ['tiles', 'loaves', 'shells', 'foam'];
    const seen = Array.from({ length: 17 }, (_, i) => ({
      recipe: keys[Math.floor(i / 6)] ?? 'tiles',
      exact: 2 * random.next() - 0.7,
      sigma: 0.15 + 0.4 * random.next(),
    }));
    const design = seen.map(({ recipe }) => [1, ...keys.map((key) => (key === recipe ? 1 : 0))]);
    const weighted = seen.map(({ sigma }, i) => (design[i] ?? []).map((x) => x / sigma ** 2));
    const transposed = matrix(weighted[0]?.map((_, column) => weighted.map((row) => row[column] ?? 0)) ?? []);
    const priorPrecision = matrix(diag([1 / 0.35 ** 2, ...keys.map(() => 1 / 0.15 ** 2)]));
    const covariance = inv(add<Matrix>(multiply(transposed, matrix(design)), priorPrecision));
    const mean = multiply(covariance, multiply(transposed, matrix(seen.map(({ exact }) => exact))));
    const offset = (...weights: number[]) => {
      const direction = matrix(weights);
      return {
        mean: Number(multiply(direction, mean)),
        sd: Math.sqrt(Number(multiply(multiply(direction, covariance), direction))),
      };
    };

    const lessons = learned(seen);
    expectSame(lessons.workshop, offset(1, 0, 0, 0, 0));
    keys.forEach((key, k) => {
      // “foam” was never made: its own offset is the prior's.
      expectSame(lessons.recipe(key), offset(1, ...keys.map((_, j) => (j === k ? 1 : 0))));
    });
  });

  /**
   * The conjugate rule for a normal mean with known variance (same book, equation 2.12, from memory), by hand:
   * one batch of σ 0.25 at twice the forecast, ln 2 = 0.693. As one level: 1/0.35² = 8.163, 1/0.25² = 16,
   * mean 0.693 · 16/24.163 = 0.459, sd 1/√24.163 = 0.203.
   */
  it('of one level follow a worked example', () => {
    for (const recipeSigma of [1e-9, 1e-4]) {
      const seen = [{ recipe: 'tiles', exact: Math.LN2, sigma: 0.25 }];
      const { workshop } = learned(seen, { ...prior, recipeSigma });
      expect(workshop.mean).toBeCloseTo(0.459, 2);
      expect(workshop.sd).toBeCloseTo(0.203, 2);
    }
  });
});

describe('a single censored observation', () => {
  /**
   * N. L. Johnson, S. Kotz, N. Balakrishnan, Continuous Univariate Distributions 1 (1994), section 10.1 (from
   * memory): mean and variance of a normal truncated to (a, b). Whatever is jointly normal with y then follows
   * by regression on y.
   */
  it.each([
    [{ above: Math.log(1.3) }, 0.15],
    [{ above: -0.1, below: 0.25 }, 0.15],
    [{ above: 0.9, below: 1 }, 0.15],
  ])('%j is the truncated normal’s moments, recipes’ σ %d', (bounds, recipeSigma) => {
    const sigma = 0.25;
    const workshopVariance = 0.35 ** 2;
    const offsetVariance = workshopVariance + recipeSigma ** 2;
    const total = Math.sqrt(offsetVariance + sigma ** 2);
    const y = truncated(total, bounds);
    const regressed = (variance: number) => {
      const slope = variance / total ** 2;
      return { mean: slope * y.mean, sd: Math.sqrt(variance - slope * variance + slope ** 2 * y.variance) };
    };

    const seen = [{ recipe: 'tiles', ...bounds, sigma }];
    const lessons = learned(seen, { ...prior, recipeSigma });
    expectSame(lessons.workshop, regressed(workshopVariance));
    expectSame(lessons.recipe('tiles'), regressed(offsetVariance));
  });
});

describe('censored and exact observations together', () => {
  const cases: Record<string, readonly Seen[]> = {
    'a slow workshop': [
      { recipe: 'tiles', above: 0.5, sigma: 0.25 },
      { recipe: 'tiles', above: 0.4, below: 0.8, sigma: 0.25 },
      { recipe: 'tiles', exact: 0.9, sigma: 0.3 },
      { recipe: 'loaves', above: 0.45, below: 0.7, sigma: 0.35 },
      { recipe: 'loaves', above: 0.7, sigma: 0.25 },
    ],
    'a quick workshop, half the time': [
      { recipe: 'tiles', below: Math.log(0.5), sigma: 0.2 },
      { recipe: 'tiles', above: -1, below: -0.6, sigma: 0.2 },
      { recipe: 'loaves', exact: -0.8, sigma: 0.25 },
    ],
    'recipes that disagree': [
      { recipe: 'tiles', above: 1, sigma: 0.2 },
      { recipe: 'tiles', above: 0.9, below: 1.2, sigma: 0.2 },
      { recipe: 'loaves', below: -0.7, sigma: 0.2 },
      { recipe: 'loaves', exact: -0.9, sigma: 0.2 },
    ],
    'thirty narrow batches': Array.from({ length: 30 }, (_, i) => ({
      recipe: i % 3 === 0 ? 'tiles' : 'loaves',
      above: 0.2 + (i % 5) / 50,
      below: 0.3 + (i % 7) / 40,
      sigma: 0.15,
    })),
  };

  /**
   * Oracle: the definition, prior times likelihood summed over workshop offset, recipe offset and spread, with the normal
   * distribution function of @stdlib, on a grid more than ten times finer (0.003; theirs is 0.04), slips included.
   */
  it.each(Object.entries(cases))('of %s are Bayes’ theorem summed over a grid ten times finer', (_, seen) => {
    for (const slips of [0, 0.05]) {
      const lessons = learned(seen, { ...prior, slips });
      const oracle = bruteForce(seen, slips);
      expectSame(lessons.workshop, oracle.workshop);
      for (const key of ['tiles', 'loaves']) {
        const theirs = oracle.recipes.get(key);
        if (theirs === undefined) throw new Error(`no ${key} in the oracle`);
        expectSame(lessons.recipe(key), theirs);
      }
    }
  });

  it('weigh spreads by how well each explains them, as summed by hand', () => {
    const seen = cases['thirty narrow batches'] ?? [];
    const spreads = [
      { times: 0.5, prior: 1 },
      { times: 2, prior: 3 },
    ];
    const each = spreads.map(({ times, prior: p }) => {
      const { workshop, mass } = bruteForce(
        seen.map((batch) => ({ ...batch, sigma: batch.sigma * times })),
        0,
      );
      return { weight: p * mass, workshop };
    });
    const total = each.reduce((sum, { weight }) => sum + weight, 0);
    const mean = each.reduce((sum, { weight, workshop }) => sum + weight * workshop.mean, 0) / total;
    expect(learned(seen, { ...prior, spreads }).workshop.mean).toBeCloseTo(mean, 2);
    expect(learned(seen, { ...prior, spreads }).spread).toBeLessThan(0.6);
  });
});

interface Moments {
  readonly mean: number;
  readonly sd: number;
}

/** To a sixty-sixth of the time, in steps of four hundredths that are summed over. */
function expectSame(ours: Moments, theirs: Moments): void {
  expect(Math.abs(ours.mean - theirs.mean)).toBeLessThan(0.015);
  expect(Math.abs(ours.sd - theirs.sd)).toBeLessThan(0.015);
}

function truncated(
  sigma: number,
  { above = -Infinity, below = Infinity }: { above?: number; below?: number },
): { mean: number; variance: number } {
  const [a, b] = [above / sigma, below / sigma];
  const density = (z: number): number => Math.exp(-(z * z) / 2) / Math.sqrt(2 * Math.PI);
  const timesDensity = (z: number): number => (Number.isFinite(z) ? z * density(z) : 0);
  const share = normalCdf(b, 0, 1) - normalCdf(a, 0, 1);
  const lift = (density(a) - density(b)) / share;
  return {
    mean: sigma * lift,
    variance: sigma ** 2 * (1 + (timesDensity(a) - timesDensity(b)) / share - lift ** 2),
  };
}

function bruteForce(
  seen: readonly Seen[],
  slips: number,
): { workshop: Moments; recipes: Map<string, Moments>; mass: number } {
  const step = 0.003;
  const reach = 1000;
  const offsets = Array.from({ length: 2 * reach + 1 }, (_, i) => (i - reach) * step);
  const keys = [...new Set(seen.map(({ recipe }) => recipe))];
  const likelihoods = keys.map((key) => {
    const own = seen.filter(({ recipe }) => recipe === key);
    return offsets.map((s) => own.reduce((product, each) => product * likelihood(each, s, slips), 1));
  });
  // Sixteen standard deviations of a recipe: those that disagree lie far from their workshop.
  const own = Array.from({ length: 1601 }, (_, i) => ({ by: i - 800, p: kernel((i - 800) * step, 0.15) }));
  const sums = { mass: 0, first: 0, second: 0 };
  const perRecipe = keys.map(() => ({ first: 0, second: 0 }));
  offsets.forEach((u, i) => {
    const given = likelihoods.map((likelihood_) => {
      const at = { mass: 0, first: 0, second: 0 };
      for (const { by, p } of own) {
        const s = u + by * step;
        const weight = p * (likelihood_[i + by] ?? 0);
        at.mass += weight;
        at.first += weight * s;
        at.second += weight * s * s;
      }
      return at;
    });
    const weight = given.reduce((product, { mass }) => product * mass, kernel(u, 0.35));
    if (weight === 0) return;
    sums.mass += weight;
    sums.first += weight * u;
    sums.second += weight * u * u;
    perRecipe.forEach((sum, r) => {
      const at = given[r] ?? { mass: 1, first: 0, second: 0 };
      sum.first += (weight * at.first) / at.mass;
      sum.second += (weight * at.second) / at.mass;
    });
  });
  const moments = ({ first, second }: { first: number; second: number }): Moments => {
    const mean = first / sums.mass;
    return { mean, sd: Math.sqrt(second / sums.mass - mean * mean) };
  };
  return {
    mass: sums.mass,
    workshop: moments(sums),
    recipes: new Map(keys.map((key, r) => [key, moments(perRecipe[r] ?? { first: NaN, second: NaN })])),
  };
}

function kernel(x: number, sigma: number): number {
  return Math.exp(-((x / sigma) ** 2) / 2);
}

/** What came “just now” came within a fiftieth. */
function likelihood(seen: Seen, s: number, slips: number): number {
  const { exact, above = -Infinity, below = Infinity, sigma } = seen;
  const [from, to] = exact === undefined ? [above, below] : [exact - 0.02, exact + 0.02];
  const within = (spread: number): number => {
    const [a, b] = [(from - s) / spread, (to - s) / spread];
    return a + b > 0 ? normalCdf(-a, 0, 1) - normalCdf(-b, 0, 1) : normalCdf(b, 0, 1) - normalCdf(a, 0, 1);
  };
  return (1 - slips) * within(sigma) + slips * within(3.2 * sigma);
}

import { offsetPrior } from '../offset-prior.js';
import { gridFor } from './cells.js';
import { evidenceOf, type Evidence, type SeenBatch } from './evidence.js';
import { givenWorkshop, type GivenWorkshop } from './levels.js';
import { lookingDaysOf, lookingHabits, stretchesOf, type LookingHabit } from './looking-habits.js';
import type { Observation } from './observation.js';
import type { OffsetPrior, Posterior, RecipeOffset } from './posterior.js';
import { recipeLikelihood } from './recipe-likelihood.js';
import { learnedSpread, type SpreadMass } from './learned-spread.js';

/** What is taken for granted before any log. */
export interface LearningPrior extends OffsetPrior {
  /** The share of entries that are slips, which tell of no soap. */
  readonly slips: number;
  /** How many times the σ of the rules batches may vary, with how likely that is; the sum does not matter. */
  readonly spreads: readonly { readonly times: number; readonly prior: number }[];
  /** How makers may look and write, with how likely that is. */
  readonly habits: readonly LookingHabit[];
}

/** What is likeliest before any log, and how far makers differ: a standard deviation of the logarithm. A choice. */
const [USUAL_SPREAD, SPREAD_SIGMA] = [1.3, 0.6];

/**
 * Log-normal on seven points that rise evenly in the logarithm: steady and careless makers differ by a factor of four. An inverse
 * chi-square of the same middle all but rules out the steady ones, and takes a hundred batches to be talked out of it.
 */
const spreads = [0.24, 0.36, 0.54, 0.8, 1.2, 1.72, 2.4].map((times) => ({
  times,
  prior: Math.exp(-((Math.log(times / USUAL_SPREAD) / SPREAD_SIGMA) ** 2) / 2),
}));

/** One entry in twenty is taken for a slip. A choice. */
export const learningPrior: LearningPrior = { ...offsetPrior, spreads, habits: lookingHabits, slips: 0.05 };

/**
 * Learns how a workshop, its recipes and its batches differ from the rules in one pace.
 *
 *     y = ln(time / forecast median) = u + r + ε       s = u + r
 *     u ~ N(0, workshopSigma²)       r ~ N(0, recipeSigma² + doubt²)       ε ~ N(0, (κσ)²)
 *
 * σ is what the rules say of a batch, κ how many times that batches of this workshop vary, with a log-normal prior. No time is
 * taken for known: of a batch is seen that it came between two looks (interval censoring), and what was found ready may have
 * been so for days, during which nobody looked, or looked and wrote nothing. How often that is the case is learned too
 * (`stretchesOf`). One entry in twenty is taken for a slip (`recipeLikelihood`), so that none bends the rest.
 *
 * “Done” alone tells when somebody had time: with no look that found the soap not ready it teaches nothing, as nothing then
 * tells whoever writes all they see from whoever writes the end only. All sums go over a grid of u, s, κ and habits.
 *
 * @param observations one per batch (see `oneOf`), in any order; forgetting one is learning without it
 * @throws RangeError for an observation outside its range
 * @see A. Gelman et al., Bayesian Data Analysis, 3rd ed. (2013), 2.6 and 5.4 for the variances and levels; J. Sun, The
 *   Statistical Analysis of Interval-censored Failure Time Data (2006), for looks; P. J. Huber, Ann. Math. Statist. 35 (1964)
 *   73-101, for slips (all from memory)
 */
export function learn(observations: readonly Observation[], prior: LearningPrior = learningPrior): Posterior {
  return learnFrom(evidenceOf(observations), prior);
}

/** `learn` from what the observations add up to. @throws RangeError for a prior outside its range */
export function learnFrom(evidence: Evidence, prior: LearningPrior = learningPrior): Posterior {
  const { workshopSigma, recipeSigma } = prior;
  if (!(workshopSigma > 0 && recipeSigma > 0)) {
    throw new RangeError(`priors ${String(workshopSigma)} and ${String(recipeSigma)}; accepted: above 0`);
  }
  const all = [...evidence.values()].flatMap(({ seen }) => seen);
  return all.some(({ above }) => above !== undefined)
    ? learned(evidence, all, prior)
    : {
        ...{ workshop: { mean: 0, sd: workshopSigma }, spread: 1, batches: 0 },
        recipe: (_, doubt = 0) => ({
          mean: 0,
          sd: Math.sqrt(workshopSigma ** 2 + recipeSigma ** 2 + doubt ** 2),
          sharedSd: workshopSigma,
        }),
      };
}

/** Batches that the rules' own σ counts as, squared, beside what the log tells of theirs. A choice. */
const RULES_COUNT = 2;

/** The prior allows for more than the rules say. What batches have not shown yet is taken from the rules. */
function priorSpread({ spreads: of, slips }: LearningPrior): number {
  const prior = of.map(({ times, prior: chance }) => ({ spread: times, log: Math.log(chance) }));
  return learnedSpread(prior, new Map(of.map(({ times, prior: chance }) => [times, chance])), slips);
}

/** A spread and a habit, and what all recipes say of the workshop if they are the true ones. */
interface Case {
  readonly spread: number;
  /** By offset of the workshop: log of prior and likelihood. */
  readonly log: Float64Array;
  readonly recipes: readonly GivenWorkshop[];
}

function topOf(log: Float64Array): number {
  let top = -Infinity;
  for (const each of log) if (each > top) top = each;
  return top;
}

/** Less likely than this beside the likeliest, a case does not count. */
const NEGLIGIBLE = 1e-3;

function learned(evidence: Evidence, all: readonly SeenBatch[], prior: LearningPrior): Posterior {
  const { workshopSigma, recipeSigma } = prior;
  const days = lookingDaysOf(evidence);
  const placed = [...evidence].map(([key, { seen, doubt }]) => ({
    key,
    tau: Math.hypot(recipeSigma, doubt),
    batches: seen.map((batch) => ({
      sigma: batch.sigma,
      stretches: stretchesOf(batch, days, prior.habits),
    })),
  }));
  const isPlain = placed.every(({ batches }) =>
    batches.every(({ stretches }) => stretches.ends.length === 2),
  );
  const habits = isPlain ? prior.habits.slice(0, 1) : prior.habits;
  const grid = gridFor(all.flatMap(({ above, below }) => [Math.max(above ?? 0, 0), Math.min(below ?? 0, 0)]));
  const { points } = grid;
  const likelihoods = placed.map(({ batches }) =>
    recipeLikelihood(
      batches,
      { spreads: prior.spreads.map(({ times }) => times), habits: habits.length, slips: prior.slips },
      grid,
    ),
  );
  const priorLog = points.map((u) => -((u / workshopSigma) ** 2) / 2);
  const supposed = prior.spreads
    .flatMap(({ times, prior: chance }, j) =>
      habits.map((habit, h) => {
        const logs = likelihoods.map((likelihood) => likelihood[j]![h]!);
        const most = logs.reduce((sum, log) => sum + topOf(log), Math.log(chance * habit.prior));
        return { spread: times, logPrior: Math.log(chance * habit.prior), logs, most };
      }),
    )
    .sort((one, other) => other.most - one.most);
  const cases: Case[] = [];
  let best = -Infinity;
  for (const { spread, logPrior, logs, most } of supposed) {
    // No sum over a case is more than its likeliest point.
    if (most < best + Math.log(NEGLIGIBLE / points.length)) break;
    const recipes = placed.map(({ tau }, r) => givenWorkshop(grid, logs[r]!, tau));
    const log = priorLog.map((ofPrior) => ofPrior + logPrior);
    for (const { log: given } of recipes) for (let i = 0; i < log.length; i += 1) log[i]! += given[i]!;
    best = Math.max(best, topOf(log));
    cases.push({ spread, log, recipes });
  }
  const bounded = all.filter(({ above, below }) => above !== undefined && below !== undefined).length;
  return summary(cases, points, grid.step, placed, {
    ...{ recipeSigma, batches: all.length, slips: prior.slips },
    unlearned: priorSpread(prior) ** ((RULES_COUNT / (RULES_COUNT + bounded)) ** 2),
    likeliest: prior.spreads.map(({ times }) => ({
      spread: times,
      log: Math.max(...supposed.filter(({ spread }) => spread === times).map(({ most }) => most)),
    })),
  });
}

function summary(
  cases: readonly Case[],
  points: Float64Array,
  step: number,
  placed: readonly { readonly key: string }[],
  of: {
    readonly recipeSigma: number;
    readonly batches: number;
    readonly slips: number;
    readonly likeliest: readonly SpreadMass[];
    readonly unlearned: number;
  },
): Posterior {
  const { recipeSigma, batches, slips, likeliest, unlearned } = of;
  const top = Math.max(...cases.map(({ log }) => topOf(log)));
  const weighed = cases.map((each) => ({ ...each, weights: each.log.map((log) => Math.exp(log - top)) }));
  const masses = weighed.map(({ weights }) => weights.reduce((sum, weight) => sum + weight, 0));
  const most = Math.max(...masses);
  const counted = weighed.filter((_, c) => masses[c]! >= NEGLIGIBLE * most);
  const total = masses.reduce((sum, mass) => sum + (mass >= NEGLIGIBLE * most ? mass : 0), 0);
  const expect = (value: (each: Case, i: number) => number): number =>
    counted.reduce(
      (sum, each) =>
        sum + each.weights.reduce((all, weight, i) => all + (weight > 0 ? weight * value(each, i) : 0), 0),
      0,
    ) / total;
  // Within a step of the grid nothing is told apart.
  const grain = (step * step) / 12;
  const mean = expect((_, i) => points[i]!);
  const variance = expect((_, i) => (points[i]! - mean) ** 2) + grain;
  const workshop = { mean, sd: Math.sqrt(variance) };
  const recipes = new Map(
    placed.map(({ key }, r): [string, RecipeOffset] => {
      const own = expect(({ recipes: given }, i) => given[r]!.mean[i]!);
      const square = expect(({ recipes: given }, i) => given[r]!.square[i]!);
      const common = expect(({ recipes: given }, i) => (points[i]! - mean) * (given[r]!.mean[i]! - own));
      const sd = Math.sqrt(Math.max(0, square - own * own) + grain);
      return [key, { mean: own, sd, sharedSd: Math.min(sd, Math.max(0, common) / workshop.sd) }];
    }),
  );
  const summed = new Map<number, number>();
  weighed.forEach(({ spread }, c) => summed.set(spread, (summed.get(spread) ?? 0) + masses[c]!));
  return {
    ...{ workshop, batches, spread: learnedSpread(likeliest, summed, slips) / unlearned },
    recipe: (key, doubt = 0) =>
      recipes.get(key) ?? {
        mean,
        sd: Math.sqrt(variance + recipeSigma ** 2 + doubt ** 2),
        sharedSd: workshop.sd,
      },
  };
}

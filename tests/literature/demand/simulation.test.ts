import normalCdfOracle from '@stdlib/stats-base-dists-normal-cdf';
import { describe, expect, it } from 'vitest';
import { batchFor, demandOf, leftover, learnUse, priorUse, shortageChance } from '#chemistry';
import type { Losses, PieceUse } from '#chemistry';
import { seededRandom, type Random } from '#units';

const DRAWS = 200_000;

const noLosses = { fixedMl: 0, fixedSpreadPercent: 0, trimmingPercent: 0 };
const bowlAndBag = { fixedMl: 40, fixedSpreadPercent: 30, trimmingPercent: 12 };
const guessed = priorUse({ meanMl: 18, spreadPercent: 8, meanUncertaintyPercent: 6 });
const weighed = learnUse(guessed, [
  { pieces: 12, usedMl: 12 * 18.9 },
  { pieces: 24, usedMl: 24 * 18.4 },
]);

/**
 * Oracle: the whole story told at random. A variance is drawn from its inverse gamma as 2β over a chi-square made of
 * exponentials, a mean given it, then the pieces, then the losses; no t distribution anywhere.
 */
describe('the chance of running short against the story simulated', () => {
  it.each<[string, PieceUse, number, Losses]>([
    ['1 piece, nothing lost', guessed, 1, noLosses],
    ['6 pieces, nothing lost', guessed, 6, noLosses],
    ['6 pieces with losses', guessed, 6, bowlAndBag],
    ['24 pieces with losses', guessed, 24, bowlAndBag],
    ['24 pieces with losses, after weighings', weighed, 24, bowlAndBag],
    ['300 pieces with losses', guessed, 300, bowlAndBag],
    ['3 pieces, mostly losses', guessed, 3, { ...bowlAndBag, fixedMl: 400 }],
  ])('%s', (_name, use, pieces, losses) => {
    const demand = demandOf(use, pieces, losses);
    const certainties = [0.5, 0.8, 0.9, 0.95, 0.99];
    const batches = certainties.map((certainty) => batchFor(demand, certainty));
    const needs = simulate(use, pieces, losses);
    batches.forEach((batchMl, i) => {
      const short = needs.filter((need) => need > batchMl).length / DRAWS;
      const expected = shortageChance(demand, batchMl);
      const noise = Math.sqrt((expected * (1 - expected)) / DRAWS);
      expect(expected).toBeCloseTo(1 - (certainties[i] ?? NaN), 9);
      // With losses the t is an approximation, whose error the next test pins down.
      expect(Math.abs(short - expected)).toBeLessThan(4 * noise + (losses.fixedMl > 0 ? 0.0013 : 0));
    });
    const batchMl = batches[3] ?? NaN;
    const left = needs.reduce((sum, need) => sum + Math.max(0, batchMl - need), 0) / DRAWS;
    expect(left / leftover(demand, batchMl).mean).toBeCloseTo(1, 2);
  });
});

/**
 * Oracle: the same story integrated. Given σ² everything is normal, so the chance is the normal tail of @stdlib
 * averaged over the inverse gamma by the midpoint rule in ln σ².
 */
describe('the chance of running short against the story integrated', () => {
  it.each([0.5, 2, 5, 10, 20, 40, 100, 400])('with %d mL of losses', (fixedMl) => {
    const losses = { ...bowlAndBag, fixedMl };
    for (const use of [guessed, weighed]) {
      for (const pieces of [1, 6, 24, 300]) {
        const demand = demandOf(use, pieces, losses);
        for (const certainty of [0.5, 0.8, 0.9, 0.95, 0.99, 0.999]) {
          const batchMl = batchFor(demand, certainty);
          const error = Math.abs(integrate(use, pieces, losses, batchMl) - (1 - certainty));
          expect(error).toBeLessThan(certainty < 0.9 ? 0.0013 : 0.0004);
        }
      }
    }
  });
});

function integrate(use: PieceUse, pieces: number, losses: Losses, batchMl: number): number {
  const kept = 1 - losses.trimmingPercent / 100;
  const meanMl = (pieces * use.meanMl) / kept + losses.fixedMl;
  const ofLosses = ((losses.fixedMl * losses.fixedSpreadPercent) / 100) ** 2;
  const sums = { weight: 0, short: 0 };
  for (let u = -3; u < 5; u += 0.02) {
    const variance = (use.scale / use.shape) * Math.exp(u);
    const weight = Math.exp(-use.shape * u - use.shape * Math.exp(-u));
    const ofPieces = (variance * pieces * (1 + pieces / use.pieces)) / kept ** 2;
    sums.weight += weight;
    sums.short += weight * normalCdfOracle(meanMl - batchMl, 0, Math.sqrt(ofPieces + ofLosses));
  }
  return sums.short / sums.weight;
}

function simulate(use: PieceUse, pieces: number, losses: Losses): Float64Array {
  const random = seededRandom(20_260_101);
  const normal = normals(random);
  const needs = new Float64Array(DRAWS);
  for (let draw = 0; draw < DRAWS; draw += 1) {
    const chiSquare = drawChiSquare(2 * use.shape, random, normal);
    const deviation = Math.sqrt((2 * use.scale) / chiSquare);
    const mean = use.meanMl + (deviation / Math.sqrt(use.pieces)) * normal();
    const fixed = losses.fixedMl * (1 + (losses.fixedSpreadPercent / 100) * normal());
    needs[draw] = sumOfPieces(pieces, mean, deviation, normal) / (1 - losses.trimmingPercent / 100) + fixed;
  }
  return needs;
}

/** Two squared normals are an exponential of mean 2; an odd degree of freedom adds one squared normal. */
function drawChiSquare(df: number, random: Random, normal: () => number): number {
  let product = 1;
  for (let pair = 0; pair < Math.floor(df / 2); pair += 1) product *= 1 - random.next();
  return -2 * Math.log(product) + (df % 2) * normal() ** 2;
}

/** Piece by piece, or for many at once: a sum of independent normals is normal. */
function sumOfPieces(pieces: number, mean: number, deviation: number, normal: () => number): number {
  if (pieces > 6) return pieces * mean + Math.sqrt(pieces) * deviation * normal();
  let sum = 0;
  for (let piece = 0; piece < pieces; piece += 1) sum += mean + deviation * normal();
  return sum;
}

/** Box and Muller (Ann. Math. Stat. 29 (1958) 610-611), two at a time. */
function normals(random: Random): () => number {
  let spare: number | undefined;
  return () => {
    if (spare !== undefined) {
      const kept = spare;
      spare = undefined;
      return kept;
    }
    const radius = Math.sqrt(-2 * Math.log(1 - random.next()));
    const angle = 2 * Math.PI * random.next();
    spare = radius * Math.sin(angle);
    return radius * Math.cos(angle);
  };
}

import {
  band,
  evaluate,
  forecast,
  learn,
  offsetPrior,
  oneOf,
  referenceInputs,
  stateIds,
  withOffset,
  type ClockInputs,
  type Forecast,
  type Reason,
  type Observation,
  type RecipeOffset,
  type Sighting,
} from '#clocks';
import { normalQuantile, seededRandom, type Random } from '#units';
import { type Figure, median } from '../support/figure.js';

const SEED = 1843;
const RECIPES = 4;
const HELD_BACK = 20;
const HOUR = 60;

const firm = forecast('firm', referenceInputs);

/** Do the bands hold what they promise once a log has taught them, how much narrower are they, how fast are clocks? */
export async function figures(): Promise<Figure[]> {
  return [...coverageFigures(), ...widthFigures(), evaluationsPerSecond()];
}

/**
 * Simulated workshops, their offsets drawn from the prior or fixed. Each makes four recipes and logs batches as
 * `anyObservation` says; then batches of one of these recipes and of a fifth, never made before, are held against
 * the band. The figure is the worse of the two. The more is known, the less workshops differ in their coverage and
 * the fewer it takes.
 */
function coverageFigures(): Figure[] {
  const fromPrior = [
    { batches: 0, workshops: 6000 },
    { batches: 5, workshops: 2500 },
    { batches: 20, workshops: 1500 },
    { batches: 100, workshops: 500 },
  ].map((trial) => ({ ...trial, bar: 3, of: 'offsets from the prior', workshopOffset: undefined }));
  const fixed = [20, 100].flatMap((batches) =>
    [0.5, 2].map((times) => ({
      ...{ batches, workshops: 500, bar: 5 },
      ...{ of: `${String(times)}× the forecast`, workshopOffset: Math.log(times) },
    })),
  );
  const trials = [...fromPrior, ...fixed].map((trial) => ({ trial, seen: coverage(trial) }));
  const errors = trials.flatMap(({ seen }) => seen.map(({ standardError }) => standardError));
  return [
    ...trials.map(({ trial: { batches, bar, of }, seen }): Figure => ({
      name: `coverage off 80 % after ${String(batches)}, ${of}`,
      value: 100 * Math.max(...seen.map(({ share }) => Math.abs(share - 0.8))),
      ...{ unit: 'points', bar, better: 'lower' },
    })),
    {
      ...{ name: 'the simulation’s own error of these, worst', value: 100 * Math.max(...errors) },
      ...{ unit: 'points', bar: 0.7, better: 'lower' },
    },
  ];
}

interface Trial {
  readonly batches: number;
  readonly workshops: number;
  readonly workshopOffset: number | undefined;
}

interface Coverage {
  readonly share: number;
  readonly standardError: number;
}

/** For a recipe that was made before and for one never made. */
function coverage({ batches, workshops, workshopOffset }: Trial): Coverage[] {
  const random = seededRandom(SEED + batches);
  const shares: [number[], number[]] = [[], []];
  for (let workshop = 0; workshop < workshops; workshop += 1) {
    const offsets = drawOffsets(random, workshopOffset);
    const lessons = learn(logOf(offsets, batches, random, anyObservation));
    const ofLog = Math.floor(random.next() * RECIPES);
    shares[0].push(shareHeld(lessons, ofLog, offsets, random));
    shares[1].push(shareHeld(lessons, RECIPES, offsets, random));
  }
  return shares.map((each) => {
    const share = mean(each);
    const variance = mean(each.map((x) => (x - share) ** 2));
    return { share, standardError: Math.sqrt(variance / each.length) };
  });
}

/** δ_w + δ_r of each recipe, the last one for the recipe never made. */
function drawOffsets(random: Random, workshopOffset = offsetPrior.workshopSigma * normal(random)): number[] {
  return Array.from({ length: RECIPES + 1 }, () => workshopOffset + offsetPrior.recipeSigma * normal(random));
}

function logOf(
  offsets: readonly number[],
  batches: number,
  random: Random,
  observe: (recipe: string, minutes: number, random: Random) => Observation,
): Observation[] {
  return Array.from({ length: batches }, () => {
    const recipe = Math.floor(random.next() * RECIPES);
    return observe(String(recipe), drawMinutes(offsets[recipe] ?? NaN, random), random);
  });
}

function drawMinutes(offset: number, random: Random): number {
  return firm.medianMin * Math.exp(offset + firm.batchSigma * normal(random));
}

function shareHeld(
  lessons: ReturnType<typeof learn>,
  recipe: number,
  offsets: readonly number[],
  random: Random,
): number {
  const { low, high } = band(taught(lessons.recipe(String(recipe)), lessons.spread));
  let held = 0;
  for (let batch = 0; batch < HELD_BACK; batch += 1) {
    const minutes = drawMinutes(offsets[recipe] ?? NaN, random);
    if (low <= minutes && minutes <= high) held += 1;
  }
  return held / HELD_BACK;
}

function taught({ mean: offset, sd, sharedSd }: RecipeOffset, spread: number): Forecast {
  const reason: Reason = {
    ...{ rule: 'lesson', input: 'log', value: 1, usual: 0 },
    ...{ factor: 1, evidence: { kind: 'bench log' } },
  };
  return withOffset(firm, { mean: offset, sd, sharedSd, spread, reason });
}

/**
 * What a log tells of a batch: two in five are tried by the hour and known exactly. The others are looked at of an
 * evening, if at all (three evenings in four), until they are found firm, or after one look in ten forgotten.
 * Nothing of this depends on how the batch will turn out, else the log would mislead.
 */
function anyObservation(recipe: string, minutes: number, random: Random): Observation {
  if (random.next() < 0.4) return exactObservation(recipe, minutes);
  const sightings: Sighting[] = [];
  for (let evening = 24 * HOUR * random.next(); ; evening += 24 * HOUR) {
    if (random.next() >= 0.75) continue;
    const kind = minutes <= evening ? 'already' : 'not-yet';
    const logRatio = Math.log(evening / firm.medianMin);
    const { batchSigma: sigma, ruleSigma: doubt } = firm;
    sightings.push({ kind, by: 'look', logRatio, sigma, doubt, minutes: evening, at: evening, entry: '' });
    if (kind === 'already' || random.next() < 0.1) break;
  }
  return oneOf(recipe, sightings) ?? anyObservation(recipe, minutes, random);
}

function exactObservation(recipe: string, minutes: number): Observation {
  const exact = Math.log(minutes / firm.medianMin);
  return { recipe, exact, sigma: firm.batchSigma, doubt: 0, looks: 0, missed: 0, day: 0, entries: [] };
}

/** Width is ln(high/low) of the unmould band, after 20 batches of four recipes, mean of many workshops. */
function widthFigures(): Figure[] {
  return [
    { of: 'exact', observe: exactObservation },
    { of: 'mixed', observe: anyObservation },
  ].flatMap(({ of, observe }): Figure[] => {
    const random = seededRandom(SEED);
    const lessons = Array.from({ length: 300 }, () => learn(logOf(drawOffsets(random), 20, random, observe)));
    const share = (recipe: number): number =>
      (100 * mean(lessons.map((each) => logWidth(taught(each.recipe(String(recipe)), each.spread))))) /
      logWidth(firm);
    const name = (whose: string): string => `unmould band after 20 ${of} batches, ${whose}`;
    const unit = '% of unlearned';
    return [
      { name: name('a recipe of the log'), value: share(0), unit, bar: 65, better: 'lower' },
      { name: name('a new one'), value: share(RECIPES), unit, bar: null, better: 'lower' },
    ];
  });
}

function logWidth(f: Forecast): number {
  const { low, high } = band(f);
  return Math.log(high / low);
}

/** One evaluation is one state for one recipe; every state in turn. Median of five after a warm-up. */
function evaluationsPerSecond(): Figure {
  const inputs = someInputs(512);
  const rates = Array.from({ length: 6 }, () => rateOf(inputs)).slice(1);
  return {
    ...{ name: 'clock evaluations per second', value: Math.round(median(rates)), unit: '/s' },
    ...{ bar: 100_000, better: 'higher' },
  };
}

function rateOf(inputs: readonly ClockInputs[]): number {
  const started = performance.now();
  let evaluations = 0;
  let sum = 0;
  while (performance.now() - started < 400) {
    for (const each of inputs) {
      for (const state of stateIds) sum += evaluate(state, each).medianMin;
    }
    evaluations += inputs.length * stateIds.length;
  }
  const seconds = (performance.now() - started) / 1000;
  // The sum is looked at so that nothing of the work can be left out.
  if (!Number.isFinite(sum)) throw new Error('a clock has no time');
  return evaluations / seconds;
}

function someInputs(count: number): ClockInputs[] {
  const random = seededRandom(SEED);
  const from = (low: number, high: number): number => low + (high - low) * random.next();
  return Array.from({ length: count }, () => ({
    ...referenceInputs,
    lyeConcentrationPercent: from(25, 40),
    sodiumLactatePercent: from(0, 3),
    hardFattyAcidsPercent: from(15, 60),
    oleicPercent: from(20, 40),
    castorPercent: from(0, 15),
    buttersPercent: from(0, 20),
    batterTemperatureC: from(28, 58),
    roomTemperatureC: from(10, 30),
    roomHumidityPercent: from(30, 80),
  }));
}

function normal(random: Random): number {
  // Half of the generator's resolution, so that 0 never comes.
  return normalQuantile(random.next() + 2 ** -33);
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

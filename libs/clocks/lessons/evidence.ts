import type { Observation } from './observation.js';

/** A batch as it is kept: as `Observation`, rounded, its recipe and entries aside. Plain data, for keeping and sending. */
export interface SeenBatch {
  /** Days since 1970. */
  readonly day: number;
  readonly sigma: number;
  readonly above?: number | undefined;
  readonly below?: number | undefined;
  readonly readyAfterDays?: number | undefined;
  readonly looks: number;
  readonly missed: number;
  readonly opened?: number | undefined;
}

/** All that the batches of one recipe say of one pace. */
export interface RecipeEvidence {
  /** The latest, in order of time. */
  readonly seen: readonly SeenBatch[];
  /** What the rules may have wrong about the recipe, as of its latest batch. */
  readonly doubt: number;
}

/** What is known of one pace, by recipe: all that `learnFrom` reads of the observations behind it. */
export type Evidence = ReadonlyMap<string, RecipeEvidence>;

/** So many batches of a pace are kept, the latest: room, moulds and hands change, and more would hardly teach more. A choice. */
const KEPT = 96;
/** And of each recipe at least so many, however long ago. A choice. */
const KEPT_OF_RECIPE = 12;

/** Nobody looks to the second: what came “just now” is known to a fiftieth of its time either way. */
const JUST_NOW = 0.02;

/**
 * Sorts observations by recipe and keeps the latest. What is kept depends neither on the order nor on whether they are
 * added at once.
 * @param before evidence that they are added to, left as it is; absent: none
 * @throws RangeError when an observation is no observation: σ not above 0, an exact time that is not finite,
 *   bounds without room between them
 */
export function evidenceOf(observations: readonly Observation[], before: Evidence = new Map()): Evidence {
  const all = new Map([...before].map(([recipe, { seen, doubt }]) => [recipe, { seen: [...seen], doubt }]));
  for (const observation of observations) {
    const batch = seenBatch(observation);
    const doubt = rounded(observation.doubt);
    const known = all.get(observation.recipe);
    if (known === undefined) all.set(observation.recipe, { seen: [batch], doubt });
    else {
      const latest = known.seen.at(-1);
      const isLater = latest === undefined || inTime(latest, batch) < 0;
      all.set(observation.recipe, {
        seen: [...known.seen, batch].sort(inTime),
        doubt: isLater ? doubt : known.doubt,
      });
    }
  }
  const latest = [...all.values()].flatMap(({ seen }) => seen).sort(inTime);
  const from = latest.at(-KEPT);
  return new Map(
    [...all].map(([recipe, { seen, doubt }]) => [
      recipe,
      {
        seen: seen.filter(
          (batch, i) => from === undefined || inTime(batch, from) >= 0 || i >= seen.length - KEPT_OF_RECIPE,
        ),
        doubt,
      },
    ]),
  );
}

function seenBatch(observation: Observation): SeenBatch {
  const { exact, sigma, readyAfterDays, looks, missed, opened, day } = observation;
  if (!(sigma > 0 && sigma < Infinity)) throw new RangeError(`σ of ${String(sigma)}; accepted: above 0`);
  if (exact !== undefined && !Number.isFinite(exact)) {
    throw new RangeError(`an exact time with the logarithm ${String(exact)}`);
  }
  const above = exact === undefined ? (observation.above ?? -Infinity) : exact - JUST_NOW;
  const below = exact === undefined ? (observation.below ?? Infinity) : exact + JUST_NOW;
  if (!(above < below)) throw new RangeError(`above ${String(above)} and below ${String(below)} at once`);
  const [from, to] = [rounded(above), rounded(below)];
  return {
    ...{ day, sigma: rounded(sigma), looks, missed },
    ...(from > -Infinity && { above: from }),
    // Bounds that are the same but for rounding keep room between them.
    ...(to < Infinity && { below: Math.max(to, rounded(from + STEP)) }),
    ...(readyAfterDays !== undefined && { readyAfterDays: Math.round(readyAfterDays * 10) / 10 }),
    ...(opened !== undefined && { opened: rounded(opened) }),
  };
}

/** A thousandth of a time: less is nothing beside the spread of batches, and short numbers travel light. */
const STEP = 0.001;

function rounded(x: number): number {
  return Number.isFinite(x) ? Math.round(x / STEP) / Math.round(1 / STEP) : x;
}

/** Oldest first, and always in the same order. */
function inTime(a: SeenBatch, b: SeenBatch): number {
  return (
    a.day - b.day ||
    (a.below ?? 99) - (b.below ?? 99) ||
    (a.above ?? -99) - (b.above ?? -99) ||
    a.sigma - b.sigma ||
    a.looks - b.looks ||
    a.missed - b.missed ||
    (a.readyAfterDays ?? -1) - (b.readyAfterDays ?? -1) ||
    (a.opened ?? -99) - (b.opened ?? -99)
  );
}

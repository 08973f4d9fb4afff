import { evidenceOf, learnFrom, type Evidence, type SeenBatch } from '#clocks';
import { paces, type Learned, type LearnedPace, type RunTeachings } from '#contract';
import { addedUses } from './added-uses.js';
import { nothingLearned } from '../clocks/nothing-learned.js';

/**
 * What a workshop has learned from runs. The order of the runs does not matter, nor whether they are added at once or one
 * after the other.
 * @param before what was learned from other runs, added to; absent: nothing
 */
export function learnedFrom(teachings: readonly RunTeachings[], before: Learned = nothingLearned): Learned {
  const observations = teachings.flatMap((run) => run.observations);
  const weighings = teachings.flatMap((run) => run.weighings);
  return {
    ...withObservations(observations, before),
    earliest: soonest([...before.earliest, ...teachings.flatMap((run) => run.earliest)]),
    uses: weighings.length === 0 ? before.uses : addedUses(before.uses, weighings),
  };
}

/** What was learned, with more that was seen of batches. */
export function withObservations(
  observations: RunTeachings['observations'],
  before: Learned = nothingLearned,
): Learned {
  const seen = new Set(observations.map(({ pace }) => pace));
  return {
    ...before,
    paces: paces.flatMap((pace) => {
      const known = before.paces.find((each) => each.pace === pace);
      if (!seen.has(pace)) return known ?? [];
      const own = observations.filter((each) => each.pace === pace);
      return learnedPace(pace, evidenceOf(own, known && evidenceBehind(known)));
    }),
  };
}

function learnedPace(pace: LearnedPace['pace'], evidence: Evidence): LearnedPace {
  const { workshop, spread, batches, recipe: offsetOf } = learnFrom(evidence);
  return {
    ...{ pace, workshop, spread, batches },
    recipes: [...evidence].map(([recipe, { doubt, seen }]) => ({
      recipe,
      ...offsetOf(recipe, doubt),
      doubt,
      seen: seen.map(packed),
    })),
  };
}

function evidenceBehind({ recipes }: LearnedPace): Evidence {
  return new Map(
    recipes.map(({ recipe, doubt, seen }) => [recipe, { doubt, seen: seen.map(unpacked) }] as const),
  );
}

type Packed = LearnedPace['recipes'][number]['seen'][number];

function packed({ day, sigma, above, below, readyAfterDays, looks, missed, opened }: SeenBatch): Packed {
  return [day, sigma, above ?? null, below ?? null, readyAfterDays ?? null, looks, missed, opened ?? null];
}

function unpacked([day, sigma, above, below, readyAfterDays, looks, missed, opened]: Packed): SeenBatch {
  return {
    ...{ day: day ?? 0, sigma: sigma ?? 1, looks: looks ?? 0, missed: missed ?? 0 },
    above: above ?? undefined,
    below: below ?? undefined,
    readyAfterDays: readyAfterDays ?? undefined,
    opened: opened ?? undefined,
  };
}

function soonest(found: Learned['earliest']): Learned['earliest'] {
  const by = new Map<string, Learned['earliest'][number]>();
  for (const each of found) {
    const name = `${each.recipe} ${each.state}`;
    const known = by.get(name);
    if (known === undefined || each.logRatio < known.logRatio) by.set(name, each);
  }
  return [...by.values()].sort((a, b) =>
    a.recipe === b.recipe ? (a.state < b.state ? -1 : 1) : a.recipe < b.recipe ? -1 : 1,
  );
}

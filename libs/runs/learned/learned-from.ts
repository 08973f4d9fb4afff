import { evidenceOf, learnFrom, type Evidence } from '#clocks';
import { paces, type Learned, type LearnedPace, type RunTeachings } from '#contract';
import { addedUses } from './added-uses.js';

/** What a workshop has learned that has logged nothing. */
export const nothingLearned: Learned = { paces: [], uses: [] };

/**
 * What a workshop has learned from runs. The order of the runs does not matter, nor whether they are added at once or one
 * after the other.
 * @param before what was learned from other runs, added to; absent: nothing
 */
export function learnedFrom(teachings: readonly RunTeachings[], before: Learned = nothingLearned): Learned {
  const observations = teachings.flatMap((run) => run.observations);
  const weighings = teachings.flatMap((run) => run.weighings);
  const seen = new Set(observations.map(({ pace }) => pace));
  return {
    paces: paces.flatMap((pace) => {
      const known = before.paces.find((each) => each.pace === pace);
      if (!seen.has(pace)) return known ?? [];
      const own = observations.filter((each) => each.pace === pace);
      return learnedPace(pace, evidenceOf(own, known && evidenceBehind(known)));
    }),
    uses: weighings.length === 0 ? before.uses : addedUses(before.uses, weighings),
  };
}

function learnedPace(pace: LearnedPace['pace'], evidence: Evidence): LearnedPace {
  const posterior = learnFrom(evidence);
  return {
    pace,
    workshop: posterior.workshop,
    recipes: [...evidence].map(([recipe, { censored, table, ...known }]) => ({
      recipe,
      ...posterior.recipe(recipe),
      ...known,
      censored: [...censored],
      ...(table !== undefined && { table: { ...table, values: [...table.values] } }),
    })),
  };
}

function evidenceBehind({ recipes }: LearnedPace): Evidence {
  return new Map(recipes.map(({ recipe, mean: _mean, sd: _sd, ...evidence }) => [recipe, evidence]));
}

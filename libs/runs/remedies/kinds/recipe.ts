import type { RemedyChange } from '#contract';
import type { AssessedRun } from '../../assessed-run.js';
import { makingStage } from '../../input/resolve-run.js';
import type { Candidate, Situation } from '../candidate.js';

/**
 * Where the shares stay: what draws no risk of its own in `libs/chemistry/batter` (lye of 25 to 40 % is common,
 * sodium lactate up to 3 % usual), well within what is accepted there. Common practice, no source.
 */
const lye = { low: 25, high: 40, step: 3 };
const lactate = { low: 0, high: 3, step: 1 };

/** More or less water, more or less hardener in the batches that the trouble is about, where none is poured yet. */
export function changeRecipe(situation: Situation): Candidate[] {
  return troubledRecipes(situation).flatMap(({ recipe, assessed }) => {
    const now = assessed.run.recipes.get(recipe);
    if (now === undefined) return [];
    const { title, sodiumLactatePercent, lyeConcentrationPercent } = now;
    const lyes = steps(lyeConcentrationPercent, lye);
    const lactates = steps(sodiumLactatePercent, lactate);
    const [stronger] = lyes.filter((each) => each > lyeConcentrationPercent);
    const [harder] = lactates.filter((each) => each > sodiumLactatePercent);
    const changes: Omit<Extract<RemedyChange, { kind: 'recipe' }>, 'kind' | 'recipe'>[] = [
      ...lyes.map((each) => ({ lyeConcentrationPercent: each })),
      ...lactates.map((each) => ({ sodiumLactatePercent: each })),
      ...(stronger === undefined || harder === undefined
        ? []
        : [{ lyeConcentrationPercent: stronger, sodiumLactatePercent: harder }]),
    ];
    return changes.map((change): Candidate => {
      const water = change.lyeConcentrationPercent;
      const hardener = change.sodiumLactatePercent;
      return {
        change: { kind: 'recipe', recipe, ...change },
        about: `recipe/${recipe}`,
        title: {
          code: 'remedy.change-recipe',
          recipe: title,
          ...(water !== undefined && { lyePercent: { before: lyeConcentrationPercent, after: water } }),
          ...(hardener !== undefined && {
            sodiumLactatePercent: { before: sodiumLactatePercent, after: hardener },
          }),
        },
        asks: [{ what: { code: 'disturbance.recipe' }, points: Object.keys(change).length }],
        worse: [],
        also: [{ code: 'remedy.weigh-anew' }],
        cautions: ['caution.lye'],
      };
    });
  });
}

/** Recipes of the parts in trouble, of which no batch in any run has been begun: what is poured stays as it is. */
function troubledRecipes(
  situation: Situation,
): { readonly recipe: string; readonly assessed: AssessedRun }[] {
  const found = new Map<string, AssessedRun>();
  for (const { run, parts } of situation.troubles) {
    const assessed = situation.plan.assessedRuns.find((each) => each.run.order.key === run);
    for (const key of parts) {
      const part = assessed?.run.parts.get(key);
      if (assessed !== undefined && part?.kind === 'batch' && !found.has(part.recipe))
        found.set(part.recipe, assessed);
    }
  }
  const begun = new Set(situation.plan.assessedRuns.flatMap(begunRecipes));
  return [...found]
    .filter(([recipe]) => !begun.has(recipe))
    .map(([recipe, assessed]) => ({ recipe, assessed }));
}

function begunRecipes({ run, progress }: AssessedRun): string[] {
  return run.design.parts.flatMap((part) => {
    if (part.kind !== 'batch') return [];
    const making = makingStage(run.design, part.key)?.key;
    return progress.attempts.some(({ stage, status }) => stage.key === making && status !== 'open')
      ? [part.recipe]
      : [];
  });
}

/** One step up and one down, as far as the range allows; what is outside it is only moved towards it. */
function steps(now: number, { low, high, step }: typeof lye): number[] {
  const up = Math.min(high, Math.round(now + step));
  const down = Math.max(low, Math.round(now - step));
  return [up > now ? up : now, down < now ? down : now].filter((each) => Math.abs(each - now) >= step / 4);
}

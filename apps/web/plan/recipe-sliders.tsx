import { useState, type ReactNode } from 'react';
import type { Recipe } from '#contract';
import { useAmounts } from '../look/amounts.js';
import { useWords } from '../words/words.js';
import { lyeOf, rangeWith, SAFE, type PlanDraft } from './plan-draft.js';
import { Slider } from './slider.js';

/** Water and hardener of the batters of a design, one batter at a time. */
export function RecipeSliders({
  recipes,
  draft,
  onChange,
}: {
  readonly recipes: readonly Recipe[];
  readonly draft: PlanDraft;
  readonly onChange: (changes: PlanDraft['recipes']) => void;
}): ReactNode {
  const { plan } = useWords();
  const amounts = useAmounts();
  const [which, setWhich] = useState<string | null>(null);
  const recipe = recipes.find(({ key }) => key === which) ?? recipes[0];
  if (recipe === undefined) return null;
  const own = { lye: lyeOf(recipe), lactate: recipe.sodiumLactatePercent };
  const changed = draft.recipes[recipe.key] ?? {};
  const lye = changed.lyeConcentrationPercent ?? own.lye;
  const lactate = changed.sodiumLactatePercent ?? own.lactate;
  const set = (change: PlanDraft['recipes'][string]): void =>
    onChange({ ...draft.recipes, [recipe.key]: { ...changed, ...change } });
  const isChanged = lye !== own.lye || lactate !== own.lactate;
  return (
    <fieldset className="stack">
      <legend>{plan.batter}</legend>
      {recipes.length > 1 && (
        <div className="choices">
          {recipes.map(({ key, title }) => (
            <label key={key}>
              <input
                type="radio"
                name="batter"
                value={key}
                checked={key === recipe.key}
                onChange={() => setWhich(key)}
              />
              <span>{title}</span>
            </label>
          ))}
        </div>
      )}
      <Slider
        label={plan.water}
        value={lye}
        text={plan.lyeOf(amounts.percent(lye))}
        {...rangeWith(SAFE.lye, own.lye)}
        ends={[plan.moreWater, plan.lessWater]}
        onChange={(value) => set({ lyeConcentrationPercent: value })}
      />
      <Slider
        label={plan.hardener}
        value={lactate}
        text={plan.ofFats(amounts.percent(lactate))}
        {...rangeWith(SAFE.lactate, own.lactate)}
        ends={[plan.noHardener, plan.moreHardener]}
        onChange={(value) => set({ sodiumLactatePercent: value })}
      />
      <p className="soft small">
        {isChanged ? plan.ownCopy(recipe.title) : plan.asInRecipe(recipe.title)}{' '}
        {isChanged && (
          <button
            type="button"
            className="link"
            onClick={() =>
              onChange(
                Object.fromEntries(Object.entries(draft.recipes).filter(([key]) => key !== recipe.key)),
              )
            }
          >
            {plan.backToRecipe}
          </button>
        )}
      </p>
    </fieldset>
  );
}

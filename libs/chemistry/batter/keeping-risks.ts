import type { FatFacts } from '../fats/fat-facts.js';
import { fatAllergen } from '../fats/fat-allergen.js';
import { polyunsaturatedPercent } from '../fats/fat-profile.js';
import { fatShares } from '../fats/fat-shares.js';
import type { BatterRecipe } from '../recipe/batter-recipe.js';
import type { Risk } from './risk.js';

/** From this share of linoleic and linolenic acid on makers see orange spots within months. Common practice, no source. */
const SPOTS_FROM_PERCENT = 15;
/** From here on hardly any soap keeps. Common practice, no source: shares of a quarter of such oils are advised against. */
const SPOTS_SOON_PERCENT = 25;
/** Free oil turns first: above this superfat the same acids count for more. Common practice, no source. */
const MUCH_SUPERFAT_PERCENT = 8;

/** What shows only once the soap is kept and used: fats that turn rancid, and fats that people react to. */
export function keepingRisks(recipe: BatterRecipe, fats: ReadonlyMap<string, FatFacts>): Risk[] {
  return [rancid(recipe, fats), allergens(recipe, fats), advisedAgainst(recipe, fats)].flatMap(
    (risk) => risk ?? [],
  );
}

function rancid(recipe: BatterRecipe, fats: ReadonlyMap<string, FatFacts>): Risk | undefined {
  const percent = polyunsaturatedPercent(recipe, fats);
  if (percent <= SPOTS_FROM_PERCENT) return undefined;
  const soon = percent > SPOTS_SOON_PERCENT || recipe.superfatPercent > MUCH_SUPERFAT_PERCENT;
  return { code: 'fats.turn-rancid', level: soon ? 'medium' : 'low', percent };
}

function allergens(recipe: BatterRecipe, facts: ReadonlyMap<string, FatFacts>): Risk | undefined {
  const found = fatShares(recipe, facts).flatMap(({ facts: { key, title, inci } }) => {
    const allergen = fatAllergen({ ...(inci !== undefined && { inci }) });
    return allergen === undefined ? [] : [{ fat: key, title, allergen }];
  });
  return found.length === 0 ? undefined : { code: 'fats.allergens', level: 'low', fats: found };
}

/** Some suppliers' sheets advise against these in pregnancy. As remembered; in soap, which is rinsed off, nothing is known of harm. */
const advisedAgainstFats: ReadonlySet<string> = new Set(['neem']);

function advisedAgainst(recipe: BatterRecipe, facts: ReadonlyMap<string, FatFacts>): Risk | undefined {
  const found = fatShares(recipe, facts).flatMap(({ facts: { key, title } }) =>
    advisedAgainstFats.has(key) ? [{ fat: key, title }] : [],
  );
  return found.length === 0 ? undefined : { code: 'fats.advised-against', level: 'low', fats: found };
}

import { referenceInputs, type ClockInputs } from '#clocks';
import {
  alcoholPercent,
  behaviourTogether,
  effectiveLyePercent,
  fatSharePercent,
  freeAcidsPercent,
  hardFattyAcidsPercent,
  hardWaxPercent,
  oleicPercent,
  polyunsaturatedPercent,
  quickestBehaviour,
  sugarAndSaltOf,
  sugarInAdditions,
} from '#chemistry';
import { mouldOf, type BatchPart, type MeltPart, type Part, type WorkshopFacts } from '#contract';
import { expectedUse } from '../input/expected-use.js';
import { mixedTogether } from '../input/mixed-together.js';
import { partBatter, portionsOf, type ColouredBatter } from '../input/part-batter.js';
import { useSurroundings } from '../input/piece-surroundings.js';
import type { Batter, ResolvedRun } from '../input/resolve-run.js';
import { processOf } from '../input/stage-order.js';
import { castSize } from './cast-size.js';
import { partHeat } from './part-heat.js';

/** What the clocks read for a part: of its recipe, its mould and size, its heat and the room. */
export function inputsFor(
  part: Exclude<Part, { kind: 'decor' }>,
  run: ResolvedRun,
  workshop: WorkshopFacts,
): ClockInputs {
  // Melt-and-pour reads nothing but its amount and the room; the rest stands at the clocks' reference point.
  if (part.kind === 'melt-and-pour') {
    return { ...referenceInputs, ...roomOf(workshop), meltMl: expectedMl(part, run) };
  }
  const recipe = run.recipes.get(part.recipe);
  if (recipe === undefined) throw new Error(`recipe ${part.recipe} was not checked`);
  const cold = inputsBesideHeat(part, recipe, run, workshop);
  const heat = partHeat(part, run, cold);
  if (heat === undefined) return cold;
  // Soap that was made in the pot has no gel to come.
  const outcome = outcomeOf(cold.process === 'cold' ? recipe.gel : 'made', heat);
  const hardGelPercent = outcome.gelPercent * quickShare(cold.hardFattyAcidsPercent);
  return { ...cold, ...outcome, hardGelPercent };
}

/** How far fats are as hard and quick as coconut, 0 to 1: mixtures for bars have up to 60 % hard fatty acids, coconut 80 %. */
function quickShare(hardFattyAcidsPercent: number): number {
  return Math.min(1, Math.max(0, (hardFattyAcidsPercent - 60) / 20));
}

/** Chances smaller than this, or as near to certainty, are none. */
const NO_CHANCE_PERCENT = 2;

/** What the heat of a part comes to for its clocks, as the recipe has it or by the balance alone. */
function outcomeOf(
  gel: Batter['gel'] | 'made',
  { gelShare, cooledMin }: { readonly gelShare: number; readonly cooledMin: number },
): Pick<ClockInputs, 'gelPercent' | 'hotHours'> {
  const hotHours = cooledMin / 60;
  switch (gel) {
    case 'none':
      return { gelPercent: 0, hotHours: 0 };
    case 'made':
      return { gelPercent: 0, hotHours };
    case 'full':
      return { gelPercent: 100, hotHours };
    case 'auto': {
      const percent = 100 * gelShare;
      const isSure = percent < NO_CHANCE_PERCENT || percent > 100 - NO_CHANCE_PERCENT;
      return { gelPercent: isSure ? Math.round(percent / 100) * 100 : percent, hotHours };
    }
  }
}

function inputsBesideHeat(
  part: BatchPart,
  recipe: Batter,
  run: ResolvedRun,
  workshop: WorkshopFacts,
): ClockInputs {
  const { fats } = run;
  const mould = run.moulds.get(mouldOf(part) ?? '');
  const { sugarPercent, saltPercent } = sugarAndSaltOf(recipe, fats);
  const { batter } = partBatter(part, recipe, fats);
  return {
    ...referenceInputs,
    ...roomOf(workshop),
    ...thicknessOf(part),
    ...castSize(part, run),
    lyeConcentrationPercent: effectiveLyePercent(batter, fats),
    sodiumLactatePercent: recipe.sodiumLactatePercent,
    saltPercent,
    sugarPercent: sugarPercent + sugarInAdditions(batter),
    clayPercent: additionPercent(batter, 'clay'),
    alcoholPercent: alcoholPercent(batter, fats),
    superfatPercent: recipe.superfatPercent,
    kohSharePercent: recipe.kohSharePercent,
    hardFattyAcidsPercent: hardFattyAcidsPercent(recipe, fats),
    oleicPercent: oleicPercent(recipe, fats),
    polyunsaturatedPercent: polyunsaturatedPercent(recipe, fats),
    castorPercent: fatSharePercent(recipe, fats, 'castor'),
    buttersPercent: fatSharePercent(recipe, fats, 'butter'),
    olivePomacePercent: fatSharePercent(recipe, fats, 'olive-pomace'),
    lardPercent: fatSharePercent(recipe, fats, 'lard'),
    freeAcidsPercent: freeAcidsPercent(recipe, fats),
    waxPercent: hardWaxPercent(recipe, fats),
    batterTemperatureC: recipe.batterTemperatureC,
    mould: mould?.kind ?? 'silicone-cavity',
    fragrance: behaviourOf(part, recipe),
    mixing: mixingOf(part, recipe, run),
    process: processOf(run.design, part.key),
  };
}

function additionPercent(
  { additions }: ColouredBatter,
  kind: ColouredBatter['additions'][number]['kind'],
): number {
  return additions.reduce((sum, each) => (each.kind === kind ? sum + each.percent : sum), 0);
}

/** How thick what stands open is, where its amount tells. */
function thicknessOf({ amount }: BatchPart): Partial<Pick<ClockInputs, 'coatMm' | 'beadMm'>> {
  switch (amount?.by) {
    case 'coat':
      return { coatMm: amount.thicknessMm };
    case 'bead':
      return { beadMm: amount.widthMm };
    case 'bead-section':
      return { beadMm: Math.min(120, 2 * Math.sqrt(amount.sectionMm2 / Math.PI)) };
    case 'cavity':
    case 'finished':
    case 'weighing':
    case undefined:
      return {};
  }
}

function expectedMl(part: BatchPart | MeltPart, run: ResolvedRun): number {
  return expectedUse(part, useSurroundings(part, run)).meanMl;
}

/** What scents a batter decides how long there is for it; portions that are poured at once have as long as the quickest of them. */
function behaviourOf(part: BatchPart, recipe: Batter): ClockInputs['fragrance'] {
  const [first, ...others] = portionsOf(part).map(({ fragrances }) =>
    behaviourTogether([...recipe.fragrances, ...fragrances]),
  );
  return first === undefined ? 'none' : quickestBehaviour([first, ...others]);
}

/** Nobody blends on to trace what is to be split: the blender stops once the emulsion holds, and spoons go on. */
function mixingOf(part: BatchPart, { mixing }: Batter, { design }: ResolvedRun): Batter['mixing'] {
  if (mixing !== 'blender') return mixing;
  const batch = new Set(mixedTogether(design, part.key).map(({ key }) => key));
  const isSplit =
    part.portions !== undefined ||
    batch.size > 1 ||
    design.stages.some((stage) => stage.kind === 'split' && batch.has(stage.part));
  return isSplit ? 'to-emulsion' : mixing;
}

function roomOf({
  room,
}: WorkshopFacts): Pick<ClockInputs, 'roomTemperatureC' | 'roomHumidityPercent' | 'air'> {
  return { roomTemperatureC: room.temperatureC, roomHumidityPercent: room.humidityPercent, air: room.air };
}

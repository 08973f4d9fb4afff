import { hardFattyAcidsPercent, sugarAndSaltOf } from '#chemistry';
import { mouldOf, type BatchPart, type Risk, type WorkshopFacts } from '#contract';
import { potashOf } from '../clocks/forecast-clocks.js';
import { portionsOf } from '../input/part-batter.js';
import { processOf } from '../input/stage-order.js';
import type { Batter, ResolvedRun } from '../input/resolve-run.js';

/**
 * What may go wrong with the soap of a part after it is poured: ash, overheating, sweating, sticking. Of potash soap, which
 * is a paste, nothing of that is known.
 * Each risk is a count of what speaks for it; the circumstances and thresholds are common practice, no source, but for
 * ash itself, which is sodium carbonate: 2 NaOH + CO₂ → Na₂CO₃ + H₂O.
 */
export function soapRisks(
  part: BatchPart,
  recipe: Batter,
  run: ResolvedRun,
  workshop: WorkshopFacts,
): Risk[] {
  const mould = run.moulds.get(mouldOf(part) ?? '')?.kind;
  const potashPercent = potashOf(part, run);
  if (potashPercent !== undefined) return [{ code: 'soap.not-forecast', level: 'high', potashPercent }];
  const hard = hardFattyAcidsPercent(recipe, run.fats);
  const { sugarPercent, saltPercent } = sugarAndSaltOf(recipe, run.fats);
  const fragrances = [...recipe.fragrances, ...portionsOf(part).flatMap((each) => each.fragrances)];
  // What is cooked has no lye left to heat it in the mould, or to reach the air.
  const isCooked = processOf(run.design, part.key) !== 'cold';
  return [
    ...(isCooked ? [] : [ash(recipe, workshop), overheating({ ...recipe, fragrances }, sugarPercent, mould)]),
    sweating(saltPercent, workshop),
    sticking(recipe, saltPercent, hard, mould),
  ].flatMap((risk) => risk ?? []);
}

type Sign = Extract<Risk, { readonly code: 'soap.ash' }>['signs'][number];

/** A circumstance that speaks for a risk; none where it is not given. */
function when(given: boolean, sign: Sign['sign'], value?: number): Sign[] {
  return given ? [{ sign, ...(value === undefined ? {} : { value }) }] : [];
}

function ash(recipe: Batter, { room }: WorkshopFacts): Risk | undefined {
  const { lyeConcentrationPercent, batterTemperatureC } = recipe;
  const signs = [
    ...when(lyeConcentrationPercent < 32, 'wet-batter', lyeConcentrationPercent),
    ...when(recipe.gel === 'none', 'no-gel'),
    ...when(batterTemperatureC < 32, 'cool-batter', batterTemperatureC),
    ...when(room.humidityPercent > 60, 'damp-air', room.humidityPercent),
  ];
  if (signs.length < 2) return undefined;
  return { code: 'soap.ash', level: signs.length > 2 ? 'medium' : 'low', signs };
}

/** Sugar of liquids from which on it counts, per cent of the fats: what tea and vinegar bring does not. */
const LEAST_SUGAR_PERCENT = 0.5;

function overheating(recipe: Batter, sugarPercent: number, mould: string | undefined): Risk | undefined {
  const { batterTemperatureC, fragrances } = recipe;
  const milk = recipe.additions.some(({ kind }) => kind === 'powdered-milk');
  const signs = [
    ...when(recipe.gel === 'full', 'full-gel'),
    ...when(mould === 'lined-wood' || mould === 'lined-carton', 'large-block'),
    ...when(sugarPercent >= LEAST_SUGAR_PERCENT || recipe.sugarPercent > 0 || milk, 'sugar-or-milk'),
    ...when(batterTemperatureC > 45, 'warm-batter', batterTemperatureC),
    ...when(fragrances.some(isHot), 'hot-fragrance'),
  ];
  if (signs.length < 3) return undefined;
  return { code: 'soap.overheats', level: signs.length > 3 ? 'high' : 'medium', signs };
}

function sweating(saltPercent: number, { room: { humidityPercent } }: WorkshopFacts): Risk | undefined {
  if (saltPercent < 10 || humidityPercent <= 60) return undefined;
  return { code: 'soap.sweats', level: humidityPercent > 75 ? 'medium' : 'low', humidityPercent };
}

function sticking(
  recipe: Batter,
  saltPercent: number,
  hardPercent: number,
  mould: string | undefined,
): Risk | undefined {
  if (mould !== 'silicone-cavity' && mould !== 'rigid-plastic') return undefined;
  const hardened = recipe.sodiumLactatePercent >= 1 || saltPercent >= 0.5;
  if (hardened || hardPercent >= 50) return undefined;
  return { code: 'soap.sticks', level: hardPercent < 35 ? 'medium' : 'low', hardPercent };
}

function isHot({ percent, behaviour }: Batter['fragrances'][number]): boolean {
  return percent > 0 && (behaviour === 'strong' || behaviour === 'seizing');
}

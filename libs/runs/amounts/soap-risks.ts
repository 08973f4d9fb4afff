import type { ClockInputs, HeatBalance } from '#clocks';
import { mouldOf, type BatchPart, type Risk, type WorkshopFacts } from '#contract';
import { potashOf } from '../clocks/forecast-clocks.js';
import { GEL_SURE, MAY_OVERHEAT } from '../clocks/heat-chances.js';
import { adviceOf } from '../clocks/present-heat.js';
import { partHeat } from '../clocks/part-heat.js';
import { inputsFor } from '../clocks/part-inputs.js';
import { portionsOf } from '../input/part-batter.js';
import { makingStage, sharersOf, type Batter, type ResolvedRun } from '../input/resolve-run.js';
import { isBefore } from '../input/stage-order.js';

/**
 * What may go wrong with the soap of a part after it is poured: ash, overheating, gel against its will, sweating, sticking. Of potash
 * soap, which is a paste, nothing of that is known.
 * Ash is told by what speaks for it, heat by its balance; the circumstances and thresholds are common practice, no source, but for
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
  const inputs = inputsFor(part, run, workshop);
  const heat = partHeat(part, run, inputs);
  const fragrances = [...recipe.fragrances, ...portionsOf(part).flatMap((each) => each.fragrances)];
  // What is cooked has no lye left to heat it in the mould, or to reach the air.
  const isCooked = inputs.process !== 'cold';
  return [
    ...(isCooked ? [] : [ash(recipe, inputs, isCovered(part, run))]),
    ...(heat === undefined || isCooked
      ? []
      : [overheating({ ...recipe, fragrances }, inputs, heat), ungelled(recipe.gel, heat)].map((risk) =>
          // Where heat is no risk by itself, what is advised is about gel.
          risk === undefined || (risk.code === 'soap.overheats' && heat.overheats < MAY_OVERHEAT)
            ? risk
            : { ...risk, advice: adviceOf(part, recipe, run, inputs) },
        )),
    sweating(inputs.saltPercent, workshop),
    sticking(recipe, inputs.saltPercent, inputs.hardFattyAcidsPercent, mould),
  ].flatMap((risk) => risk ?? []);
}

/** Whether a later layer comes to lie on a part: ash needs air. */
function isCovered(part: BatchPart, { design }: ResolvedRun): boolean {
  const own = makingStage(design, part.key);
  const mould = mouldOf(part);
  if (mould === undefined || own === undefined) return false;
  return sharersOf(design, mould).some((other) => {
    const later = makingStage(design, other.key);
    return later?.kind === 'layer' && later !== own && isBefore(design, own, later);
  });
}

type Sign = Extract<Risk, { readonly code: 'soap.ash' }>['signs'][number];

/** A circumstance that speaks for a risk; none where it is not given. */
function when(given: boolean, sign: Sign['sign'], value?: number): Sign[] {
  return given ? [{ sign, ...(value === undefined ? {} : { value }) }] : [];
}

/** Below this share of gel soap counts as ungelled. */
const LITTLE_GEL_PERCENT = 50;

function ash(recipe: Batter, inputs: ClockInputs, isUnderLayer: boolean): Risk | undefined {
  if (isUnderLayer) return undefined;
  const { lyeConcentrationPercent, batterTemperatureC } = recipe;
  const { gelPercent, roomHumidityPercent, air } = inputs;
  const signs = [
    ...when(lyeConcentrationPercent < 32, 'wet-batter', lyeConcentrationPercent),
    ...when(gelPercent < LITTLE_GEL_PERCENT, 'no-gel'),
    ...when(batterTemperatureC < 32, 'cool-batter', batterTemperatureC),
    ...when(roomHumidityPercent > 60, 'damp-air', roomHumidityPercent),
    ...when(air === 'moving', 'draught'),
  ];
  if (signs.length < 2) return undefined;
  return { code: 'soap.ash', level: signs.length > 2 ? 'medium' : 'low', signs };
}

/** Sugar from which on it counts, per cent of the fats: what tea and vinegar bring does not. */
const LEAST_SUGAR_PERCENT = 0.5;
/** A chance of overheating from which on it is likely. */
const WILL_OVERHEAT = 0.5;
/** From this much in one cavity on its size speaks for heat, mL. */
const LARGE_ML = 500;

function overheating(recipe: Batter, inputs: ClockInputs, heat: HeatBalance): Risk | undefined {
  const { batterTemperatureC, fragrances, gel } = recipe;
  const { overheats: chance, hottestC } = heat;
  const hot = fragrances.some(isHot);
  // What a fragrance gives off is not in the balance, and what is kept from gel is kept cool.
  if (gel === 'none' ? chance < WILL_OVERHEAT : chance < (hot ? MAY_OVERHEAT / 3 : MAY_OVERHEAT))
    return undefined;
  const signs = [
    ...when(inputs.gelPercent >= LITTLE_GEL_PERCENT, 'full-gel'),
    ...when(inputs.castMl >= LARGE_ML, 'large-block'),
    ...when(inputs.sugarPercent >= LEAST_SUGAR_PERCENT, 'sugar-or-milk'),
    ...when(batterTemperatureC > 45, 'warm-batter', batterTemperatureC),
    ...when(hot, 'hot-fragrance'),
  ];
  const level = chance >= WILL_OVERHEAT ? 'high' : 'medium';
  return { code: 'soap.overheats', level, signs, chance, hottestC: hottestC.likely };
}

/** A chance of any gel from which on it is likely, and below which it is not. */
const [GEL_LIKELY, GEL_UNLIKELY] = [0.6, 0.3];

/** Gel that is neither sure nor sure not to come shows as a ring; and gel against what the recipe asks for. */
function ungelled(asked: Batter['gel'], { gel }: HeatBalance): Risk | undefined {
  const chance = 1 - gel.none;
  switch (asked) {
    case 'none':
      return chance < GEL_LIKELY ? undefined : { code: 'soap.gel-likely', level: 'low', chance };
    case 'full':
      return chance > GEL_UNLIKELY ? undefined : { code: 'soap.gel-unlikely', level: 'low', chance };
    case 'auto':
      return Math.max(gel.whole, gel.none) >= GEL_SURE
        ? undefined
        : { code: 'soap.gel-unsure', level: 'low', ...gel };
  }
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

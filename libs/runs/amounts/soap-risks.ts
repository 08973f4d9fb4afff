import { hardFattyAcidsPercent } from '#chemistry';
import type { BatchPart, Risk, WorkshopFacts } from '#contract';
import type { Batter, RunWorkings } from '../input/workings.js';

/**
 * What may go wrong with the soap of a part after it is poured: ash, overheating, sweating, sticking.
 * Each risk is a count of what speaks for it; the circumstances and thresholds are common practice, no source, but for
 * ash itself, which is sodium carbonate: 2 NaOH + CO₂ → Na₂CO₃ + H₂O.
 */
export function soapRisks(
  part: BatchPart,
  recipe: Batter,
  run: RunWorkings,
  workshop: WorkshopFacts,
): Risk[] {
  const mould = part.mould === undefined ? undefined : run.moulds.get(part.mould)?.kind;
  const hard = hardFattyAcidsPercent(recipe, run.fats);
  return [
    ash(recipe, workshop),
    overheating(recipe, mould),
    sweating(recipe, workshop),
    sticking(recipe, hard, mould),
  ].flatMap((risk) => risk ?? []);
}

/** A circumstance that speaks for a risk, or undefined where it is not given. */
type Sign = string | undefined;

const when = (given: boolean, sign: string): Sign => (given ? sign : undefined);

function signs(all: readonly Sign[]): string[] {
  return all.filter((sign): sign is string => sign !== undefined);
}

function ash(recipe: Batter, { room }: WorkshopFacts): Risk | undefined {
  const found = signs([
    when(
      recipe.lyeConcentrationPercent < 32,
      `wet batter (lye of ${shown(recipe.lyeConcentrationPercent)} %)`,
    ),
    when(recipe.gel === 'none', 'no gel'),
    when(recipe.batterTemperatureC < 32, `cool batter (${shown(recipe.batterTemperatureC)} °C)`),
    when(room.humidityPercent > 60, `damp air (${shown(room.humidityPercent)} %)`),
  ]);
  if (found.length < 2) return undefined;
  return {
    code: 'soap.ash',
    level: found.length > 2 ? 'medium' : 'low',
    text: `White ash may bloom on open faces in the first days: ${found.join(', ')}.`,
    remedy:
      'Cover the soap so that no air moves over it, or spritz it with isopropyl alcohol, which burns: no flame and no hot plate near.',
  };
}

function overheating(recipe: Batter, mould: string | undefined): Risk | undefined {
  const large = mould === 'lined-wood' || mould === 'lined-carton';
  const milk = recipe.additions.some(({ kind }) => kind === 'powdered-milk');
  const found = signs([
    when(recipe.gel === 'full', 'full gel'),
    when(large, 'a block that keeps its heat'),
    when(recipe.sugarPercent > 0 || milk, 'sugar or milk'),
    when(recipe.batterTemperatureC > 45, `warm batter (${shown(recipe.batterTemperatureC)} °C)`),
    when(
      recipe.fragrance?.behaviour === 'strong' || recipe.fragrance?.behaviour === 'seizing',
      'a fragrance that heats',
    ),
  ]);
  if (found.length < 3) return undefined;
  return {
    code: 'soap.overheats',
    level: found.length > 3 ? 'high' : 'medium',
    text: `It may overheat, crack or rise: ${found.join(', ')}.`,
    remedy: 'Do not insulate it; set it in a draught or the cold, and look after it for the first two hours.',
  };
}

function sweating(recipe: Batter, { room }: WorkshopFacts): Risk | undefined {
  if (recipe.saltPercent < 10 || room.humidityPercent <= 60) return undefined;
  return {
    code: 'soap.sweats',
    level: room.humidityPercent > 75 ? 'medium' : 'low',
    text: `Salt draws water from damp air (${shown(room.humidityPercent)} %): the soap may sweat.`,
    remedy: 'Cure it in a drier room with moving air, and wrap it once it is cured.',
  };
}

function sticking(recipe: Batter, hardPercent: number, mould: string | undefined): Risk | undefined {
  if (mould !== 'silicone-cavity' && mould !== 'rigid-plastic') return undefined;
  const hardened = recipe.sodiumLactatePercent >= 1 || recipe.saltPercent >= 0.5;
  if (hardened || hardPercent >= 50) return undefined;
  return {
    code: 'soap.sticks',
    level: hardPercent < 35 ? 'medium' : 'low',
    text: `Without a hardener and with ${shown(hardPercent)} % of hard fatty acids it may stick and tear in the mould.`,
    remedy:
      'Add 1 to 2 % of sodium lactate, wait longer, or freeze it for some hours before it is pushed out.',
  };
}

function shown(value: number): string {
  return String(Number(value.toFixed(1)));
}

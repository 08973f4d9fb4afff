import type { Forecast } from '../forecast.js';
import { spreadsUnlearned } from '../offset-prior.js';
import type { StateId } from '../states.js';
import { freshLyeC } from './lye-heat.js';

/** What cools, from when it is made or melted. */
export interface Cooling {
  /** °C at the start. */
  readonly startC: number;
  /** °C at which it is wanted. */
  readonly targetC: number;
  /** °C of what it stands in: the room's air, or cold water. */
  readonly aroundC: number;
  /** Standing in the room it never gets there, or takes for ever over the last degrees: it needs a bath of cold water. */
  readonly inBath: boolean;
  /** Minutes in which the difference to what is around falls to 1/e. */
  readonly timeConstantMin: number;
}

export interface CoolingInputs {
  /** Of the lye, or of the fats, g; above 0. */
  readonly massG: number;
  readonly batterTemperatureC: number;
  readonly roomTemperatureC: number;
}

/**
 * Time constants: common practice, no source, for a lidless plastic jug or pot on a bench; lye of 300 g comes from 90 °C to
 * 38 °C in an hour and a half. Twice the mass has more to lose by a half than surface to lose it through, so τ ~ m^(1/3).
 */
const lyeJug = { massG: 300, timeConstantMin: 70 } as const;
const fatsPot = { massG: 600, timeConstantMin: 50 } as const;
/** Cold water takes heat several times as fast as air. Common practice, no source. */
const BATH = { aroundC: 10, faster: 5 } as const;
/** Closer to the room than this nobody waits for it: the last degrees take hours. */
const CLOSE_TO_ROOM_C = 3;
/** Hard fats and butters are melted at about this, and liquid oils stirred in as they are. Common practice, no source. */
const MELTING_C = 60;

/** Standard deviations: of ln τ, and of the temperatures at the start and around, °C. Our own judgement. */
const spread = { timeConstant: 0.35, startC: 8, aroundC: 1.5 } as const;

/**
 * Lye of a strength, from when it is stirred clear.
 * @param lyePercent alkali of alkali and water by mass, 15 to 52
 * @param kohSharePercent of the alkali that is KOH, by moles; none if absent
 */
export function lyeCooling(
  inputs: CoolingInputs & { readonly lyePercent: number; readonly kohSharePercent?: number },
): Cooling {
  const { lyePercent, roomTemperatureC, kohSharePercent } = inputs;
  return coolingOf(inputs, freshLyeC(lyePercent, roomTemperatureC, kohSharePercent), lyeJug);
}

/** Fats, from when the solid ones are melted and all are stirred together. @param solidPercent share of those, 0 to 100 */
export function fatsCooling(inputs: CoolingInputs & { readonly solidPercent: number }): Cooling {
  const { roomTemperatureC, solidPercent, batterTemperatureC } = inputs;
  const melting = Math.max(MELTING_C, batterTemperatureC);
  const startC = roomTemperatureC + (solidPercent / 100) * (melting - roomTemperatureC);
  return coolingOf(inputs, startC, fatsPot);
}

function coolingOf(
  { massG, batterTemperatureC: targetC, roomTemperatureC }: CoolingInputs,
  startC: number,
  vessel: { readonly massG: number; readonly timeConstantMin: number },
): Cooling {
  if (!(massG > 0 && massG < Infinity)) throw new RangeError(`${String(massG)} g cannot cool`);
  const inBath = startC > targetC && targetC < roomTemperatureC + CLOSE_TO_ROOM_C;
  const still = vessel.timeConstantMin * Math.cbrt(massG / vessel.massG);
  return {
    ...{ startC, targetC, inBath },
    aroundC: inBath ? Math.min(BATH.aroundC, roomTemperatureC) : roomTemperatureC,
    timeConstantMin: inBath ? still / BATH.faster : still,
  };
}

/** What is cool from the start is stirred through. */
const AT_ONCE_MIN = 1;

/**
 * When something is down at the temperature at which it is mixed: Newton's law of cooling.
 *
 *     t = τ ln r        r = (T_start − T_around) / (T_target − T_around)
 *     σ² = σ_τ² + (σ_start / ((T_start − T_around) ln r))² + (σ_around (1 / (T_target − T_around) − 1 / (T_start − T_around)) / ln r)²
 *
 * to first order in what is not known; σ is at most 1, where the start is hardly above the target.
 * @returns log-normal in minutes from when it was made or melted; a minute where it is cool from the start
 */
export function coolingForecast(state: StateId, cooling: Cooling): Forecast {
  const { startC, targetC, aroundC, timeConstantMin } = cooling;
  const [start, target] = [startC - aroundC, targetC - aroundC];
  const ratio = Math.log(start / target);
  const isCool = startC <= targetC;
  const medianMin = isCool ? AT_ONCE_MIN : Math.max(AT_ONCE_MIN, timeConstantMin * ratio);
  const byStart = spread.startC / (start * ratio);
  const byAround = (spread.aroundC * (1 / target - 1 / start)) / ratio;
  const batchSigma = isCool
    ? spread.timeConstant
    : Math.min(1, Math.hypot(spread.timeConstant, byStart, byAround));
  const spreads = spreadsUnlearned(batchSigma, 0);
  return { state, baseMin: medianMin, medianMin, ruleSigma: 0, ...spreads, reasons: [], beyond: [] };
}

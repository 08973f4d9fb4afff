import { batterSpecificHeat, type BatterMake } from './specific-heats.js';
import { lyeSpecificHeat } from './lye-heat.js';

/**
 * How warm fats have to be so that with lye of a temperature they make a batter of another, °C: what each brings counts by mass and
 * specific heat. What is dry comes in as warm as the fats. Diluting lye no further gives off nothing, and the soap has hardly begun.
 */
export function fatsForC(make: BatterMake, lyeC: number, batterC: number): number {
  const lye = make.lyeShare * lyeSpecificHeat(make.lyePercent, make.kohSharePercent);
  const share = lye / batterSpecificHeat(make);
  return (batterC - share * lyeC) / (1 - share);
}

import { lyeSpecificHeat } from './lye-heat.js';

/**
 * Specific heat of liquid fats, J/(g K), at a temperature. From memory of Morad et al., JAOCS 77 (2000) 1001, and Fasina and Colley,
 * Int. J. Food Prop. 11 (2008) 738: the oils lie close together, near 2.0 at 40 °C, and rise by some thousandths for each degree.
 */
function fatSpecificHeat(tempC: number): number {
  return 2 + 0.0025 * (tempC - 40);
}

/** Of salt, clay, sugar and the like, J/(g K): salt has 0.86, sugar 1.24, clay some 0.9. From memory. */
const DRY = 0.95;
/** At which the specific heat of fats stands for all that happens in a mould, °C. */
const USUAL_C = 55;

/** What a batter is made of, by mass. */
export interface BatterMake {
  /** Fats and lye (alkali and all water) as shares of the batter, 0 to 1; the rest is dry. */
  readonly fatsShare: number;
  readonly lyeShare: number;
  /** Alkali as a share of alkali and water by mass, per cent. */
  readonly lyePercent: number;
  /** Of the alkali that is KOH, by moles, per cent. */
  readonly kohSharePercent: number;
}

/** Specific heat of a batter, J/(g K): of its parts by mass. */
export function batterSpecificHeat(make: BatterMake): number {
  const { fatsShare, lyeShare, lyePercent, kohSharePercent } = make;
  return (
    fatsShare * fatSpecificHeat(USUAL_C) +
    lyeShare * lyeSpecificHeat(lyePercent, kohSharePercent) +
    Math.max(0, 1 - fatsShare - lyeShare) * DRY
  );
}

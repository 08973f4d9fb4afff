import { requirePositive } from './guards.js';

/** An area dipped or covered. */
export interface Coat {
  readonly areaCm2: number;
  readonly thicknessMm: number;
}

/** A piped line, round with the width of the nozzle's bead or of a section known otherwise. */
export type Bead =
  | { readonly lengthMm: number; readonly widthMm: number }
  | { readonly lengthMm: number; readonly sectionMm2: number };

/**
 * Volume of a coat: area · thickness / 10.
 * @param coat area in cm² and thickness in mm, each above 0
 * @returns mL
 * @throws RangeError for a value that is not above 0
 */
export function coatMl({ areaCm2, thicknessMm }: Coat): number {
  requirePositive('areaCm2', areaCm2);
  requirePositive('thicknessMm', thicknessMm);
  return (areaCm2 * thicknessMm) / 10;
}

/**
 * Volume of a piped bead: length · section / 1000, the section of a round bead being π/4 · width². A bead that
 * sags to a flatter section of the same width holds less.
 * @param bead length and width in mm or section in mm², each above 0
 * @returns mL
 * @throws RangeError for a value that is not above 0
 */
export function beadMl(bead: Bead): number {
  requirePositive('lengthMm', bead.lengthMm);
  return (bead.lengthMm * sectionOf(bead)) / 1000;
}

/**
 * Volume of what was weighed: mass / density.
 * @param grams above 0
 * @param densityGPerMl above 0, g/mL
 * @returns mL
 * @throws RangeError for a value that is not above 0
 */
export function weighedMl(grams: number, densityGPerMl: number): number {
  requirePositive('grams', grams);
  requirePositive('densityGPerMl', densityGPerMl);
  return grams / densityGPerMl;
}

function sectionOf(bead: Bead): number {
  if ('sectionMm2' in bead) {
    requirePositive('sectionMm2', bead.sectionMm2);
    return bead.sectionMm2;
  }
  requirePositive('widthMm', bead.widthMm);
  return (Math.PI / 4) * bead.widthMm ** 2;
}

import type { FatFacts } from './fat-facts.js';
import { shippedFats } from './table/shipped-fats.js';

/** What an own fat puts in the place of a shipped one of the same key. */
export interface ReplacedFat {
  /** mg KOH per g: the shipped fat's figure that amounts would be worked out with. */
  readonly shipped: number;
  /** The own figure's difference from it, per cent of it: positive where the own fat takes more lye. */
  readonly differsByPercent: number;
}

/** @returns undefined where a fat replaces none, or is the shipped one itself */
export function replacedFat(fat: FatFacts): ReplacedFat | undefined {
  const shipped = shippedFats.find(({ key }) => key === fat.key);
  if (shipped === undefined || shipped === fat) return undefined;
  const { used } = shipped.saponificationMgKohPerG;
  return { shipped: used, differsByPercent: (fat.saponificationMgKohPerG.used / used - 1) * 100 };
}

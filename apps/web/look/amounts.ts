import { amountsIn, type Amounts } from '#words';
import { usePreference } from '../preferences/preferences.js';
import { useLanguage } from '../words/words.js';

export type { Amounts, FieldUnit, Measured } from '#words';

/** Amounts in the language and the units that were chosen on this device. */
export function useAmounts(): Amounts {
  const [units] = usePreference('units');
  return amountsIn(useLanguage(), units);
}

import { usePreference } from '../preferences/preferences.js';
import { useLanguage } from '../words/words.js';
import { amountsIn, type Amounts } from './amounts-in.js';

export type { Amounts, FieldUnit, Measured } from './amounts-in.js';

/** Amounts in the language and the units that were chosen on this device. */
export function useAmounts(): Amounts {
  const [units] = usePreference('units');
  return amountsIn(useLanguage(), units);
}

import type { Texts } from '../words.js';

/** A temperature to the degree, as a forecast knows no tenths: `71 °C`, `160 °F`. */
export function wholeDegrees(celsius: number, { field, number }: Texts): string {
  return `${number(field.temperature.shown(celsius), 0)} ${field.temperature.sign}`;
}

/** The same of a band: `71 °C (62 to 80)`. */
export function degreesBand(
  { low, likely, high }: { readonly low: number; readonly likely: number; readonly high: number },
  texts: Texts,
): string {
  const bare = (celsius: number): string => texts.number(texts.field.temperature.shown(celsius), 0);
  return `${wholeDegrees(likely, texts)} (${texts.range(bare(low), bare(high))})`;
}

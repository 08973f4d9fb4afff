/** What a clock reads, and `log`: how many batches of the log have taught it. */
export const clockInputs = [
  'lyeConcentrationPercent',
  'sodiumLactatePercent',
  'saltPercent',
  'sugarPercent',
  'hardFattyAcidsPercent',
  'oleicPercent',
  'castorPercent',
  'buttersPercent',
  'olivePomacePercent',
  'batterTemperatureC',
  'roomTemperatureC',
  'roomHumidityPercent',
  'mould',
  'fragrance',
  'gel',
  'mixing',
  'log',
] as const;

export type ClockInput = (typeof clockInputs)[number];

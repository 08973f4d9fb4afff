import { fragranceBehaviours, gels, mixings, mouldKinds, processes } from './recipe-names.js';

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
  'process',
  'log',
] as const;

export type ClockInput = (typeof clockInputs)[number];

/** Those that are temperatures, °C; other measures are per cent. */
export const clockTemperatures: ReadonlySet<ClockInput> = new Set(['batterTemperatureC', 'roomTemperatureC']);

/** Those that are one of a list, and the lists; `mould` by its kind. */
export const clockChoices = {
  mould: mouldKinds,
  fragrance: fragranceBehaviours,
  gel: gels,
  mixing: mixings,
  process: processes,
} as const;
export type ClockChoice = keyof typeof clockChoices;

/** Every rule of the clocks, in the order in which reasons are listed, and `lesson`: what the log has taught. */
export const clockRuleIds = [
  'lye-on-batter',
  'batter-temperature',
  'fragrance',
  'fragrance-slowing',
  'fragrance-ricing',
  'fragrance-unknown',
  'olive-pomace',
  'castor',
  'butters',
  'sugar',
  'emulsifying',
  'mixing',
  'lye-on-set',
  'sodium-lactate',
  'salt-in-mould',
  'salt-in-the-open',
  'hard-fatty-acids',
  'room-temperature',
  'gel-on-set',
  'mould',
  'room-on-glaze',
  'lye-on-ash',
  'room-on-ash',
  'humidity-on-ash',
  'gel-on-ash',
  'lye-on-cure',
  'oleic',
  'room-humidity',
  'gel-on-cure',
  'hot-process-on-set',
  'hot-process-on-ash',
  'hot-process-on-cure',
  'rebatch-on-set',
  'rebatch-on-cure',
  'lesson',
] as const;
export type ClockRuleId = (typeof clockRuleIds)[number];

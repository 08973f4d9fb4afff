import type { Influence } from '#contract';
import type { Names } from '../names.js';
import type { Amounts } from '../format/amounts.js';

const moulds: Readonly<Record<string, string>> = {
  'silicone-cavity': 'silicone cavities',
  'lined-wood': 'lined wood',
  'lined-carton': 'lined carton',
  'rigid-plastic': 'rigid plastic',
};
const fragrances: Readonly<Record<string, string>> = {
  none: 'there is no fragrance in it',
  slowing: 'its fragrance holds it back',
  ricing: 'its fragrance may make it lumpy',
  unknown: 'its fragrance was not tried and may hurry it',
  mild: 'its fragrance hurries it a little',
  brisk: 'its fragrance hurries it',
  strong: 'its fragrance hurries it much',
  seizing: 'its fragrance makes it seize',
};

const mixings: Readonly<Record<string, string>> = {
  'to-emulsion': 'it is stirred by hand once it is an emulsion',
  hand: 'it is mixed by hand',
};

export const influences: Names['influences'] = {
  lyeConcentrationPercent: (read, amounts) =>
    `the lye is ${isAbove(read) ? 'strong' : 'weak'} (${percent(read, amounts)})`,
  sodiumLactatePercent: (read, amounts) => `there is sodium lactate in it (${percent(read, amounts)})`,
  saltPercent: (read, amounts) => `there is salt in it (${percent(read, amounts)})`,
  sugarPercent: (read, amounts) => `there is sugar in it (${percent(read, amounts)})`,
  clayPercent: (read, amounts) => `there is clay in it (${percent(read, amounts)})`,
  alcoholPercent: (read, amounts) => `there is alcohol left in it (${percent(read, amounts)})`,
  superfatPercent: (read, amounts) =>
    `its superfat is ${isAbove(read) ? 'high' : 'low'} (${percent(read, amounts)})`,
  kohSharePercent: (read, amounts) => `some of its lye is potash (${percent(read, amounts)})`,
  hardFattyAcidsPercent: (read, amounts) =>
    `its fats make ${isAbove(read) ? 'hard' : 'soft'} soap (${percent(read, amounts)} hard fatty acids)`,
  oleicPercent: (read, amounts) => `its fats hold ${moreOrLess(read)} oleic acid (${percent(read, amounts)})`,
  polyunsaturatedPercent: (read, amounts) =>
    `its fats hold ${moreOrLess(read)} linoleic acid (${percent(read, amounts)})`,
  castorPercent: (read, amounts) =>
    `there is ${moreOrLess(read)} castor oil in it (${percent(read, amounts)})`,
  buttersPercent: (read, amounts) => `there is butter in it (${percent(read, amounts)} of the fats)`,
  olivePomacePercent: (read, amounts) => `there is olive pomace oil in it (${percent(read, amounts)})`,
  lardPercent: (read, amounts) => `there is lard in it (${percent(read, amounts)})`,
  freeAcidsPercent: (read, amounts) => `there are free fatty acids in it (${percent(read, amounts)})`,
  waxPercent: (read, amounts) => `there is wax in it (${percent(read, amounts)})`,
  batterTemperatureC: (read, amounts) =>
    `the batter is ${isAbove(read) ? 'warm' : 'cool'} (${degrees(read, amounts)})`,
  roomTemperatureC: (read, amounts) =>
    `the room is ${isAbove(read) ? 'warm' : 'cool'} (${degrees(read, amounts)})`,
  roomHumidityPercent: (read, amounts) =>
    `the air is ${isAbove(read) ? 'damp' : 'dry'} (${percent(read, amounts)})`,
  air: ({ value }) => (value === 'moving' ? 'a fan or draught moves the air' : 'it stands shut in'),
  mould: ({ value }) => `it sits in ${moulds[value] ?? 'another mould'}`,
  fragrance: ({ value }) => fragrances[value] ?? 'of its fragrance',
  mixing: ({ value }) => mixings[value] ?? 'it is mixed by hand',
  process: ({ value }) => (value === 'cooked' ? 'it was cooked' : 'it was melted again'),
  castMl: (read, amounts) => `its cavity is ${largeOrSmall(read)} (${amounts.volume(Number(read.value))})`,
  pieceMl: (read, amounts) => `the bar is ${largeOrSmall(read)} (${amounts.volume(Number(read.value))})`,
  coatMm: (read, amounts) => `the coat is ${thickOrThin(read)} (${amounts.length(Number(read.value))})`,
  beadMm: (read, amounts) => `the line is ${thickOrThin(read)} (${amounts.length(Number(read.value))})`,
  meltMl: (read, amounts) =>
    `there is ${isAbove(read) ? 'much' : 'little'} of it (${amounts.volume(Number(read.value))})`,
  gel: () => 'it goes through gel',
  gelPercent: (read, amounts) =>
    read.isFloor === true
      ? 'soap in gel is a hot jelly for hours'
      : `it goes through gel (${percent(read, amounts)})`,
  hardGelPercent: () => 'its hard fats set fast in gel',
  // Floors alone read it.
  hotHours: ({ value }, amounts) =>
    Number(value) < 1
      ? 'no soap is so in its first hour'
      : `it has to cool first (about ${amounts.number(Number(value), 0)} h)`,
  log: ({ value }) => `your log says so (${String(value)} ${value === 1 ? 'batch' : 'batches'})`,
};

function isAbove({ value, usual }: Influence): boolean {
  return Number(value) > Number(usual);
}

function largeOrSmall(read: Influence): string {
  return isAbove(read) ? 'large' : 'small';
}

function thickOrThin(read: Influence): string {
  return isAbove(read) ? 'thick' : 'thin';
}

function moreOrLess(read: Influence): string {
  return isAbove(read) ? 'much' : 'little';
}

function percent({ value }: Influence, amounts: Amounts): string {
  return amounts.percent(Number(value));
}

function degrees({ value }: Influence, amounts: Amounts): string {
  return amounts.temperature(Number(value));
}

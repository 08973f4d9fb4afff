import type { Influence } from '#contract';
import type { Names } from '../names.js';
import type { Texts } from '../words.js';

const moulds: Readonly<Record<string, string>> = {
  'silicone-cavity': 'silicone cavities',
  'lined-wood': 'lined wood',
  'lined-carton': 'lined carton',
  'rigid-plastic': 'rigid plastic',
};
const fragrances: Readonly<Record<string, string>> = {
  none: 'there is no fragrance in it',
  mild: 'its fragrance hurries it a little',
  brisk: 'its fragrance hurries it',
  strong: 'its fragrance hurries it much',
  seizing: 'its fragrance makes it seize',
};

export const influences: Names['influences'] = {
  lyeConcentrationPercent: (read, texts) =>
    `the lye is ${isAbove(read) ? 'strong' : 'weak'} (${percent(read, texts)})`,
  sodiumLactatePercent: (read, texts) => `there is sodium lactate in it (${percent(read, texts)})`,
  saltPercent: (read, texts) => `there is salt in it (${percent(read, texts)})`,
  sugarPercent: (read, texts) => `there is sugar in it (${percent(read, texts)})`,
  hardFattyAcidsPercent: (read, texts) =>
    `its fats make ${isAbove(read) ? 'hard' : 'soft'} soap (${percent(read, texts)} hard fatty acids)`,
  oleicPercent: (read, texts) => `its fats hold ${moreOrLess(read)} oleic acid (${percent(read, texts)})`,
  castorPercent: (read, texts) => `there is ${moreOrLess(read)} castor oil in it (${percent(read, texts)})`,
  buttersPercent: (read, texts) => `there is butter in it (${percent(read, texts)} of the fats)`,
  olivePomacePercent: (read, texts) => `there is olive pomace oil in it (${percent(read, texts)})`,
  batterTemperatureC: (read, texts) =>
    `the batter is ${isAbove(read) ? 'warm' : 'cool'} (${degrees(read, texts)})`,
  roomTemperatureC: (read, texts) =>
    `the room is ${isAbove(read) ? 'warm' : 'cool'} (${degrees(read, texts)})`,
  roomHumidityPercent: (read, texts) =>
    `the air is ${isAbove(read) ? 'damp' : 'dry'} (${percent(read, texts)})`,
  mould: ({ value }) => `it sits in ${moulds[value] ?? 'another mould'}`,
  fragrance: ({ value }) => fragrances[value] ?? 'of its fragrance',
  gel: () => 'it goes through gel',
  mixing: () => 'it is mixed by hand',
  log: ({ value }) => `your log says so (${String(value)} ${value === 1 ? 'batch' : 'batches'})`,
};

function isAbove({ value, usual }: Influence): boolean {
  return Number(value) > Number(usual);
}

function moreOrLess(read: Influence): string {
  return isAbove(read) ? 'much' : 'little';
}

function percent({ value }: Influence, texts: Texts): string {
  return texts.percent(Number(value));
}

function degrees({ value }: Influence, texts: Texts): string {
  return texts.temperature(Number(value));
}

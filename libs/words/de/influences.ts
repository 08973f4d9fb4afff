import type { Influence } from '#contract';
import type { Names } from '../names.js';
import type { Texts } from '../words.js';

const moulds: Readonly<Record<string, string>> = {
  'silicone-cavity': 'in Silikon',
  'lined-wood': 'in ausgeschlagenem Holz',
  'lined-carton': 'in ausgeschlagener Pappe',
  'rigid-plastic': 'in hartem Kunststoff',
};
const fragrances: Readonly<Record<string, string>> = {
  none: 'kein Duft darin ist',
  mild: 'ihr Duft sie ein wenig beschleunigt',
  brisk: 'ihr Duft sie beschleunigt',
  strong: 'ihr Duft sie stark beschleunigt',
  seizing: 'ihr Duft sie schlagartig andicken lässt',
};

/** Nebensätze: sie folgen auf „langsamer, weil …“. */
export const influences: Names['influences'] = {
  lyeConcentrationPercent: (read, texts) =>
    `die Lauge ${isAbove(read) ? 'stark' : 'schwach'} ist (${percent(read, texts)})`,
  sodiumLactatePercent: (read, texts) => `Natriumlactat darin ist (${percent(read, texts)})`,
  saltPercent: (read, texts) => `Salz darin ist (${percent(read, texts)})`,
  sugarPercent: (read, texts) => `Zucker darin ist (${percent(read, texts)})`,
  hardFattyAcidsPercent: (read, texts) =>
    `ihre Fette ${isAbove(read) ? 'harte' : 'weiche'} Seife geben (${percent(read, texts)} harte Fettsäuren)`,
  oleicPercent: (read, texts) => `ihre Fette ${moreOrLess(read)} Ölsäure haben (${percent(read, texts)})`,
  castorPercent: (read, texts) => `${moreOrLess(read)} Rizinusöl darin ist (${percent(read, texts)})`,
  buttersPercent: (read, texts) => `Butter darin ist (${percent(read, texts)} der Fette)`,
  olivePomacePercent: (read, texts) => `Tresteröl darin ist (${percent(read, texts)})`,
  batterTemperatureC: (read, texts) =>
    `der Leim ${isAbove(read) ? 'warm' : 'kühl'} ist (${degrees(read, texts)})`,
  roomTemperatureC: (read, texts) =>
    `der Raum ${isAbove(read) ? 'warm' : 'kühl'} ist (${degrees(read, texts)})`,
  roomHumidityPercent: (read, texts) =>
    `die Luft ${isAbove(read) ? 'feucht' : 'trocken'} ist (${percent(read, texts)})`,
  mould: ({ value }) => `sie ${moulds[value] ?? 'in einer anderen Form'} steht`,
  fragrance: ({ value }) => fragrances[value] ?? 'ihr Duft das tut',
  gel: () => 'sie durch die Gelphase geht',
  mixing: () => 'sie von Hand gerührt wird',
  log: ({ value }) => `Ihr Protokoll das zeigt (${String(value)} ${value === 1 ? 'Ansatz' : 'Ansätze'})`,
};

function isAbove({ value, usual }: Influence): boolean {
  return Number(value) > Number(usual);
}

function moreOrLess(read: Influence): string {
  return isAbove(read) ? 'viel' : 'wenig';
}

function percent({ value }: Influence, texts: Texts): string {
  return texts.percent(Number(value));
}

function degrees({ value }: Influence, texts: Texts): string {
  return texts.temperature(Number(value));
}

import type { Influence } from '#contract';
import type { Names } from '../names.js';
import type { Amounts } from '../format/amounts.js';

const moulds: Readonly<Record<string, string>> = {
  'silicone-cavity': 'in Silikon',
  'lined-wood': 'in ausgeschlagenem Holz',
  'lined-carton': 'in ausgeschlagener Pappe',
  'rigid-plastic': 'in hartem Kunststoff',
};
const fragrances: Readonly<Record<string, string>> = {
  none: 'kein Duft darin ist',
  slowing: 'ihr Duft sie bremst',
  ricing: 'ihr Duft sie klumpen lassen kann',
  unknown: 'ihr Duft nicht erprobt ist und sie beschleunigen kann',
  mild: 'ihr Duft sie ein wenig beschleunigt',
  brisk: 'ihr Duft sie beschleunigt',
  strong: 'ihr Duft sie stark beschleunigt',
  seizing: 'ihr Duft sie schlagartig andicken lässt',
};

/** Nebensätze: sie folgen auf „langsamer, weil …“. */
const mixings: Readonly<Record<string, string>> = {
  'to-emulsion': 'sie ab der Emulsion von Hand gerührt wird',
  hand: 'sie von Hand gerührt wird',
};

export const influences: Names['influences'] = {
  lyeConcentrationPercent: (read, amounts) =>
    `die Lauge ${isAbove(read) ? 'stark' : 'schwach'} ist (${percent(read, amounts)})`,
  sodiumLactatePercent: (read, amounts) => `Natriumlaktat darin ist (${percent(read, amounts)})`,
  saltPercent: (read, amounts) => `Salz darin ist (${percent(read, amounts)})`,
  sugarPercent: (read, amounts) => `Zucker darin ist (${percent(read, amounts)})`,
  clayPercent: (read, amounts) => `Tonerde darin ist (${percent(read, amounts)})`,
  alcoholPercent: (read, amounts) => `noch Alkohol darin ist (${percent(read, amounts)})`,
  superfatPercent: (read, amounts) =>
    `ihre Überfettung ${isAbove(read) ? 'hoch' : 'niedrig'} ist (${percent(read, amounts)})`,
  kohSharePercent: (read, amounts) => `ein Teil der Lauge Ätzkali ist (${percent(read, amounts)})`,
  hardFattyAcidsPercent: (read, amounts) =>
    `ihre Fette ${isAbove(read) ? 'harte' : 'weiche'} Seife geben (${percent(read, amounts)} harte Fettsäuren)`,
  oleicPercent: (read, amounts) => `ihre Fette ${moreOrLess(read)} Ölsäure haben (${percent(read, amounts)})`,
  polyunsaturatedPercent: (read, amounts) =>
    `ihre Fette ${moreOrLess(read)} Linolsäure haben (${percent(read, amounts)})`,
  castorPercent: (read, amounts) => `${moreOrLess(read)} Rizinusöl darin ist (${percent(read, amounts)})`,
  buttersPercent: (read, amounts) => `Butter darin ist (${percent(read, amounts)} der Fette)`,
  olivePomacePercent: (read, amounts) => `Tresteröl darin ist (${percent(read, amounts)})`,
  lardPercent: (read, amounts) => `Schmalz darin ist (${percent(read, amounts)})`,
  freeAcidsPercent: (read, amounts) => `freie Fettsäuren darin sind (${percent(read, amounts)})`,
  waxPercent: (read, amounts) => `Wachs darin ist (${percent(read, amounts)})`,
  batterTemperatureC: (read, amounts) =>
    `der Leim ${isAbove(read) ? 'warm' : 'kühl'} ist (${degrees(read, amounts)})`,
  roomTemperatureC: (read, amounts) =>
    `der Raum ${isAbove(read) ? 'warm' : 'kühl'} ist (${degrees(read, amounts)})`,
  roomHumidityPercent: (read, amounts) =>
    `die Luft ${isAbove(read) ? 'feucht' : 'trocken'} ist (${percent(read, amounts)})`,
  air: ({ value }) =>
    value === 'moving' ? 'ein Ventilator oder Luftzug die Luft bewegt' : 'sie eingeschlossen steht',
  mould: ({ value }) => `sie ${moulds[value] ?? 'in einer anderen Form'} steht`,
  fragrance: ({ value }) => fragrances[value] ?? 'ihr Duft das tut',
  mixing: ({ value }) => mixings[value] ?? 'sie von Hand gerührt wird',
  process: ({ value }) => (value === 'cooked' ? 'sie gekocht wurde' : 'sie noch einmal eingeschmolzen wurde'),
  castMl: (read, amounts) => `ihre Mulde ${largeOrSmall(read)} ist (${amounts.volume(Number(read.value))})`,
  pieceMl: (read, amounts) => `das Stück ${largeOrSmall(read)} ist (${amounts.volume(Number(read.value))})`,
  coatMm: (read, amounts) => `der Überzug ${thickOrThin(read)} ist (${amounts.length(Number(read.value))})`,
  beadMm: (read, amounts) => `die Linie ${thickOrThin(read)} ist (${amounts.length(Number(read.value))})`,
  meltMl: (read, amounts) => `es ${moreOrLess(read)} davon ist (${amounts.volume(Number(read.value))})`,
  gel: () => 'sie durch die Gelphase geht',
  gelPercent: (read, amounts) =>
    read.isFloor === true
      ? 'Seife in der Gelphase stundenlang heißes Gelee ist'
      : `sie durch die Gelphase geht (${percent(read, amounts)})`,
  hardGelPercent: () => 'ihre harten Fette in der Gelphase schnell fest werden',
  // Nur Untergrenzen lesen das.
  hotHours: ({ value }, amounts) =>
    Number(value) < 1
      ? 'keine Seife in der ersten Stunde so weit ist'
      : `sie erst abkühlen muss (etwa ${amounts.number(Number(value), 0)} h)`,
  log: ({ value }) => `Ihr Protokoll das zeigt (${String(value)} ${value === 1 ? 'Ansatz' : 'Ansätze'})`,
};

function isAbove({ value, usual }: Influence): boolean {
  return Number(value) > Number(usual);
}

function largeOrSmall(read: Influence): string {
  return isAbove(read) ? 'groß' : 'klein';
}

function thickOrThin(read: Influence): string {
  return isAbove(read) ? 'dick' : 'dünn';
}

function moreOrLess(read: Influence): string {
  return isAbove(read) ? 'viel' : 'wenig';
}

function percent({ value }: Influence, amounts: Amounts): string {
  return amounts.percent(Number(value));
}

function degrees({ value }: Influence, amounts: Amounts): string {
  return amounts.temperature(Number(value));
}

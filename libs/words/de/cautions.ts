import type { Caution } from '#contract';
import type { MessageWords } from '../words.js';

const allergenNames = { milk: 'Milch', nuts: 'Nüsse', gluten: 'Gluten' } as const;

/** Quellen: siehe die englische Fassung. */
export const cautions: MessageWords<Caution> = {
  'caution.lye': () =>
    'Lauge verätzt Haut und Augen schwer. Schutzbrille, Handschuhe und lange Ärmel tragen, für frische Luft sorgen, ' +
    'niemand sonst in Reichweite. Lauge in kaltes Wasser geben, nie Wasser auf Lauge; kein Aluminium. Im Auge oder auf ' +
    'der Haut: mindestens 30 Minuten spülen und ärztliche Hilfe holen. Das Sicherheitsdatenblatt des Lieferanten geht vor.',
  'caution.lye-making': () =>
    'Frische Lauge erhitzt sich fast bis zum Kochen, und ihr Dampf verätzt die Atemwege: langsam einrühren, im Freien oder ' +
    'unter dem Abzug, und nicht darüber einatmen. Gefäß aus Polypropylen oder Edelstahl, kein Glas, kein Aluminium. Abdecken, ' +
    'beschriften und nie allein lassen, wo Kinder oder Tiere sind. Auf eine Verätzung kein Essig, nur viel fließendes ' +
    'Wasser; bei Verschlucken sofort die Giftnotrufzentrale anrufen. Wo örtliche Regeln Sachkunde oder eine Erlaubnis verlangen, gehen sie vor.',
  'caution.lye-keeping': () =>
    'Ätznatron und Ätzkali sind ätzend. Nur im eigenen, verschlossenen und beschrifteten Behälter kaufen und tragen. ' +
    'Trocken lagern, fern von Säuren, Lebensmitteln und Aluminium, eingeschlossen, wo kein Kind hinkommt. Vor dem ' +
    'Öffnen das Sicherheitsdatenblatt des Lieferanten lesen.',
  'caution.fresh-soap': () =>
    'Ungereifte Seife ist noch ätzend. Handschuhe tragen und die Hände von den Augen fernhalten.',
  'caution.dust': () =>
    'Pigmente, Glimmer, Tonerde und Kristalle stauben fein: Staubmaske (FFP2) tragen, sacht löffeln, feucht aufwischen.',
  'caution.hot-base': () =>
    'Geschmolzene Seifenbasis haftet und verbrennt. Umrühren, die Hitze außen am Gefäß prüfen, auf Spritzer achten.',
  'caution.hot-fats': () =>
    'Heißes Fett verbrennt, und bei zu viel Hitze fängt es Feuer. Sanft schmelzen und nie allein auf der Hitze lassen. ' +
    'Brennendes Fett: Deckel drauf, Hitze aus, kein Wasser.',
  'caution.cooking': () =>
    'Kochende Seife steigt, spritzt und ist noch ätzend. Ein Topf mit dem doppelten Volumen, kein Aluminium; Schutzbrille, ' +
    'Handschuhe und lange Ärmel tragen und sie nie allein lassen.',
  'caution.alcohol': () =>
    'Isopropylalkohol entzündet sich schon bei Raumtemperatur. Sparsam sprühen, bei frischer Luft und ohne Flamme, ' +
    'Herdplatte oder Funken in der Nähe. Erst verdunsten lassen, dann das Schmelzgerät wieder einschalten.',
  'caution.zap-test': () =>
    'Seife nicht mit der Zunge prüfen. Eine Schnittfläche anfeuchten und einen Tropfen Phenolphthalein oder einen ' +
    'pH-Streifen darauf geben: Rosa oder über 10,5 heißt, dass noch Lauge da sein kann. Dann liegen lassen und wieder prüfen, bevor jemand sie benutzt.',
  'caution.looks-edible': () =>
    'Dieses Stück kann mit Essen verwechselt werden. Von Kindern fernhalten, mit „Seife, nicht essbar“ kennzeichnen und ' +
    'vor dem Verkauf die örtlichen Vorschriften prüfen: Das Vereinigte Königreich verbietet solche Waren, wenn sie im ' +
    'Mund gefährlich sind, und die Europäische Union verlangt, die Ähnlichkeit in der Sicherheitsbewertung zu bedenken.',
  'caution.allergens': ({ allergens }, texts) =>
    `Enthält ${texts.and(allergens.map((each) => allergenNames[each]))}. Sagen Sie es allen, die davon bekommen: Manche sind allergisch.`,
  'caution.missed-day': ({ readyBy }, texts) =>
    `Bis ${texts.calendarDay(readyBy)} wird diese Seife kaum reif. Sie ist ohne diesen Termin geplant.`,
};

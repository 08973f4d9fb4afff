import type { Caution } from '#contract';
import type { MessageWords } from '../words.js';

/** Quellen: siehe die englische Fassung. */
export const cautions: MessageWords<Caution> = {
  'caution.lye': () =>
    'Lauge verätzt Haut und Augen schwer. Schutzbrille, Handschuhe und lange Ärmel tragen, für frische Luft sorgen, ' +
    'niemand sonst in Reichweite. Lauge in kaltes Wasser geben, nie Wasser auf Lauge; kein Aluminium. Im Auge oder auf ' +
    'der Haut: mindestens 30 Minuten spülen und ärztliche Hilfe holen. Das Sicherheitsdatenblatt des Lieferanten geht vor.',
  'caution.lye-keeping': () =>
    'Ätznatron und Ätzkali sind ätzend. Nur im eigenen, verschlossenen und beschrifteten Behälter kaufen und tragen. ' +
    'Trocken lagern, fern von Säuren, Lebensmitteln und Aluminium, eingeschlossen, wo kein Kind hinkommt. Vor dem ' +
    'Öffnen das Sicherheitsdatenblatt des Lieferanten lesen.',
  'caution.fresh-soap': () =>
    'Ungereifte Seife ist noch ätzend. Handschuhe tragen und die Hände von den Augen fernhalten.',
  'caution.hot-base': () =>
    'Geschmolzene Seifenbasis haftet und verbrennt. Umrühren, die Hitze außen am Gefäß prüfen, auf Spritzer achten.',
  'caution.alcohol': () =>
    'Isopropylalkohol entzündet sich schon bei Raumtemperatur. Sparsam sprühen, bei frischer Luft und ohne Flamme, ' +
    'Herdplatte oder Funken in der Nähe. Erst verdunsten lassen, dann das Schmelzgerät wieder einschalten.',
  'caution.looks-edible': () =>
    'Dieses Stück kann mit Essen verwechselt werden. Von Kindern fernhalten, mit „Seife, nicht essbar“ kennzeichnen und ' +
    'vor dem Verkauf die örtlichen Vorschriften prüfen: Das Vereinigte Königreich verbietet solche Waren, wenn sie im ' +
    'Mund gefährlich sind, und die Europäische Union verlangt, die Ähnlichkeit in der Sicherheitsbewertung zu bedenken.',
  'caution.missed-day': ({ readyBy }, texts) =>
    `Bis ${texts.calendarDay(readyBy)} wird diese Seife kaum reif. Sie ist ohne diesen Termin geplant.`,
};

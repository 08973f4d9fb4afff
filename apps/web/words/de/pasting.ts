import type { PastingWords } from '../en/pasting.js';

export const pasting: PastingWords = {
  title: 'Rezept einfügen',
  text: 'Rezept, je Zeile eine Zutat',
  hint: 'Gewichte oder Prozente, wie sie dastehen. Übernommen werden Fette, Honig, und Milch, Tee und Ähnliches nach Gewicht; Lauge und Wasser werden ausgerechnet.',
  example: 'Olivenöl 60 %\nKokosöl 40 %',
  read: 'Einlesen',
  found: (fats, look) =>
    `${fats === 1 ? '1 Fett' : `${String(fats)} Fette`} gefunden, ${
      look === 0 ? 'nichts anzusehen' : look === 1 ? '1 Zeile anzusehen' : `${String(look)} Zeilen anzusehen`
    }.`,
  none: 'Kein Fett gefunden. Schreiben Sie je Zeile eine Zutat mit ihrer Menge dahinter.',
  cut: 'Der Text ist länger, als auf einmal gelesen wird. Was nach der letzten Zeile hier kommt, fehlt.',
  lines: 'Was aus jeder Zeile wurde',
  line: (number) => `Zeile ${String(number)}`,
  taken: (fat, amount) => `${fat}: ${amount}`,
  use: (fats, others) => {
    const took = fats === 1 ? 'Dieses Fett' : `Diese ${String(fats)} Fette`;
    const poured =
      others === 0 ? '' : ` und ${others === 1 ? '1 weitere Zutat' : `${String(others)} weitere Zutaten`}`;
    return `${took}${poured} übernehmen`;
  },
  replaces: 'Sie ersetzen die Fette, die jetzt im Rezept stehen.',
  isIt: 'Ist es eines von diesen?',
  orIs: 'Oder ist es:',
  outcomes: {
    'unknown-fat': 'Kein Fett heißt so.',
    'other-sort':
      'Nicht übernommen: Die anderen Fette sind anders angegeben. Schreiben Sie alle als Gewicht oder alle in Prozent.',
    'not-understood': 'Keine Zutat mit einer Menge.',
    'too-long': 'Nicht übernommen: Die Zeile ist zu lang.',
    'too-many-fats': 'Nicht übernommen: Ein Rezept fasst 30 Fette.',
  },
  noAmount: {
    none: (fat) => `${fat}: Die Menge fehlt.`,
    'no-unit': (fat) => `${fat}: Schreiben Sie die Einheit oder % hinter die Zahl.`,
    'by-volume': (fat) => `${fat}: als Volumen angegeben. Abwiegen und das Gewicht schreiben.`,
    'out-of-range': (fat) => `${fat}: Die Menge ist 0 oder zu groß.`,
  },
  others: {
    lye: 'Lauge: nicht übernommen. Sie wird unten aus den Fetten ausgerechnet.',
    water: 'Wasser: nicht übernommen. Es wird unten ausgerechnet.',
    fragrance: 'Duft: nicht übernommen. Tragen Sie ihn unten mit der Grenze des Lieferanten ein.',
    setting: 'Eine Einstellung: nicht übernommen. Stellen Sie sie unten ein.',
    total: 'Eine Summe: nicht übernommen.',
    other: 'Kein Fett: nicht übernommen. Tragen Sie es unten ein.',
  },
  doubts: {
    thousands: 'Menge prüfen: Punkt oder Komma lässt sich auf zwei Arten lesen.',
    'two-amounts': 'Menge prüfen: Die Zeile nennt zwei, die erste zählt.',
    'extra-number': 'Menge prüfen: In der Zeile steht noch eine Zahl.',
    'part-of-name': 'Fett prüfen: In der Zeile stehen noch andere Wörter.',
    'other-fats': 'Fett prüfen: Der Name steht für mehr als eines.',
  },
  amountsIn: 'Mengen der Fette als',
  sorts: { percent: 'Anteile', grams: 'Gewichte' },
  weight: 'Gewicht',
  total: (mass) => `Zusammen ${mass}`,
  size: 'Ansatz reicht für',
  sizes: {
    pieces: 'die Stücke einer Produktion',
    fats: 'ein Gewicht aller Fette',
    fat: 'den Rest eines Fetts',
  },
  sizeFats: 'Gewicht aller Fette',
  sizeFat: 'Fett, von dem ein Rest da ist',
  sizeFatGrams: 'So viel davon verbrauchen',
  sizeHints: {
    pieces: 'So viel, wie Formen und Anzahl brauchen.',
    fats: 'Wie viele Stücke das auch gibt.',
    fat: 'Die anderen Fette richten sich danach.',
  },
};

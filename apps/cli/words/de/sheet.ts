import type { PrintedWords } from '../en/index.js';

export const sheet: PrintedWords['sheet'] = {
  labels: 'Inhaltsstoffe für Etiketten',
  labelsHow:
    'Nach Masse, das meiste zuerst. Ein Etikett trägt eine der beiden Listen. Namen in Anführungszeichen sind Ihre eigenen: Den INCI-Namen nennt der Lieferant.',
  asPutIn: 'Wie hineingetan',
  asSoap: 'Als Seife',
  noPrices: 'Kosten je Stück: noch keine Preise bekannt.',
  cost: (total, materials, work) => `Kosten je Stück: ${total} (Material ${materials}, ${work})`,
  atLeast: (sum) => `mindestens ${sum}`,
  work: (minutes, paid) => `${minutes} min Arbeit${paid === '' ? '' : ` ${paid}`}`,
  ofGroup: (group, cost) => `Ein Stück aus ${group} kostet ${cost}`,
  unpriced: (titles) => `Nicht dabei, weil kein Preis bekannt ist: ${titles}.`,
  nothingToGather: 'Bereitlegen: nichts weiter.',
  gather: 'Bereitlegen',
  gatherFor: (runs) => `Bereitlegen für ${runs} Läufe`,
  needed: 'nötig',
  onHand: 'vorhanden',
  buy: 'kaufen',
  nothing: 'nichts',
  total: (sum) => `Alles, was einen Preis hat: ${sum}`,
  unused: (keys) => `So heißt hier kein Material, das gebraucht wird: ${keys}.`,
  fats: ['Kurzname', 'Fett', 'NaOH je g', 'Chargen', 'bekannt aus'],
};

import type { PrintedWords } from '../en/index.js';

export const clocks: PrintedWords['clocks'] = {
  until: (state) => `${state} bis`,
  now: (band) => `jetzt ${band}`,
  sameAs: (part) => `Dieselben Zeiten wie ${part}.`,
  heat: {
    sameAs: (part) => `Warm wird es wie ${part}.`,
    after: 'nach dem Gießen',
    middle: 'Mitte',
    edge: 'Rand',
  },
  factors: (states, factors) => `${states}: ${factors}.`,
  atReference: 'wie am Bezugspunkt',
  filling: (needed, stretch, chance, surely) =>
    `Alle Stücke brauchen ${needed}; der Leim lässt dafür ${stretch}. Rechtzeitig fertig: ${chance}; neunmal von zehn ${surely}.`,
  split: (batches, chance) => `In ${batches} Chargen wäre jede einzelne zu ${chance} sicher.`,
  moves: (state, moves) => `Was ${state} am meisten verschiebt: ${moves}.`,
  cure: 'Reife',
  weighings: (weighings, mass, percent, days, range) =>
    `Nach ${weighings} Wägungen bleibt ein Stück am Ende bei ${mass}. Reif ist es, sobald es in einer Woche weniger als ${percent} verliert: ${days} Tage nach dem Ausformen (${range}).`,
  settled: 'Es verliert kein Gewicht mehr: Es ist reif.',
  taught: 'Was Ihr Protokoll gelehrt hat',
  anyRecipe: 'jedes Rezept',
  asWide: (share) => `Spanne ${share} so breit`,
  record: (of, inside, outside, unknown, expected) =>
    `Von den letzten ${of} Vorhersagen, jede wie vor ihrem Ansatz, trafen ${inside} die Spanne und ${outside} nicht; bei ${unknown} lassen die Blicke es offen. ${expected} waren darin zu erwarten.`,
  onlyDone: (pace, batches) =>
    `${pace}: Sie haben nur eingetragen, wann es getan war (Ansätze: ${batches}), nie einen Blick, der zu früh war. Die Vorhersage bleibt, wie sie war, und kein Plan verlangt es früher, als Sie es je getan haben. Tragen Sie einen zu frühen Blick als „noch nicht“ ein, dann wird die Vorhersage besser.`,
  from: (entries) => `aus ${entries}`,
  why: 'Warum',
  states: 'Zustände am Bezugspunkt',
  rules: 'Regeln',
  log: 'Protokoll',
  actsOn: (what) => `Wirkt auf: ${what}.`,
};

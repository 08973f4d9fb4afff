import type { PrintedWords } from '../en/index.js';

export const plan: PrintedWords['plan'] = {
  pieces: (count) => `${count} Stück`,
  group: (title, pieces, parts) => `${title}: ${pieces} mit ${parts}`,
  leftOut: (parts) => `Wird nicht gemacht, weil keine Gruppe es hat: ${parts}`,
  forPieces: (title, pieces) => `${title}, ${pieces}`,
  forGroups: (title, groups, pieces) => `${title}, ${groups}: ${pieces}`,
  cured: (likely, high) =>
    likely === high
      ? `Reif: verlässlich ${high}`
      : `Reif: wohl ${likely}, verlässlich ${high} (bei 9 von 10 solchen Läufen)`,
  opens: (title, likely, high) =>
    likely === high
      ? `${title}: verlässlich ${high}`
      : `${title}: wohl ${likely}, verlässlich ${high} (in 9 von 10 Fällen)`,
  tideTable: ['Gezeitentafel', 'ab', 'am besten', 'spätestens'],
  status: { done: 'fertig', spoilt: 'verdorben' },
  added: 'Ergänzt, weil der Entwurf es nicht sagt',
  comesAfter: (stage, after) => `${stage} kommt nach ${after}.`,
  doneWhile: (stage, part, state) => `${stage}, solange ${part} ${state} ist.`,
  waitsUntil: (stage, part, state) => `${stage} wartet, bis ${part} ${state} ist.`,
  attempt: (title, attempt) => `${title} (Versuch ${attempt})`,
  sittings: 'Sitzungen',
  until: (from, to) => `${from} bis ${to}`,
  oddsByTheDay: (byTheDay, atAll, asPlanned) =>
    `Gute Stücke bis zum Tag: ${byTheDay}. Gute Stücke überhaupt: ${atAll}. Alles wie geplant, auch das Aussehen: ${asPlanned}.`,
  odds: (sound, asPlanned) => `Gute Stücke: ${sound}. Alles wie geplant, auch das Aussehen: ${asPlanned}.`,
  lost: (stage, odds) => `${stage}, verloren ${odds}.`,
  curedInTime: 'rechtzeitig reif',
  keeps: (tail) =>
    `Dieser Plan geht auch auf, wenn die Seife zu den schnellsten oder langsamsten ${tail} gehört. Ihre Zeiten und die Schüssel zählen dabei nicht mit.`,
  breaks: (tail) =>
    `Gehört die Seife zu den schnellsten oder langsamsten ${tail}, geht dieser Plan vielleicht nicht auf, auch wenn Zeiten und Schüssel reichen. Dann geht dies womöglich nicht alles zusammen:`,
  undecided: 'Kein Plan gefunden, und keiner ausgeschlossen: Die Suche ist an ihre Grenze gekommen.',
  noPlan: 'Es gibt keinen Plan. Das geht nicht alles zusammen:',
  noneEnough: 'Nichts davon reicht allein: Dahinter steht noch mehr im Weg.',
  anyOne: 'Jedes davon macht einen Plan möglich:',
  latestStart: (day, odds) => `Reif bis ${day}, mit einer Chance von ${odds}`,
  remedies: 'Abhilfen',
  nothingWorse: 'Nichts wird schlechter.',
  worse: (text) => `Schlechter: ${text}`,
  also: (text) => `Außerdem: ${text}`,
  takeCare: 'Vorsicht',
  amounts: 'Mengen',
  batter: (mass, volume) => `${mass} Seifenleim, ${volume}`,
  base: (mass) => `${mass} Schmelzseife`,
  batchFor: (parts) => `Ein Ansatz für ${parts}`,
  splitInto: 'Vor dem Färben aufteilen in:',
  fromBatch: 'Aus dem Ansatz oben.',
  sameAs: (part) => `Dasselbe abwiegen wie für ${part}.`,
  short: (chance) => `Chance, dass es nicht reicht: ${chance}.`,
  left: (likely, range, uses) => `Übrig: wahrscheinlich ${likely} (${range})${uses}.`,
  allergens: (named) => `Auf das Etikett gehören: ${named} (von der trockenen Seife).`,
  allergensUnknown: (fragrances) =>
    `Allergene von ${fragrances} sind nicht eingetragen: Das Blatt des Lieferanten nennt sie.`,
  stock: (strength, amount) => `Natronlauge von ${strength} ${amount}`,
  reaches: (pieces, certainty) =>
    `Sein Rezept gibt die Größe an: Er reicht für ${pieces} mit ${certainty} Sicherheit.`,
  surer: (certainty, amount) => `Für ${certainty} Sicherheit: ${amount}.`,
  madeFor: (pieces, volume, range, basis) =>
    `Gerechnet für ${pieces} zu ${volume}, meist ${range} (${basis})`,
  stays: (mass) => `, dazu ${mass}, die in Schüssel, Beutel und Pipette bleiben`,
  asUsual: ' (wie üblich; nichts eingetragen)',
  fats: (mass) => `Fette ${mass}`,
  superfat: (percent) => `Überfettung ${percent}`,
  withOil: (percent) => `${percent} mit Fett, das keine Lauge bekommt`,
  asLotsVary: (range) => `${range} je nach Charge`,
  kohShare: (share, purity) => `KOH ${share} der Lauge, ${purity} rein`,
  naohPurity: (purity) => `NaOH ${purity} rein`,
  batterAt: (temperature) => `Leim bei ${temperature}`,
  stirredInto: {
    fat: 'angerührt in Öl, zusätzlich',
    water: 'angerührt in Wasser, zusätzlich',
    glycerol: 'angerührt in Glycerin, zusätzlich',
  },
  lye: (alkalis, into) => `Lauge: ${alkalis} in ${into}. Schutzbrille, Handschuhe; nie Wasser in Lauge.`,
  acids:
    'Vor der Lauge ins Wasser oder in die Fette rühren, nie auf starke Lauge: das spritzt. Die Lauge oben rechnet es schon ein.',
  plainWater: (water) => `${water} Wasser`,
  intoBatter: (liquids) => `In den Leim: ${liquids}.`,
  liquidsHold: (fat, sugar) => `In den Flüssigkeiten sind ${fat} Fett und ${sugar} Zucker.`,
  water: (percent, times, ofFats) =>
    `Lauge von ${percent}; ${times}-mal so viel Wasser wie Lauge, ${ofFats} der Fette.`,
  allWater: (ofFats) => `Mit dem, was Säuren und Farben mitbringen: ${ofFats} der Fette.`,
};

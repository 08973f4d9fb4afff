import type { Words } from '../en/index.js';

export const heat: Words['heat'] = {
  title: 'Wärme nach dem Gießen',
  lead: 'Seife erwärmt sich, während sie entsteht. Das gilt für das, was in einer Mulde ist.',
  needsMould: 'Wählen Sie für den Ansatz eine Form, dann steht hier, wie warm er wird.',
  sameAs: (part) => `Warm wird es wie „${part}“.`,
  picture: (title) => `${title}: Temperatur in der Mitte und am Rand, ab dem Gießen`,
  legend: {
    middle: 'Mitte',
    edge: 'Rand',
    hottest: 'am heißesten, 8 von 10',
    gel: (from) => `Gelphase ab ${from}`,
    around: {
      room: (degrees) => `Raum, ${degrees}`,
      chilled: (degrees) => `Kühlschrank, ${degrees}`,
    },
  },
  table: 'Der Verlauf als Tabelle',
  columns: { after: 'Nach dem Gießen', middle: 'Mitte', edge: 'Rand' },
  ways: 'Wenn die Form anders stünde',
  wayColumns: {
    kept: 'Sie steht',
    whole: 'Geliert ganz',
    part: 'Nur in der Mitte',
    none: 'Geliert nicht',
    overheats: 'Überhitzt',
  },
  asItIs: '(wie jetzt)',
  keptLabel: 'Wie die Form nach dem Gießen steht',
  keptHint: 'Davon hängt ab, wie warm die Seife wird.',
  kept: {
    open: 'offen',
    covered: 'abgedeckt',
    wrapped: 'in Handtücher gewickelt',
    chilled: 'im Kühlschrank',
  },
  usual: (kept) => `wie dafür üblich: ${kept}`,
};

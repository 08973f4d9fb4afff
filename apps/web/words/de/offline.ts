import type { Words } from '../en/index.js';

export const offline: Words['offline'] = {
  refused: (count) =>
    count === 1 ? '1 Eintrag wurde nicht angenommen' : `${String(count)} Einträge wurden nicht angenommen`,
  show: 'Ansehen',
  close: 'Schließen',
  title: 'Einträge auf diesem Gerät',
  intro:
    'Sie werden in dieser Reihenfolge gesendet, sobald Benchtide antwortet. Sie dürfen die Seite schließen, ohne dass etwas verloren geht.',
  empty: 'Nichts wartet. Alle Einträge stehen im Protokoll.',
  sendNow: 'Jetzt senden',
  waits: 'wartet auf das Senden',
  held: 'wartet auf den Eintrag darüber',
  notTaken: 'nicht angenommen',
  notTakenAt: (when) => `Was Sie ${when} eingetragen haben, wurde nicht übernommen.`,
  wasRead: 'Gelesen, hier entfernen',
  tryAgain: 'Noch einmal senden',
  correct: 'Zeit berichtigen',
  when: 'Wann es war',
  sendWith: 'Mit dieser Zeit senden',
  keep: 'Behalten',
  discard: 'Verwerfen',
  reallyDiscard: 'Endgültig verwerfen',
  about: (run, time) => `${run}, ${time}`,
  entry: {
    done: (stage) => `„${stage}“ fertig`,
    notYet: (stage) => `„${stage}“: noch nicht fest`,
    mishap: (part) => `Missgeschick mit ${part}`,
    takeBack: 'Ein Eintrag zurückgenommen',
    other: 'Eintrag im Protokoll',
  },
};

import type { Words } from '../en/index.js';

export const shell: Words['shell'] = {
  skip: 'Zum Inhalt',
  places: 'Seiten',
  now: 'Jetzt',
  runs: 'Läufe',
  plan: 'Lauf planen',
  makings: 'Rezepte und Formen',
  shelf: 'Regal',
  hours: 'Zeiten',
  lessons: 'Gelernt',
  more: 'Mehr',
  settings: 'Einstellungen',
  loading: 'Wird geholt …',
  again: 'Noch einmal versuchen',
  noAnswer: 'Benchtide antwortet nicht. Was Sie sehen, kann alt sein.',
  nothingHere: 'Unter dieser Adresse gibt es nichts.',
  toNow: 'Zu „Jetzt“',
  failed: 'Auf dieser Seite ging etwas schief.',
  offline: (age) => `Ohne Verbindung. Was Sie sehen, ist von ${age}.`,
  waiting: (count) => (count === 1 ? '1 Eintrag wartet' : `${count} Einträge warten`),
};

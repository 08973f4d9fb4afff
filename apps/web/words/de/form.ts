import type { Words } from '../words.js';

export const form: Words['form'] = {
  missing: 'Fehlt noch.',
  noNumber: (text) => `„${text}“ wird nicht als Zahl gelesen.`,
  wrongTitle: (count) =>
    count === 1 ? 'Eine Stelle stimmt noch nicht' : `${count} Stellen stimmen noch nicht`,
  save: 'Speichern',
  saving: 'Wird gespeichert …',
  saved: 'Gespeichert.',
  discard: 'Änderungen verwerfen',
  unsaved: 'Noch nicht gespeichert; bleibt bis dahin auf diesem Gerät.',
  add: 'Hinzufügen',
  remove: 'Entfernen',
  cancel: 'Abbrechen',
  staleTitle: 'Es wurde inzwischen anderswo geändert',
  staleHow: 'Beide Fassungen sind noch da. Wählen Sie, welche gelten soll.',
  mine: 'Ihre',
  theirs: 'Jetzt gespeichert',
  where: 'Wo',
  keepMine: 'Meine behalten',
  takeTheirs: 'Die gespeicherte nehmen',
  nothing: 'nichts',
  yes: 'ja',
  no: 'nein',
};

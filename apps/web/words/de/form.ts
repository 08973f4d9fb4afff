import type { Words } from '../en/index.js';

export const form: Words['form'] = {
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
  unit: 'Einheit',
  lengthUnits: { min: 'min', h: 'Std.', d: 'Tage' },
  up: (what) => `Nach oben: ${what}`,
  down: (what) => `Nach unten: ${what}`,
  yes: 'ja',
  no: 'nein',
};

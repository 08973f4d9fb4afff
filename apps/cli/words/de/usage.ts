import type { PrintedWords } from '../en/index.js';

export const usage: PrintedWords['usage'] = {
  usage: 'Aufruf',
  file: 'DATEI',
  number: 'ZAHL',
  key: 'KURZNAME',
  remedies: 'nennt bis zu fünf Änderungen, die helfen, mit allem, was sie besser und schlechter machen',
  odds: 'der späteste Beginn, mit dem es mit dieser Chance bis zu dem Tag reif ist',
  fats: 'die Fette, die keinen eigenen Eintrag brauchen',
  rules: 'jeder Zustand und jede Regel, und woher sie bekannt sind',
  schema: 'das JSON-Schema von dem, was --json ausgibt',
  fileSchema: 'das JSON-Schema einer Laufdatei',
  files: (demos) => `DATEI ist eine Laufdatei oder nur der Name einer Demo: ${demos}.`,
  count: '--count rechnet den einen Lauf der Datei mit so vielen Stück.',
  planStatuses:
    'Endestatus: 0 geplant, 2 kein Plan (die Gründe werden genannt), 64 an der Eingabe stimmt etwas nicht.',
  statuses: 'Endestatus: 0 fertig, 64 an der Eingabe stimmt etwas nicht.',
};

import type { PrintedWords } from '../en/index.js';

export const options: PrintedWords['options'] = {
  noCommand: (name, commands) => `Den Befehl „${name}“ gibt es nicht; es gibt: ${commands}.`,
  unknown: (option) => `Die Option ${option} gibt es nicht.`,
  meant: (option, near) => `Die Option ${option} gibt es nicht; meinen Sie ${near}?`,
  needsValue: (option, example) => `${option} braucht einen Wert, etwa ${example}.`,
  takesNone: (option) => `${option} hat keinen Wert.`,
  belongsTo: (option, command) => `${option} gehört zu npm run ${command}.`,
  notKnown: (option, value, accepted) => `${option} ${value} ist nicht bekannt; möglich: ${accepted}.`,
  whichFile: 'Welche Laufdatei?',
  oneFile: (more) => `Nur eine Datei auf einmal; „${more}“ ist zu viel.`,
  count: (value) => `--count ${value} ist keine Stückzahl; möglich: eine ganze Zahl, 1 bis 5000.`,
  oneRun: (runs) =>
    `--count ist für Dateien mit einem Lauf; diese hat ${runs}. Ändern Sie count in der Datei.`,
  seed: (value, low, high) =>
    `--seed ${value} ist kein Startwert; möglich: eine ganze Zahl, ${low} bis ${high}.`,
  at: (value) =>
    `--at ${value} ist keine Ortszeit; möglich: Datum und Uhrzeit wie 2026-11-27T18:00, in den Jahren 2000 bis 2199.`,
  noSuchTime: (value) =>
    `--at ${value}: Den Tag oder die Uhrzeit gibt es nicht; möglich: etwa 2026-11-27T18:00.`,
  goesWithOdds: (option) => `${option} geht nur mit --odds, etwa --odds 0.9.`,
  odds: (value) => `--odds ${value} geht nicht; möglich: eine Zahl von 0.01 bis 0.999, etwa 0.9.`,
  remediesWithOdds: '--remedies hilft einem Plan, der so früh wie möglich beginnt; lassen Sie --odds weg.',
  readyBy: (value) =>
    `--ready-by ${value} ist kein Tag; möglich: ein Datum wie 2027-01-16, in den Jahren 2000 bis 2199.`,
};

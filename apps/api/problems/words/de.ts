import type { ProblemWords, TaskName, ThingName } from '../problem-told.js';

const things: Readonly<Record<ThingName, string>> = {
  workshop: 'Werkstatt',
  run: 'Lauf',
  plan: 'Plan',
  key: 'Schlüssel',
  photo: 'Foto',
  mould: 'Form',
  fat: 'Fett',
  recipe: 'Rezept',
  design: 'Entwurf',
};

const tasks: Readonly<Record<TaskName, string>> = {
  replan: 'Der Plan',
  amounts: 'Das Wiegeblatt',
  clocks: 'Die Uhren',
  cure: 'Die Reife',
  gather: 'Die Einkaufsliste',
  used: 'Was die Läufe verbraucht haben',
  lessons: 'Was die Protokolle lehren',
  teach: 'Was das Protokoll lehrt',
  remedies: 'Die Suche nach Auswegen',
  'what-if': 'Die Probe',
  'latest-start': 'Die Suche nach dem spätesten Beginn',
  judge: 'Das Beurteilen eines Plans, wie er steht',
  'plan-preview': 'Der Plan der Datei',
  'amounts-preview': 'Das Wiegeblatt der Datei',
  'clocks-preview': 'Die Uhren der Datei',
};

export const de: ProblemWords = {
  'invalid-input': () => ({ title: 'Was gesendet wurde, passt so nicht' }),
  'nothing-there': ({ method, path }) => ({ title: `Unter ${method} ${path} ist nichts` }),
  'no-such-thing': ({ what }) => ({ title: `${things[what]} nicht gefunden` }),
  'key-taken': ({ what, key }) => ({
    title: `${things[what]} „${key}“ ist schon da`,
    detail: 'Wählen Sie einen anderen Kurznamen.',
  }),
  'stale-version': () => ({
    title: 'Inzwischen wurde es anderswo geändert',
    detail:
      'Sehen Sie nach, was jetzt gespeichert ist, und senden Sie die Änderung mit dessen Version noch einmal.',
  }),
  'thing-in-use': ({ what, users }) => ({
    title: `${things[what]} wird gebraucht`,
    detail: `Gebraucht von ${users.map((user) => `„${user}“`).join(', ')}.`,
  }),
  'equipment-in-use': ({ equipment, user }) => ({
    title: 'Das Gerät wird gebraucht',
    detail: `„${user}“ braucht „${equipment}“.`,
  }),
  'run-begun': () => ({
    title: 'Der Lauf hat begonnen',
    detail: 'Was gegossen ist, lässt sich nicht mehr ändern.',
  }),
  'run-abandoned': () => ({
    title: 'Der Lauf wurde abgebrochen',
    detail: 'Für ihn lässt sich nichts mehr eintragen.',
  }),
  'idempotency-key-reused': () => ({
    title: 'Dieser Idempotency-Key gehört zu einer anderen Anfrage',
    detail: 'Nehmen Sie für eine neue Anfrage einen neuen; derselbe wiederholt die erste.',
  }),
  'bad-idempotency-key': () => ({
    title: 'Dieser Idempotency-Key passt nicht',
    detail: 'Möglich: 8 bis 200 druckbare ASCII-Zeichen ohne Leerzeichen, etwa eine UUID.',
  }),
  'other-site': () => ({
    title: 'Eine andere Website darf hier nichts ändern',
    detail:
      'Benutzen Sie die Seiten dieses Programms, oder senden Sie einen Schlüssel als „Authorization: Bearer KEY“.',
  }),
  'key-needed': () => ({
    title: 'Es fehlt ein Schlüssel',
    detail:
      'Melden Sie sich an, oder senden Sie den Schlüssel als „Authorization: Bearer KEY“; er steht beim Start da und im Datenordner.',
  }),
  'unknown-host': () => ({ title: 'Unter diesem Namen ist dieser Rechner hier nicht bekannt' }),
  'wrong-key': () => ({
    title: 'Dieser Schlüssel ist hier nicht bekannt',
    detail: 'Vielleicht ist er vertippt oder widerrufen.',
  }),
  'wrong-code': () => ({
    title: 'Dieser Code öffnet nichts',
    detail:
      'Vielleicht ist er vertippt, schon benutzt oder älter als 15 Minuten. Ein angemeldetes Gerät macht einen neuen; ebenso jeder Start des Programms.',
  }),
  'too-many-tries': ({ seconds }) => ({
    title: 'Zu viele falsche Versuche',
    detail: `Versuchen Sie es in ${String(seconds)} Sekunden noch einmal.`,
  }),
  'own-key': () => ({
    title: 'Das ist der Schlüssel, den Sie gerade benutzen',
    detail: 'Widerrufen Sie ihn von einem anderen Gerät, oder melden Sie sich hier ab.',
  }),
  'demo-gone': () => ({
    title: 'Diese Demo ist verworfen',
    detail:
      'Nichts wurde geändert. Machen Sie in Ihrer eigenen Werkstatt weiter, oder öffnen Sie die Demo neu.',
  }),
  'not-json': () => ({ title: 'Der Inhalt muss JSON in UTF-8 sein' }),
  malformed: () => ({
    title: 'Die Anfrage ist nicht lesbar',
    detail: 'Der Inhalt muss gültiges JSON sein.',
  }),
  'too-large': ({ kilobytes }) => ({
    title: 'Der Inhalt ist zu groß',
    ...(kilobytes !== undefined && { detail: `Höchstens ${String(kilobytes)} kB werden hier gelesen.` }),
  }),
  'workshop-busy': () => ({
    title: 'Gerade beschäftigt',
    detail:
      'Eine andere Änderung an dieser Werkstatt ist noch in Arbeit. Versuchen Sie es gleich noch einmal.',
  }),
  'changes-wait': ({ count }) => ({
    title: 'Gerade beschäftigt',
    detail: `Schon ${String(count)} Änderungen an dieser Werkstatt warten. Nichts wurde geändert.`,
  }),
  'task-not-begun': ({ task }) => ({
    title: 'Gerade beschäftigt',
    detail: `${tasks[task]}: nicht begonnen, denn zu viel wartet schon auf Berechnung.`,
  }),
  'task-took-too-long': ({ task, seconds }) => ({
    title: 'Es dauerte zu lange',
    detail: `${tasks[task]}: nach ${String(seconds)} Sekunden angehalten. Nichts wurde geändert.`,
  }),
  'task-took-too-much-memory': ({ task, megabytes }) => ({
    title: 'Es brauchte zu viel Speicher',
    detail: `${tasks[task]}: bei ${String(megabytes)} MB angehalten. Nichts wurde geändert.`,
  }),
  stopping: () => ({ title: 'Das Programm wird gerade beendet', detail: 'Nichts wurde geändert.' }),
  'client-left': () => ({ title: 'Die Antwort wurde nicht abgewartet' }),
  'no-database': () => ({
    title: 'Die Datenbank ist nicht erreichbar',
    detail:
      'Ob es gespeichert wurde, ist nicht bekannt. Versuchen Sie es gleich noch einmal, mit demselben Idempotency-Key.',
  }),
  'disk-full': ({ folder }) => ({
    title: 'Die Platte ist voll',
    detail:
      `Die Platte ${folder === undefined ? 'der Datenbank' : `mit ${folder}`} ist voll, deshalb wurde nichts gespeichert. ` +
      'Schaffen Sie dort Platz, dann versuchen Sie es noch einmal.',
  }),
  internal: () => ({ title: 'Hier ging etwas schief', detail: 'Es steht unter dieser Nummer im Protokoll.' }),
};

import type { Unreadable } from '../../read-text.js';
import type { YamlFault } from '../../yaml-faults.js';
import type { PrintedWords } from '../en/index.js';

const unreadable: { readonly [S in Unreadable['says']]: (why: Extract<Unreadable, { says: S }>) => string } =
  {
    'no-such-file': () => 'ist nicht zu lesen: Die Datei gibt es nicht.',
    folder: () => 'ist nicht zu lesen: Das ist ein Ordner.',
    forbidden: () => 'ist nicht zu lesen: Sie haben kein Recht dazu.',
    failed: ({ code }) => `ist nicht zu lesen: ${code}.`,
    'too-large': ({ megabytes }) => `ist zu groß; möglich: höchstens ${String(megabytes)} MB.`,
    'utf-16': () => 'ist in UTF-16 geschrieben; möglich: UTF-8. Speichern Sie die Datei als UTF-8.',
    'not-utf-8': () =>
      'ist nicht in UTF-8 geschrieben, vielleicht in Latin-1; möglich: UTF-8. Speichern Sie die Datei als UTF-8.',
  };

const yaml: Readonly<Record<YamlFault, string>> = {
  alias:
    'Mit einem Verweis (*) oder Anker (&) stimmt hier etwas nicht: Er braucht einen Namen, der vorher vergeben wurde, und sonst nichts.',
  'aliases-unfold': 'Ein Verweis (*) führt ins Leere, oder Verweise entfalten sich ohne Ende.',
  'block-in-flow': 'In [ ] und { } können nur Listen und Gruppen in [ ] und { } stehen.',
  collection: 'Diese Marke (!) passt zu keiner Liste und keiner Gruppe.',
  directive: 'Eine Zeile, die mit % beginnt, kennt YAML so nicht.',
  escape:
    'Nach \\ steht in doppelten Anführungszeichen ein Zeichen, das YAML dort nicht kennt. Schreiben Sie \\\\ für den Schrägstrich, oder nehmen Sie einfache Anführungszeichen.',
  indent:
    'Die Zeile ist zu weit oder zu wenig eingerückt. Was zu einer Liste oder Gruppe gehört, beginnt untereinander.',
  'key-on-one-line': 'Der Name eines Felds muss in einer Zeile stehen, dahinter Doppelpunkt und Leerzeichen.',
  'key-too-long':
    'Der Name eines Felds ist länger als 1024 Zeichen; vielleicht fehlt ein schließendes Anführungszeichen.',
  'list-as-key':
    'Hier kann keine Liste oder Gruppe beginnen. Beginnen Sie sie eingerückt in einer neuen Zeile.',
  'missing-sign':
    'Hier fehlt ein Zeichen: Doppelpunkt, Komma, Strich, Leerzeichen, Klammer oder schließendes Anführungszeichen.',
  order: 'Eine Marke (!) oder ein Anker (&) steht nach dem Strich oder Doppelpunkt, und nur einmal.',
  'start-of-text': 'Mit diesem Zeichen kann kein Text beginnen. Setzen Sie den Text in Anführungszeichen.',
  tab: 'Die Zeile ist mit einem Tabulator eingerückt. Nehmen Sie Leerzeichen.',
  tag: 'Die Marke (!) ist nicht bekannt. Lassen Sie sie weg.',
  'too-deep': 'Zu viele Listen und Gruppen stehen ineinander.',
  'two-documents': 'Hier beginnt ein zweites Dokument (---). In einer Datei kann nur eines stehen.',
  unexpected:
    'Hier steht etwas, das nicht hierher gehört: ein Zeichen zu viel, oder davor fehlt ein Anführungszeichen oder eine Klammer.',
};

export const file: PrintedWords['file'] = {
  unreadable: (why) => (unreadable[why.says] as (why: Unreadable) => string)(why),
  yaml: (fault) => `kein gültiges YAML: ${yaml[fault]}`,
  unknownYaml: (line, column) => `kein gültiges YAML: ab Zeile ${line}, Spalte ${column} nicht zu lesen.`,
  twice: (name) => `„${name}“ steht hier zweimal; möglich: einmal.`,
  earlierForm:
    'Die Datei hat die Form 2 und wird als Form 3 gelesen: Ihre Schritte warten zusätzlich auf die Seife, wie es ihre Art verlangt. Was dazukam, steht im Plan.',
  more: (count) => `… und ${count} weitere.`,
  cannotWrite: (code) => `Die Ausgabe ließ sich nicht schreiben: ${code}.`,
};

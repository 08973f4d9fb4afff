import type { InputIssues } from '#units';
import type { RuleWords } from '../../accepted-words.js';
import { foundText, goesWithoutSaying } from '../../format/found.js';
import type { IssueWordsOf, Said, Texts } from '../../words.js';

const rules: RuleWords = {
  'cavity-stated-once':
    'Geben Sie die Größe einer Mulde nur auf eine Weise an: ihren Inhalt oder das Wasser, das sie füllt. Ohne beides geben Sie ihre Maße an.',
  'water-temperature-without-weight':
    'Geben Sie auch an, was das Wasser wiegt, oder lassen Sie seine Temperatur weg.',
  'rising-figures': 'Die drei Werte müssen steigen: der untere, der verwendete, der obere.',
  'rising-pair': 'Der erste Wert darf nicht über dem zweiten liegen.',
  'amount-stated-once': 'Geben Sie auf genau eine Art an, wie viel ein Stück braucht.',
  'cavity-needs-mould': 'Wählen Sie die Form: Die Menge ist ein Anteil ihrer Mulde.',
  'losses-stated-once': 'Geben Sie auf genau eine Art an, wie viel zurückbleibt.',
  'portions-hold-colours': 'Geben Sie die Farben den Portionen, oder teilen Sie nicht in Portionen.',
  'portion-sized-once': 'Geben Sie einer Portion einen Anteil oder Gramm, nicht beides.',
  'one-rest': 'Nur eine Portion kann den Rest bekommen. Geben Sie den anderen einen Anteil oder Gramm.',
  'nothing-left-for-rest': 'Die Anteile lassen für die Portion mit dem Rest nichts übrig.',
  'grams-need-rest':
    'Ist eine Portion in Gramm angegeben, muss eine andere den Rest bekommen: Lassen Sie ihren Anteil leer.',
  'portions-not-100': 'Die Anteile der Portionen müssen zusammen 100 % ergeben.',
  'pieces-or-cavities':
    'Entweder gibt eine Mulde mehrere Stücke, oder ein Stück braucht mehrere Mulden, nicht beides.',
  'longest-under-shortest': 'Die längste Wartezeit ist kürzer als die kürzeste.',
  'wait-without-state': 'Geben Sie an, welcher Zustand das Warten beendet.',
  'late-without-closing': 'Geben Sie zuerst an, bis wann der Schritt beginnen darf.',
  'ends-before-it-begins': 'Das endet, bevor es beginnt. Teilen Sie eine Nacht in zwei Spannen.',
  'code-or-key': 'Geben Sie entweder einen Code oder einen Schlüssel an.',
  'empty-note': 'Schreiben Sie etwas in die Notiz, oder fügen Sie ein Foto hinzu.',
  'one-wish': 'Fragen Sie nur eines: eine Änderung, Einträge ins Protokoll oder neue Zeiten für Schritte.',
  'too-many-fatty-acids': 'Das sind zu viele Fettsäuren.',
  'run-ids': 'Eines davon ist keine Kennung eines Laufs. Geben Sie Kennungen mit Kommas dazwischen an.',
};

function unusable({ value }: { readonly value?: unknown }, texts: Texts): Said {
  const found = foundText(value, texts);
  return found === undefined ? 'Das passt hier nicht.' : `${found} passt hier nicht.`;
}

function sized({ value }: { readonly value?: unknown }, texts: Texts, words: Sized): Said {
  if (value === '' || (Array.isArray(value) && value.length === 0)) return 'Das ist leer.';
  if (Array.isArray(value)) return words.list;
  const found = foundText(value, texts) ?? 'Das';
  return `${found} ${typeof value === 'string' ? words.text : words.number}`;
}

interface Sized {
  readonly list: string;
  readonly text: string;
  readonly number: string;
}

export const inputIssues: IssueWordsOf<keyof InputIssues> = {
  'input.missing': ({ rule, accepted }) =>
    rule === undefined ? { wrong: 'Fehlt noch.', isWhole: goesWithoutSaying(accepted) } : rules[rule],
  'input.unknown-field': ({ field }, texts) =>
    `Ein Feld ${foundText(field, texts) ?? ''} gibt es hier nicht.`,
  'input.repeated-key': ({ value }, { quoted }) => `${quoted(String(value))} ist schon vergeben.`,
  'input.too-small': (issue, texts) =>
    sized(issue, texts, { list: 'Das sind zu wenige.', text: 'ist zu kurz.', number: 'ist zu klein.' }),
  'input.too-big': (issue, texts) =>
    sized(issue, texts, { list: 'Das sind zu viele.', text: 'ist zu lang.', number: 'ist zu groß.' }),
  'input.invalid-type': unusable,
  'input.invalid-value': unusable,
  'input.invalid-union': unusable,
  'input.invalid-format': unusable,
  'input.invalid-key': unusable,
  'input.invalid-element': unusable,
  'input.not-multiple-of': unusable,
  'input.custom': ({ rule }) => rules[rule],
  'input.no-run': () => 'Hier fehlt ein Lauf. Geben Sie einen an.',
  'input.unstorable-text': () =>
    'Dieser Text enthält Zeichen, die sich nicht aufbewahren lassen. Nehmen Sie U+0000 und halbe Zeichen heraus.',
  'input.too-deep': ({ most }, { number }) =>
    `Listen und Gruppen stecken zu tief ineinander. Höchstens ${number(most)} Ebenen.`,
  'input.too-many-values': ({ most }, { number }) =>
    `Das sind zu viele Werte. Senden Sie höchstens ${number(most)}.`,
  'measure.unreadable': unusable,
  'measure.wrong-dimension': ({ unit, value }, { quoted }) =>
    `${quoted(unit)} in ${quoted(String(value))} misst etwas anderes.`,
  'form.no-number': (issue, texts) => ({
    wrong: `${foundText(issue.value, texts) ?? 'Das'} wird nicht als Zahl gelesen.`,
  }),
};

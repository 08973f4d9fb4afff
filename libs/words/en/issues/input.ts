import type { InputIssues } from '#units';
import type { RuleWords } from '../../accepted-words.js';
import { foundText, goesWithoutSaying } from '../../format/found.js';
import type { IssueWordsOf, Said, Texts } from '../../words.js';

const rules: RuleWords = {
  'cavity-stated-once':
    'Say the size of a cavity in just one of two ways: its volume, or the water that fills it. Without either, give its measures.',
  'water-temperature-without-weight': 'Give the weight of the water too, or leave its temperature out.',
  'rising-figures': 'The three figures must rise: low, used, high.',
  'rising-pair': 'The first figure must not be above the second.',
  'amount-stated-once': 'Say in just one way how much a piece takes.',
  'cavity-needs-mould': 'Choose the mould: the amount is a share of its cavity.',
  'losses-stated-once': 'Say in just one way how much is lost.',
  'portions-hold-colours': 'Give the colours to the portions, or have no portions.',
  'portion-sized-once': 'Give a portion a share or grams, not both.',
  'one-rest': 'Only one portion can take the rest. Give the others a share or grams.',
  'nothing-left-for-rest': 'The shares leave nothing for the portion that takes the rest.',
  'grams-need-rest': 'Where a portion is in grams, let one other take the rest: leave its share empty.',
  'portions-not-100': 'The shares of the portions must come to 100%.',
  'pieces-or-cavities': 'Either a cavity makes several pieces or a piece takes several cavities, not both.',
  'longest-under-shortest': 'The longest wait is shorter than the shortest.',
  'wait-without-state': 'Say which state opens or closes the wait.',
  'late-without-closing': 'Say first until when the stage may start.',
  'ends-before-it-begins': 'This ends before it begins. Split a night into two spans.',
  'code-or-key': 'Give either a code or a key.',
  'empty-note': 'Write something into the note, or add a photo.',
  'one-wish': 'Ask for just one thing: a change, entries for the log, or new times for stages.',
  'too-many-fatty-acids': 'These are too many fatty acids.',
  'run-ids': 'One of these is no id of a run. Give ids with commas between them.',
};

function unusable({ value }: { readonly value?: unknown }, texts: Texts): Said {
  const found = foundText(value, texts);
  return found === undefined ? 'This cannot be used here.' : `${found} cannot be used here.`;
}

function sized({ value }: { readonly value?: unknown }, texts: Texts, words: Sized): Said {
  if (value === '' || (Array.isArray(value) && value.length === 0)) return 'This is empty.';
  if (Array.isArray(value)) return words.list;
  const found = foundText(value, texts) ?? 'This';
  return `${found} ${typeof value === 'string' ? words.text : words.number}`;
}

interface Sized {
  readonly list: string;
  readonly text: string;
  readonly number: string;
}

export const inputIssues: IssueWordsOf<keyof InputIssues> = {
  'input.missing': ({ rule, accepted }) =>
    rule === undefined
      ? { wrong: 'Still to be filled in.', isWhole: goesWithoutSaying(accepted) }
      : rules[rule],
  'input.unknown-field': ({ field }, texts) => `There is no field ${foundText(field, texts) ?? ''} here.`,
  'input.repeated-key': ({ value }, { quoted }) => `${quoted(String(value))} is already taken.`,
  'input.too-small': (issue, texts) =>
    sized(issue, texts, { list: 'These are too few.', text: 'is too short.', number: 'is too small.' }),
  'input.too-big': (issue, texts) =>
    sized(issue, texts, { list: 'These are too many.', text: 'is too long.', number: 'is too large.' }),
  'input.invalid-type': unusable,
  'input.invalid-value': unusable,
  'input.invalid-union': unusable,
  'input.invalid-format': unusable,
  'input.invalid-key': unusable,
  'input.invalid-element': unusable,
  'input.not-multiple-of': unusable,
  'input.custom': ({ rule }) => rules[rule],
  'input.no-run': () => 'There is no run here. Give one.',
  'input.unstorable-text': () =>
    'This text has characters that cannot be kept. Take out U+0000 and half characters.',
  'input.too-deep': ({ most }, { number }) =>
    `Lists and groups stand in each other too deeply. Keep to ${number(most)} levels.`,
  'input.too-many-values': ({ most }, { number }) =>
    `These are too many values. Send ${number(most)} at most.`,
  'measure.unreadable': unusable,
  'measure.wrong-dimension': ({ unit, value }, { quoted }) =>
    `${quoted(unit)} in ${quoted(String(value))} measures something else.`,
  'form.no-number': (issue, texts) => ({
    wrong: `${foundText(issue.value, texts) ?? 'This'} is not read as a number.`,
  }),
};

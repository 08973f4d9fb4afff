import type { FatFacts } from '../fats/fat-facts.js';
import { nearestFats } from '../fats/nearest-fats.js';
import { amountOf, type AmountDoubt, type AmountFound, type TextAmount } from './amount-of.js';
import { fatNames, foldedWord, withoutQualities, type FatNames } from './fat-names.js';
import { tokensOf, type Token } from './line-tokens.js';
import { liquidIn } from './liquid-names.js';
import {
  namedAddition,
  otherIngredient,
  type NamedAddition,
  type OtherIngredient,
} from './other-ingredients.js';

/** What is read of a text; what goes beyond is reported and left. */
export const recipeTextLimits = { characters: 20_000, lines: 200, lineCharacters: 200 } as const;

/** Fats of one recipe; a contract allows as many. */
const MOST_FATS = 30;
const MOST_LIQUIDS = 6;
const NEAREST = 3;
/** Unknown names that the likest fats are looked for, and how much of each name. */
const MOST_NEAREST = 40;
const NEAREST_CHARACTERS = 60;
/** The longest name that is looked for inside a line, in words. */
const MOST_WORDS = 6;

/** A fat and how much of it: of one text all in grams or all in per cent. */
export type TextFat = { readonly fat: string } & TextAmount;

/** What became of one line. */
export type LineOutcome =
  | {
      readonly kind: 'fat';
      readonly fat: string;
      readonly amount: TextAmount;
      /** Why to look at it again. `part-of-name`: other words stand in the line; `other-fats`: the name means several. */
      readonly doubts: readonly (AmountDoubt | 'part-of-name' | 'other-fats')[];
      /** Other fats that it may be, nearest first. */
      readonly others: readonly string[];
    }
  /** A name that is no fat's; `nearest` are the fats most like it. */
  | {
      readonly kind: 'unknown-fat';
      readonly name: string;
      readonly amount: TextAmount;
      readonly nearest: readonly string[];
    }
  /** A fat whose amount cannot be taken. */
  | {
      readonly kind: 'no-amount';
      readonly fat: string;
      readonly why: Exclude<AmountFound['found'], 'amount'>;
    }
  /** A liquid in place of water, by weight. */
  | { readonly kind: 'liquid'; readonly liquid: string; readonly amount: { readonly grams: number } }
  /** Something else that the recipe takes, by weight or as a share of the fats. */
  | { readonly kind: 'addition'; readonly addition: NamedAddition; readonly amount: TextAmount }
  /** A share among weights, or a weight among shares. */
  | { readonly kind: 'other-sort'; readonly fat: string; readonly amount: TextAmount }
  | { readonly kind: 'not-a-fat'; readonly what: OtherIngredient; readonly amount?: TextAmount }
  | { readonly kind: 'not-understood' | 'too-long' | 'too-many-fats' };

export interface ReadLine {
  /** From 1, empty lines counted. */
  readonly line: number;
  readonly text: string;
  readonly outcome: LineOutcome;
}

export interface ReadRecipeText {
  /** As they come; a fat that stands twice is added up. */
  readonly fats: readonly TextFat[];
  /** In place of water, as they come, where the fats are by weight. */
  readonly liquids: readonly { readonly liquid: string; readonly grams: number }[];
  /** What else the recipe takes, by the kind of addition, per cent of the fats that were read. */
  readonly additions: readonly { readonly kind: NamedAddition; readonly percent: number }[];
  /** Every line that is not empty. */
  readonly lines: readonly ReadLine[];
  /** The text was longer than `recipeTextLimits`: what came after is in neither list. */
  readonly isCut: boolean;
}

/**
 * Reads a recipe as people write it, one ingredient a line, English or German: “Olive oil 500 g”, “- coconut, 25 %”,
 * “250g shea butter”, “1 lb 4 oz lard”, “Kokosöl: 200 g”. Fats are taken, honey, and liquids such as “100 g goat milk” where both are by weight;
 * lye, water, scent and settings are told apart, for they are worked out or asked for elsewhere. Where the first fat has grams, shares are not taken, and the
 * other way round. Nothing is taken silently: each line says what became of it.
 * @param fats all that may be named, own ones included
 * @param chosen fats that were chosen for lines in doubt, by line number; only for lines that have an amount
 * @returns never throws; the time grows with the length of the text, which is bounded
 */
export function readRecipeText(
  text: string,
  fats: readonly FatFacts[],
  chosen: ReadonlyMap<number, string> = new Map(),
): ReadRecipeText {
  const known = knownFats(fats);
  const { characters, lines: mostLines } = recipeTextLimits;
  const all = text.slice(0, characters).split(/\r\n|\r|\n|\u2028|\u2029/);
  const told = all.slice(0, mostLines).flatMap((line, at): ReadLine[] => {
    const trimmed = line.trim();
    return trimmed === ''
      ? []
      : [{ line: at + 1, text: trimmed, outcome: chosenFor(readLine(trimmed, known), chosen.get(at + 1)) }];
  });
  const { fats: taken, lines: read } = added(told);
  const { liquids, lines: withLiquids } = pouredOf(read, taken);
  const { additions, lines } = addedTo(withLiquids, taken);
  return {
    fats: taken,
    liquids,
    additions,
    lines,
    isCut: text.length > characters || all.length > mostLines,
  };
}

function chosenFor(outcome: LineOutcome, fat: string | undefined): LineOutcome {
  if (fat === undefined || (outcome.kind !== 'fat' && outcome.kind !== 'unknown-fat')) return outcome;
  return { kind: 'fat', fat, amount: outcome.amount, doubts: [], others: [] };
}

interface Known {
  readonly names: FatNames;
  readonly nearest: (name: string) => string[];
}

/** Likeness takes the longest to find, so it is looked for in a bounded number of names of a bounded length. */
function knownFats(fats: readonly FatFacts[]): Known {
  let left = MOST_NEAREST;
  const nearest = (name: string): string[] => {
    left -= 1;
    return left < 0 ? [] : nearestFats(name.slice(0, NEAREST_CHARACTERS), fats, NEAREST);
  };
  return { names: fatNames(fats), nearest };
}

function readLine(line: string, { names, nearest }: Known): LineOutcome {
  if (line.length > recipeTextLimits.lineCharacters) return { kind: 'too-long' };
  const { amount, rest, restWithShares } = amountOf(tokensOf(line));
  const words = rest.flatMap(wordOf);
  const named = nameIn(words, restWithShares.flatMap(wordOf), names);
  const weight = amount.found === 'amount' ? { amount: amount.amount } : {};
  const other = otherIngredient(words);
  const liquid = named?.isWhole === true ? undefined : liquidIn(words.filter((word) => !isNumber(word)));
  if (liquid !== undefined && amount.found === 'amount' && 'grams' in amount.amount) {
    return { kind: 'liquid', liquid, amount: amount.amount };
  }
  const addition = named === undefined ? namedAddition(words.filter((word) => !isNumber(word))) : undefined;
  if (addition !== undefined && amount.found === 'amount')
    return { kind: 'addition', addition, amount: amount.amount };
  if (other !== undefined && named?.isWhole !== true) return { kind: 'not-a-fat', what: other, ...weight };
  const [fat, ...others] = named?.keys ?? [];
  if (named !== undefined && fat !== undefined) {
    if (amount.found !== 'amount') return { kind: 'no-amount', fat, why: amount.found };
    const hasNumber = rest.some(({ kind }) => kind === 'number') && !named.hasNumber;
    const doubts = [
      ...(amount.doubt === undefined ? [] : [amount.doubt]),
      ...(hasNumber ? ['extra-number' as const] : []),
      ...(named.isWhole ? [] : ['part-of-name' as const]),
      ...(others.length > 0 ? ['other-fats' as const] : []),
    ];
    return { kind: 'fat', fat, amount: amount.amount, doubts, others };
  }
  const name = words.join(' ');
  if (amount.found !== 'amount' || name.length < 2) return { kind: 'not-understood' };
  return { kind: 'unknown-fat', name, amount: amount.amount, nearest: nearest(name) };
}

function wordOf(token: Token): string[] {
  if (token.kind === 'word') return [foldedWord(token.word)];
  return token.kind === 'number' && Number.isInteger(token.value) ? [String(token.value)] : [];
}

interface Named {
  readonly keys: readonly string[];
  /** false: the line holds words beside the name. */
  readonly isWhole: boolean;
  /** Whether a number of the line belongs to the name. */
  readonly hasNumber: boolean;
}

/**
 * The fat of a line: by all of its words, by all but its numbers, by all but those of quality, or by the longest name
 * that stands in it.
 * @param withShares also those numbers that are shares beside a weight: “stearic acid 95 % 20 g” names a grade
 */
function nameIn(words: readonly string[], withShares: readonly string[], names: FatNames): Named | undefined {
  const letters = words.filter((word) => !isNumber(word));
  for (const whole of [withShares, words, letters, withoutQualities(letters)]) {
    const keys = names.get(whole.join(' '));
    if (keys !== undefined) return { keys, isWhole: true, hasNumber: whole.some(isNumber) };
  }
  return longestWithin(letters, names);
}

function isNumber(word: string): boolean {
  return word >= '0' && word < ':';
}

function longestWithin(words: readonly string[], names: FatNames): Named | undefined {
  for (let length = Math.min(words.length, MOST_WORDS); length > 0; length -= 1) {
    const found = new Set<string>();
    for (let from = 0; from + length <= words.length; from += 1) {
      for (const key of names.get(words.slice(from, from + length).join(' ')) ?? []) found.add(key);
    }
    if (found.size > 0) return { keys: [...found], isWhole: false, hasNumber: false };
  }
  return undefined;
}

/** The fats in the sort of the first one, summed by fat; lines that do not fit are told so. */
function added(read: readonly ReadLine[]): { readonly fats: TextFat[]; readonly lines: ReadLine[] } {
  const fats = new Map<string, TextFat>();
  let isGrams: boolean | undefined;
  const lines = read.map((each): ReadLine => {
    const { outcome } = each;
    if (outcome.kind !== 'fat') return each;
    const { fat, amount } = outcome;
    isGrams ??= 'grams' in amount;
    if ('grams' in amount !== isGrams) return { ...each, outcome: { kind: 'other-sort', fat, amount } };
    const before = fats.get(fat);
    if (before === undefined && fats.size === MOST_FATS)
      return { ...each, outcome: { kind: 'too-many-fats' } };
    fats.set(fat, before === undefined ? { fat, ...amount } : { fat, ...sum(before, amount) });
    return each;
  });
  return { fats: [...fats.values()], lines };
}

function sum(a: TextAmount, b: TextAmount): TextAmount {
  if ('grams' in a && 'grams' in b) return { grams: a.grams + b.grams };
  return { percent: ('percent' in a ? a.percent : 0) + ('percent' in b ? b.percent : 0) };
}

/** The liquids, summed; beside fats in shares, and beyond as many as a recipe holds, they are told as not taken. */
function pouredOf(
  read: readonly ReadLine[],
  fats: readonly TextFat[],
): { readonly liquids: ReadRecipeText['liquids']; readonly lines: ReadLine[] } {
  const inGrams = fats.some((each) => 'grams' in each);
  const liquids = new Map<string, number>();
  const lines = read.map((each): ReadLine => {
    const { outcome } = each;
    if (outcome.kind !== 'liquid') return each;
    const { liquid, amount } = outcome;
    if (!inGrams || (!liquids.has(liquid) && liquids.size === MOST_LIQUIDS)) {
      return { ...each, outcome: { kind: 'not-a-fat', what: 'other', amount } };
    }
    liquids.set(liquid, (liquids.get(liquid) ?? 0) + amount.grams);
    return each;
  });
  return { liquids: [...liquids].map(([liquid, grams]) => ({ liquid, grams })), lines };
}

/** A recipe holds an addition of up to half of its fats. */
const MOST_ADDED_PERCENT = 50;

/** Additions as shares of the fats, summed; weights beside fats in shares, and more than a recipe holds, are told as not taken. */
function addedTo(
  read: readonly ReadLine[],
  fats: readonly TextFat[],
): { readonly additions: ReadRecipeText['additions']; readonly lines: ReadLine[] } {
  const fatsG = fats.reduce((all, each) => all + ('grams' in each ? each.grams : 0), 0);
  const shares = new Map<NamedAddition, number>();
  const lines = read.map((each): ReadLine => {
    const { outcome } = each;
    if (outcome.kind !== 'addition') return each;
    const { addition, amount } = outcome;
    const share = 'percent' in amount ? amount.percent : (100 * amount.grams) / fatsG;
    const percent = (shares.get(addition) ?? 0) + share;
    if (fats.length === 0 || !(percent <= MOST_ADDED_PERCENT))
      return { ...each, outcome: { kind: 'not-a-fat', what: 'other', amount } };
    shares.set(addition, percent);
    return each;
  });
  const rounded = (percent: number): number => Math.max(0.01, Math.round(100 * percent) / 100);
  return { additions: [...shares].map(([kind, percent]) => ({ kind, percent: rounded(percent) })), lines };
}

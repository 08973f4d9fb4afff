import type { Token } from './line-tokens.js';

/** What a line says of how much: grams, or a share of the fats. */
export type TextAmount = { readonly grams: number } | { readonly percent: number };

export type AmountFound =
  | { readonly found: 'amount'; readonly amount: TextAmount; readonly doubt?: AmountDoubt }
  | { readonly found: 'none' | 'no-unit' | 'by-volume' | 'out-of-range' };

/**
 * `thousands`: a number such as 1.250 was read as 1250, or as 1.25 where that is the likelier weight;
 * `two-amounts`: two weights that differ, of which the first counts; `extra-number`: a
 * number is left over, as of `1 250 g` or `500-600 g`.
 */
export type AmountDoubt = 'thousands' | 'two-amounts' | 'extra-number';

/** Exact by the international yard and pound agreement of 1959. */
const GRAMS_PER_POUND = 453.59237;
const MOST_GRAMS = 1_000_000;

const masses = new Map([
  ...['g', 'gr', 'gm', 'gram', 'grams', 'gramme', 'gramm'].map((word) => [word, 1] as const),
  ...['kg', 'kilo', 'kilos', 'kilogram', 'kilograms', 'kilogramm'].map((word) => [word, 1000] as const),
  ...['oz', 'ounce', 'ounces', 'unze', 'unzen'].map((word) => [word, GRAMS_PER_POUND / 16] as const),
  ...['lb', 'lbs', 'pound', 'pounds'].map((word) => [word, GRAMS_PER_POUND] as const),
  // The German pound is half a kilogram.
  ...['pfund', 'pfd'].map((word) => [word, 500] as const),
]);
const volumes = new Set([
  ...['ml', 'l', 'cl', 'dl', 'liter', 'litre', 'liters', 'litres', 'cup', 'cups', 'tasse', 'tassen', 'fl'],
  ...[
    'tbsp',
    'tsp',
    'tablespoon',
    'tablespoons',
    'teaspoon',
    'teaspoons',
    'el',
    'tl',
    'esslöffel',
    'teelöffel',
  ],
]);
const percents = new Set(['percent', 'prozent', 'pct']);

interface Measured {
  readonly value: number;
  /** Grams of its unit; 0 for a share. */
  readonly unitG: number;
  readonly doubt: boolean;
  /** Where its tokens begin and end. */
  readonly from: number;
  readonly to: number;
}

/**
 * The amount among the tokens of a line, and the tokens that are left, without and with the shares that are not the
 * amount (“stearic acid 95 %, 20 g”). A weight counts before a share, for a table may
 * show both; `1 lb 4 oz` and `1 kg 250 g` are one weight.
 */
export function amountOf(tokens: readonly Token[]): {
  readonly amount: AmountFound;
  readonly rest: Token[];
  readonly restWithShares: Token[];
} {
  const measured = tokens.flatMap((_, at) => measuredAt(tokens, at) ?? []);
  const weights = measured.filter(({ unitG }) => unitG > 0);
  const rest = without(tokens, measured);
  return {
    amount: chosen(measured, tokens, rest),
    rest,
    restWithShares: weights.length > 0 ? without(tokens, weights) : rest,
  };
}

function without(tokens: readonly Token[], measured: readonly Measured[]): Token[] {
  const used = new Set(
    measured.flatMap(({ from, to }) => Array.from({ length: to - from }, (_, i) => from + i)),
  );
  return tokens.filter((_, at) => !used.has(at));
}

function chosen(
  measured: readonly Measured[],
  tokens: readonly Token[],
  rest: readonly Token[],
): AmountFound {
  const [first, ...others] = joined(measured.filter(({ unitG }) => unitG > 0));
  if (first !== undefined) {
    const differs = others.some(({ grams }) => Math.abs(grams - first.grams) > 0.02 * first.grams);
    if (!(first.grams > 0 && first.grams <= MOST_GRAMS)) return { found: 'out-of-range' };
    const doubt = differs ? 'two-amounts' : first.doubt ? 'thousands' : undefined;
    return { found: 'amount', amount: { grams: first.grams }, ...(doubt !== undefined && { doubt }) };
  }
  const [share, ...more] = measured.filter(({ unitG }) => unitG === 0);
  if (share !== undefined) {
    if (!(share.value > 0 && share.value <= 100)) return { found: 'out-of-range' };
    const differs = more.some(({ value }) => value !== share.value);
    return {
      found: 'amount',
      amount: { percent: share.value },
      ...(differs && { doubt: 'two-amounts' as const }),
    };
  }
  if (!rest.some(({ kind }) => kind === 'number')) return { found: 'none' };
  return {
    found: tokens.some((token) => token.kind === 'word' && volumes.has(token.word)) ? 'by-volume' : 'no-unit',
  };
}

function measuredAt(tokens: readonly Token[], at: number): Measured | undefined {
  const [number, unit] = [tokens[at], tokens[at + 1]];
  if (number?.kind !== 'number' || unit === undefined) return undefined;
  const span = { from: at, to: at + 2, doubt: number.couldBeThousandfold };
  if (unit.kind === 'sign' ? unit.sign === '%' : unit.kind === 'word' && percents.has(unit.word)) {
    return { ...span, value: number.value, unitG: 0 };
  }
  const unitG = unit.kind === 'word' ? masses.get(unit.word) : undefined;
  if (unitG === undefined) return undefined;
  // Scales show whole grams: 1.250 g is more than a kilogram, 1.250 kg is not a ton.
  const value = unitG === 1 && number.couldBeThousandfold ? number.value * 1000 : number.value;
  return { ...span, value, unitG };
}

/** Weights in grams; a smaller unit right behind a greater one belongs to it. */
function joined(measured: readonly Measured[]): { readonly grams: number; readonly doubt: boolean }[] {
  const weights: { grams: number; doubt: boolean; unitG: number; to: number }[] = [];
  for (const { value, unitG, doubt, from, to } of measured) {
    const before = weights.at(-1);
    const grams = value * unitG;
    const belongs =
      before !== undefined && before.to === from && isBelow(unitG, before.unitG) && grams < before.unitG;
    if (belongs)
      weights[weights.length - 1] = { grams: before.grams + grams, doubt: before.doubt, unitG, to };
    else weights.push({ grams, doubt, unitG, to });
  }
  return weights;
}

/** Ounces under pounds, grams under kilograms. */
function isBelow(small: number, great: number): boolean {
  return (great === GRAMS_PER_POUND && small === GRAMS_PER_POUND / 16) || (great === 1000 && small === 1);
}

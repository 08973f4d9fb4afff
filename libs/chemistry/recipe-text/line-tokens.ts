/** A line in pieces: numbers, words in lower case, and the signs `%` and `/`; other signs only part the rest. */
export type Token =
  | { readonly kind: 'number'; readonly value: number; readonly couldBeThousandfold: boolean }
  | { readonly kind: 'word'; readonly word: string }
  | { readonly kind: 'sign'; readonly sign: '%' | '/' };

const fractions: Readonly<Record<string, number>> = {
  ...{
    '½': 1 / 2,
    '¼': 1 / 4,
    '¾': 3 / 4,
    '⅓': 1 / 3,
    '⅔': 2 / 3,
    '⅛': 1 / 8,
    '⅜': 3 / 8,
    '⅝': 5 / 8,
    '⅞': 7 / 8,
  },
};

/** As keyboards and programs write them: the percent sign of full width, the slash of fractions. */
const signs = new Map([
  ...(['%', '％'] as const).map((each) => [each, '%'] as const),
  ...(['/', '⁄'] as const).map((each) => [each, '/'] as const),
] as [string, '%' | '/'][]);

/**
 * Reads a line once from left to right, each character once. Numbers are whole, decimal with a point or a comma, with
 * thousands set off by the other of the two, or fractions (`1/2`, `2 ½`). One separator before exactly three digits
 * (`1.250`) may be either: it is read as a decimal and marked.
 */
export function tokensOf(line: string): Token[] {
  const characters = Array.from(line);
  const tokens: Token[] = [];
  let at = 0;
  const taken = (holds: (character: string) => boolean): string => {
    const from = at;
    while (at < characters.length && holds(characters[at] ?? '')) at += 1;
    return characters.slice(from, at).join('');
  };
  while (at < characters.length) {
    const character = characters[at] ?? '';
    if (isDigit(character)) {
      tokens.push(numberOf(taken((each) => isDigit(each) || each === '.' || each === ',')));
    } else if (Object.hasOwn(fractions, character)) {
      at += 1;
      tokens.push({ kind: 'number', value: fractions[character] ?? 0, couldBeThousandfold: false });
    } else if (isLetter(character)) {
      tokens.push({ kind: 'word', word: taken(isInWord).toLowerCase() });
    } else {
      at += 1;
      const sign = signs.get(character);
      if (sign !== undefined) tokens.push({ kind: 'sign', sign });
    }
  }
  return withFractions(tokens);
}

function isDigit(character: string): boolean {
  return character >= '0' && character <= '9';
}

function isLetter(character: string): boolean {
  return /^[\p{L}\p{M}]$/u.test(character);
}

function isInWord(character: string): boolean {
  return isLetter(character) || character === '’' || character === "'";
}

/** @param written digits, points and commas, beginning with a digit */
function numberOf(written: string): Token {
  // A point or comma at the end belongs to the sentence.
  const end = written.endsWith('.') || written.endsWith(',') ? written.replace(/[.,]+$/, '') : written;
  const groups = end.split(/[.,]/);
  const separators = Array.from(end).filter((each) => each === '.' || each === ',');
  const last = groups.at(-1) ?? '';
  const isAllThousands = separators.length > 1 && new Set(separators).size === 1;
  const value =
    separators.length === 0 || isAllThousands
      ? Number(groups.join(''))
      : Number(`${groups.slice(0, -1).join('')}.${last}`);
  const couldBeThousandfold =
    separators.length === 1 && last.length === 3 && (groups[0] ?? '').length <= 3 && !end.startsWith('0');
  return { kind: 'number', value, couldBeThousandfold };
}

/** `1/2` and `2 1/2` become one number each, and so do `2 ½` and `2½`. */
function withFractions(tokens: readonly Token[]): Token[] {
  const joined: Token[] = [];
  for (let i = 0; i < tokens.length; i += 1) {
    const [token, slash, below] = [tokens[i], tokens[i + 1], tokens[i + 2]];
    if (token === undefined) continue;
    const isFraction =
      token.kind === 'number' && slash?.kind === 'sign' && slash.sign === '/' && below?.kind === 'number';
    const part = isFraction && below.value > 0 ? token.value / below.value : undefined;
    if (isFraction) i += 2;
    const value = part ?? (token.kind === 'number' ? token.value : undefined);
    const before = joined.at(-1);
    if (value !== undefined && value < 1 && before?.kind === 'number' && Number.isInteger(before.value)) {
      joined[joined.length - 1] = { kind: 'number', value: before.value + value, couldBeThousandfold: false };
    } else if (part !== undefined) {
      joined.push({ kind: 'number', value: part, couldBeThousandfold: false });
    } else joined.push(token);
  }
  return joined;
}

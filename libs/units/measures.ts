/**
 * Units at the edge. Inside the code a mass is grams, a volume millilitres, a length millimetres, an area square
 * centimetres and a temperature degrees Celsius; ounces, inches and Fahrenheit exist only where a person reads or
 * writes them, and only here.
 */
import { failed, ok, type Issue, type Result } from './issue.js';
import { UnitError } from './quantities.js';
import { units, type Dimension, type Unit, type UnitSystem } from './unit-table.js';

export type { Dimension, Unit, UnitSystem } from './unit-table.js';

/**
 * Reads what a person wrote: one number and unit, or several of one system with the units getting smaller
 * (`1 lb 4 oz`). Numbers are whole, decimal with a point, or fractions (`2 1/2`, `2½`). A comma is refused, as it
 * divides thousands for some people and decimals for others.
 * @param text in any case, 60 characters at most: `8 oz`, `2 1/2 in`, `95 F`, `1.2 kg`
 * @returns the value in the unit inside the code, rounded to 1e-9 so that 3 in is 76.2 mm and not 76.19999999999999
 * Issues, with an empty path: `measure.unreadable`, `measure.wrong-dimension`
 */
export function parseMeasure(text: string, dimension: Dimension): Result<number> {
  const terms = text.length > LONGEST_TEXT ? undefined : termsOf(plain(text));
  if (terms === undefined) {
    return failed(unreadable(text, dimension));
  }
  const foreign = terms.find((term) => units[term.unit].dimension !== dimension);
  if (foreign !== undefined) {
    const accepted = { kind: 'measure', dimension } as const;
    return failed({
      code: 'measure.wrong-dimension',
      path: [],
      value: text,
      accepted,
      dimension,
      unit: foreign.unit,
    });
  }
  const sum = terms.reduce((before, term) => before + toBase(term.value, term.unit), 0);
  const value = Number(sum.toFixed(9));
  if (!Number.isFinite(value) || (dimension === 'temperature' && value < ABSOLUTE_ZERO_C)) {
    return failed(unreadable(text, dimension));
  }
  return ok(value);
}

/**
 * A value for people. Metric: one decimal, none from 100 on (temperatures keep theirs). US: two decimals, one for
 * Fahrenheit; pounds and ounces from 16 oz on. Parsing the text and showing it again gives the same text.
 * @param value in the unit inside the code, at most 1e12 either side of zero
 * @param digits decimals of the last unit shown, 0 to 6, instead of those above
 * @throws UnitError when the value is not finite or beyond that
 */
export function describeMeasure(
  value: number,
  dimension: Dimension,
  system: UnitSystem,
  digits?: number,
): string {
  if (!(Math.abs(value) <= LARGEST_SHOWN)) throw new UnitError(dimension, value, 'finite, 1e12 at most');
  const { unit, decimals, wholeFrom } = shownIn[dimension][system];
  const inUnit = fromBase(value, unit);
  const sized = Math.abs(inUnit);
  const figures = digits ?? (Number(sized.toFixed(decimals)) >= wholeFrom ? 0 : decimals);
  const text = unit === 'oz' ? poundsAndOunces(sized, figures) : `${sized.toFixed(figures)} ${unit}`;
  return inUnit < 0 && /[1-9]/.test(text) ? `-${text}` : text;
}

/** A number of some unit in the unit inside the code. */
export function toBase(value: number, unit: Unit): number {
  const { factor, zero } = units[unit];
  return (value - zero) * factor;
}

/** A number of the unit inside the code in another of its dimension. */
export function fromBase(value: number, unit: Unit): number {
  const { factor, zero } = units[unit];
  return value / factor + zero;
}

const ABSOLUTE_ZERO_C = -273.15;
const LONGEST_TEXT = 60;
const LARGEST_SHOWN = 1e12;

interface Shown {
  readonly unit: Unit;
  readonly decimals: number;
  readonly wholeFrom: number;
}

const usual = (unit: Unit): Shown => ({ unit, decimals: 1, wholeFrom: 100 });
const fixed = (unit: Unit, decimals: number): Shown => ({ unit, decimals, wholeFrom: Infinity });

const shownIn: Readonly<Record<Dimension, Readonly<Record<UnitSystem, Shown>>>> = {
  mass: { metric: usual('g'), us: fixed('oz', 2) },
  volume: { metric: usual('mL'), us: fixed('fl oz', 2) },
  length: { metric: usual('mm'), us: fixed('in', 2) },
  area: { metric: usual('cm²'), us: fixed('in²', 2) },
  temperature: { metric: fixed('°C', 1), us: fixed('°F', 1) },
};

interface Term {
  readonly value: number;
  readonly unit: Unit;
}

const bySpelling = new Map(
  (Object.keys(units) as Unit[]).flatMap((unit) => units[unit].spellings.map((written) => [written, unit])),
);
const longestFirst = [...bySpelling.keys()].sort((a, b) => b.length - a.length);
const NUMBER = String.raw`\d+ \d+/\d+|\d+/\d+|\d+(?:\.\d+)?|\.\d+`;
const UNIT = longestFirst.map((written) => written.replace('^', String.raw`\^`)).join('|');
const TERM = new RegExp(`(${NUMBER}) ?(${UNIT})(?![a-z²³^]) ?`, 'y');

/** @returns undefined unless the whole text is terms, all of one system, each unit smaller than the one before */
function termsOf(text: string): Term[] | undefined {
  const sign = text.startsWith('-') ? -1 : 1;
  const unsigned = sign < 0 ? text.slice(1).trimStart() : text;
  const terms: Term[] = [];
  for (let at = 0; at < unsigned.length; at = TERM.lastIndex) {
    TERM.lastIndex = at;
    const [, written = '', spelling = ''] = TERM.exec(unsigned) ?? [];
    const unit = bySpelling.get(spelling);
    if (unit === undefined || !follows(unit, terms.at(-1)?.unit)) return undefined;
    terms.push({ value: sign * numberOf(written), unit });
  }
  return terms.length === 0 ? undefined : terms;
}

function follows(unit: Unit, before: Unit | undefined): boolean {
  if (before === undefined) return true;
  const [next, last] = [units[unit], units[before]];
  if (next.dimension === 'temperature') return false;
  return next.dimension === last.dimension && next.system === last.system && next.factor < last.factor;
}

function numberOf(written: string): number {
  return written.split(' ').reduce((sum, piece) => {
    const [above, below] = piece.split('/');
    return sum + Number(above) / (below === undefined ? 1 : Number(below));
  }, 0);
}

/** One way of writing: lower case, single blanks, `/` in fractions, a plain minus, no dots after abbreviations. */
function plain(text: string): string {
  return text
    .replace(/[¼-¾⅐-⅞]/g, (fraction) => ` ${fraction.normalize('NFKC').replace('⁄', '/')}`)
    .toLowerCase()
    .replaceAll('−', '-')
    .replaceAll('º', '°')
    .replace(/([a-z])\./g, '$1')
    .replace(/\s+/g, ' ')
    .replaceAll('° ', '°')
    .trim();
}

function poundsAndOunces(ounces: number, digits: number): string {
  const scale = 10 ** digits;
  // Rounded before it is split, or 31.999 oz would read “1 lb 16.00 oz”.
  const steps = Math.round(ounces * scale);
  const pounds = Math.floor(steps / (16 * scale));
  const rest = `${((steps % (16 * scale)) / scale).toFixed(digits)} oz`;
  return pounds === 0 ? rest : `${String(pounds)} lb ${rest}`;
}

function unreadable(text: string, dimension: Dimension): Issue {
  const accepted = { kind: 'measure', dimension } as const;
  return { code: 'measure.unreadable', path: [], value: text, accepted, dimension };
}

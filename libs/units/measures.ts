/**
 * Units at the edge. Inside the code a mass is grams, a volume millilitres, a length millimetres, an area square
 * centimetres and a temperature degrees Celsius; ounces, inches and Fahrenheit exist only where a person reads or
 * writes them, and only here.
 */
import { failed, ok, type Issue, type Result } from './issue.js';
import { UnitError } from './quantities.js';

/** What is measured, with its unit inside the code: g, mL, mm, cm², °C. */
export type Dimension = 'mass' | 'volume' | 'length' | 'area' | 'temperature';
/** Which units a person asked for. */
export type UnitSystem = 'metric' | 'us';
/** A unit by its usual sign. `fl oz` is the US fluid ounce. */
export type Unit = keyof typeof units;

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
    return failed(
      issue('measure.unreadable', `“${shortened(text)}” is no number with a unit`, text, dimension),
    );
  }
  const foreign = terms.find((term) => units[term.unit].dimension !== dimension);
  if (foreign !== undefined) {
    const what = `“${foreign.unit}” in “${text}” is no unit of ${dimension}`;
    return failed(issue('measure.wrong-dimension', what, text, dimension));
  }
  const sum = terms.reduce((before, term) => before + toBase(term.value, term.unit), 0);
  const value = Number(sum.toFixed(9));
  if (!Number.isFinite(value) || (dimension === 'temperature' && value < ABSOLUTE_ZERO_C)) {
    return failed(issue('measure.unreadable', `“${text}” is no ${dimension} that can be`, text, dimension));
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
export function showMeasure(
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

interface UnitFacts {
  readonly dimension: Dimension;
  readonly system: UnitSystem;
  /** Size in the unit inside the code. */
  readonly factor: number;
  /** Where the scale stands when the one inside the code stands at 0. */
  readonly zero: number;
  /** How people write it, in lower case and without dots. */
  readonly spellings: readonly string[];
}

/** Exact by the international yard and pound agreement of 1959. */
const GRAMS_PER_POUND = 453.59237;
const MM_PER_INCH = 25.4;
/** Both follow from the inch. */
const CM2_PER_SQUARE_INCH = 6.4516;
const ML_PER_CUBIC_INCH = 16.387064;
/** A US gallon is 231 cubic inches and 128 fluid ounces (NIST Handbook 44, appendix C; from memory). */
const ML_PER_FLUID_OUNCE = (231 * ML_PER_CUBIC_INCH) / 128;

const ABSOLUTE_ZERO_C = -273.15;
const LONGEST_TEXT = 60;
const LARGEST_SHOWN = 1e12;

const units = {
  g: unitOf('mass', 'metric', 1, 'g gram grams'),
  kg: unitOf('mass', 'metric', 1000, 'kg kilogram kilograms'),
  oz: unitOf('mass', 'us', GRAMS_PER_POUND / 16, 'oz ounce ounces'),
  lb: unitOf('mass', 'us', GRAMS_PER_POUND, 'lb lbs pound pounds'),
  mL: unitOf('volume', 'metric', 1, 'ml millilitre millilitres milliliter milliliters cm³ cm3'),
  L: unitOf('volume', 'metric', 1000, 'l litre litres liter liters'),
  'fl oz': unitOf('volume', 'us', ML_PER_FLUID_OUNCE, 'fl_oz floz fluid_ounce fluid_ounces'),
  'in³': unitOf('volume', 'us', ML_PER_CUBIC_INCH, 'in³ in3 in^3 cu_in cubic_inch cubic_inches'),
  mm: unitOf('length', 'metric', 1, 'mm millimetre millimetres millimeter millimeters'),
  cm: unitOf('length', 'metric', 10, 'cm centimetre centimetres centimeter centimeters'),
  in: unitOf('length', 'us', MM_PER_INCH, 'in inch inches " ″'),
  'cm²': unitOf('area', 'metric', 1, 'cm² cm2 cm^2 sq_cm square_centimetres square_centimeters'),
  'in²': unitOf('area', 'us', CM2_PER_SQUARE_INCH, 'in² in2 in^2 sq_in square_inch square_inches'),
  '°C': unitOf('temperature', 'metric', 1, '°c c celsius'),
  '°F': unitOf('temperature', 'us', 5 / 9, '°f f fahrenheit', 32),
} as const satisfies Record<string, UnitFacts>;

function unitOf(
  dimension: Dimension,
  system: UnitSystem,
  factor: number,
  spellings: string,
  zero = 0,
): UnitFacts {
  const written = spellings.split(' ').map((spelling) => spelling.replace('_', ' '));
  return { dimension, system, factor, zero, spellings: written };
}

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

const accepted: Readonly<Record<Dimension, string>> = {
  mass: 'a text such as “8 oz”, “1 lb 4 oz” or “250 g”',
  volume: 'a text such as “8 fl oz”, “5 cu in” or “84 mL”',
  length: 'a text such as “2 1/2 in”, “64 mm” or “6.4 cm”',
  area: 'a text such as “4 sq in” or “26 cm²”',
  temperature: 'a text such as “95 °F” or “35 °C”',
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

function issue(code: string, what: string, value: string, dimension: Dimension): Issue {
  const wanted = accepted[dimension];
  return { code, path: [], message: `${what}; accepted: ${wanted}.`, value, accepted: wanted };
}

function shortened(text: string): string {
  return text.length > LONGEST_TEXT ? `${text.slice(0, LONGEST_TEXT)}…` : text;
}

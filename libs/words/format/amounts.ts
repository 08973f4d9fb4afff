import { fromBase, toBase, type Unit, type UnitSystem } from '#units';
import type { Language } from '../reader.js';

/** How amounts are written here. All take the unit that the code and the API use. */
export interface Amounts {
  readonly system: UnitSystem;
  /** Grams as `12.5 g` or `1 lb 4.25 oz`; less than a tenth of an ounce to its thousandth and further. */
  readonly mass: (grams: number) => string;
  /** Millilitres as `84 ml` or `2.84 fl oz`. */
  readonly volume: (millilitres: number) => string;
  /** Millimetres as `64 mm` or `2.5 in`. */
  readonly length: (millimetres: number) => string;
  /** Square millimetres as `25 mm²`, from 1 cm² on `84 cm²`, or `13.02 in²`. */
  readonly area: (squareMillimetres: number) => string;
  /** Degrees Celsius as `21.5 °C` or `70.7 °F`. */
  readonly temperature: (celsius: number) => string;
  /** A number of per cent, 5 as `5 %`; with at most one decimal if not told. */
  readonly percent: (percent: number, digits?: number) => string;
  /** A share or a probability, 0.05 as `5 %`. */
  readonly share: (share: number) => string;
  /** A sum of money. @param currency ISO 4217; absent: a bare number */
  readonly money: (amount: number, currency: string | undefined) => string;
  /** A bare number, with the separators of the language. */
  readonly number: (value: number, digits?: number) => string;
  /** For fields to type into: the unit's sign, and the way there and back. */
  readonly field: Readonly<Record<Measured, FieldUnit>>;
}

export type Measured = 'mass' | 'volume' | 'length' | 'temperature';

export interface FieldUnit {
  readonly sign: string;
  /** From the unit of the API to the number in the field, rounded as far as a person would type it. */
  readonly shown: (value: number) => number;
  /** From the number in the field to the unit of the API. */
  readonly meant: (typed: number) => number;
}

const made = new Map<string, Amounts>();

/** Amounts in a language and a system of units; made once for each pair, as formatters cost time. */
export function amountsIn(language: Language, system: UnitSystem): Amounts {
  const key = `${language} ${system}`;
  let amounts = made.get(key);
  if (amounts === undefined) made.set(key, (amounts = makeAmounts(language, system)));
  return amounts;
}

function makeAmounts(language: Language, system: UnitSystem): Amounts {
  // British English would say “US fl oz” to somebody who asked for just those.
  const english = system === 'us' ? 'en-US' : 'en-GB';
  const locale = language === 'de' ? 'de-DE' : english;
  const number = numbersIn(locale);
  const unit = (name: string): Write => {
    const write = number({ style: 'unit', unit: name, unitDisplay: 'short' });
    // English sets no blank before °C, as the SI would have it; German does.
    return (value, low, high) => write(value, low, high).replace(/(\d)°/, '$1 °');
  };
  const percent = number({ style: 'percent' });
  const share = (value: number, digits = 1): string => percent(value, 0, digits);
  const [gram, ml, mm, celsius] = [unit('gram'), unit('milliliter'), unit('millimeter'), unit('celsius')];
  const [pound, ounce, fluid, inch] = [unit('pound'), unit('ounce'), unit('fluid-ounce'), unit('inch')];
  const fahrenheit = unit('fahrenheit');
  const usual = (write: Write) => (value: number) => write(value, 0, decimalsFor(value));
  const plain = number({});
  const shared = {
    system,
    percent: (value: number, digits?: number) => share(value / 100, digits),
    share: (value: number) => share(value),
    number: (value: number, digits = 1) => plain(value, 0, digits),
    money: (amount: number, currency: string | undefined) =>
      (currency === undefined ? plain : number({ style: 'currency', currency }))(amount, 2, 2),
    field: fieldUnits(system),
  };
  if (system === 'metric') {
    return {
      ...shared,
      mass: usual(gram),
      volume: usual(ml),
      length: usual(mm),
      area: (value) => (value < 100 ? `${plain(value, 0, 1)} mm²` : `${plain(value / 100, 0, 1)} cm²`),
      temperature: (value) => celsius(value, 0, 1),
    };
  }
  return {
    ...shared,
    mass: (value) => poundsAndOunces(fromBase(value, 'oz'), pound, ounce),
    volume: (value) => fluid(fromBase(value, 'fl oz'), 0, 2),
    length: (value) => inch(fromBase(value, 'in'), 0, 2),
    area: (value) => `${plain(value / toBase(1, 'in') ** 2, 0, 2)} in²`,
    temperature: (value) => fahrenheit(fromBase(value, '°F'), 0, 1),
  };
}

/** Writes a number with at least and at most so many decimals. */
type Write = (value: number, least: number, most: number) => string;

function numbersIn(locale: string): (options: Intl.NumberFormatOptions) => Write {
  return (options) => {
    const formats = new Map<string, Intl.NumberFormat>();
    return (value, least, most) => {
      const key = `${String(least)} ${String(most)}`;
      let format = formats.get(key);
      if (format === undefined) {
        const digits = { minimumFractionDigits: least, maximumFractionDigits: most };
        formats.set(key, (format = new Intl.NumberFormat(locale, { ...options, ...digits })));
      }
      return format.format(value);
    };
  };
}

/** Kitchen scales show whole grams; small ones, for mica, hundredths. */
function decimalsFor(value: number): number {
  const size = Math.abs(value);
  return size < 1 ? 2 : size < 100 ? 1 : 0;
}

function poundsAndOunces(ounces: number, pound: Write, ounce: Write): string {
  // Rounded before it is split, or 31.999 oz would read “1 lb 16 oz”.
  const size = Math.abs(ounces);
  // A scale that shows a tenth of a gram shows 0.0035 oz, and “to 0 oz” would say nothing.
  if (size > 0 && size < 0.1) return ounce(ounces, 0, size < 0.01 ? 4 : 3).replace('-', '−');
  const hundredths = Math.round(size * 100);
  const pounds = Math.floor(hundredths / 1600);
  // Of a tenth of a gram nothing would be left.
  if (hundredths < 10) return `${ounces <= -0.0005 ? '−' : ''}${ounce(Math.abs(ounces), 0, 3)}`;
  const rest = ounce((hundredths % 1600) / 100, 0, 2);
  const sign = ounces < 0 && hundredths > 0 ? '−' : '';
  if (pounds === 0) return `${sign}${rest}`;
  return hundredths % 1600 === 0 ? `${sign}${pound(pounds, 0, 0)}` : `${sign}${pound(pounds, 0, 0)} ${rest}`;
}

function fieldUnits(system: UnitSystem): Amounts['field'] {
  const metric = system === 'metric';
  return {
    mass: fieldUnit(metric ? 'g' : 'oz', 2),
    volume: fieldUnit(metric ? 'mL' : 'fl oz', 2),
    length: fieldUnit(metric ? 'mm' : 'in', 2),
    temperature: fieldUnit(metric ? '°C' : '°F', 1),
  };
}

function fieldUnit(unit: Unit, decimals: number): FieldUnit {
  return {
    sign: unit === 'mL' ? 'ml' : unit,
    shown: (value) => Number(fromBase(value, unit).toFixed(decimals)),
    meant: (typed) => Number(toBase(typed, unit).toFixed(6)),
  };
}

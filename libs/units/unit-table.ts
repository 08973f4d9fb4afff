/** The units that people read and write, by their size in the unit inside the code. */

/** What is measured, with its unit inside the code: g, mL, mm, cm², °C. */
export type Dimension = 'mass' | 'volume' | 'length' | 'area' | 'temperature';
/** Which units a person asked for. */
export type UnitSystem = 'metric' | 'us';
/** A unit by its usual sign. `fl oz` is the US fluid ounce. */
export type Unit = keyof typeof units;

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

export const units = {
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

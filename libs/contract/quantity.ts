import { z } from 'zod';
import { parseMeasure, type Accepted, type Dimension } from '#units';
import { acceptedError } from './accepted-error.js';

/**
 * Inputs that are a number in the unit of the field, or a text with a unit such as “8 oz”. Whichever it was, what
 * comes out is the number, so that nothing behind the door meets any other unit.
 */
export type Quantity = z.ZodType<number, number | string>;

/** Grams, between two bounds, both included. */
export const grams = (low: number, high: number): Quantity => quantity('mass', 'g', 'grams', low, high);

/** Millilitres, between two bounds, both included. */
export const millilitres = (low: number, high: number): Quantity =>
  quantity('volume', 'mL', 'millilitres', low, high);

/** Millimetres, between two bounds, both included. */
export const millimetres = (low: number, high: number): Quantity =>
  quantity('length', 'mm', 'millimetres', low, high);

/** Square centimetres, between two bounds, both included. */
export const squareCentimetres = (low: number, high: number): Quantity =>
  quantity('area', 'cm²', 'square centimetres', low, high);

/** Degrees Celsius, between two bounds, both included. */
export const celsius = (low: number, high: number): Quantity =>
  quantity('temperature', '°C', 'degrees Celsius', low, high);

/** The texts shown as examples in what is accepted and in the schema's description. */
const example: Readonly<Record<Dimension, string>> = {
  mass: '8 oz',
  volume: '5 fl oz',
  length: '2 1/2 in',
  area: '4 sq in',
  temperature: '95 °F',
};

function quantity(
  dimension: Dimension,
  unit: 'g' | 'mL' | 'mm' | 'cm²' | '°C',
  inWords: string,
  low: number,
  high: number,
): Quantity {
  const accepted: Accepted = { kind: 'range', low, high, unit };
  const error = acceptedError(accepted);
  const within = z.number().min(low, error).max(high, error);
  const text = z
    .string()
    .max(60)
    .meta({ description: 'With its unit', examples: [example[dimension]] });
  return z
    .union([within, text], { error })
    .transform((input, context) => {
      if (typeof input === 'number') return input;
      const refuse = (wanted: Accepted): never => {
        const message = acceptedError(wanted);
        context.issues.push({ code: 'invalid_format', format: 'measure', input, message });
        return z.NEVER;
      };
      const read = parseMeasure(input, dimension);
      if (!read.ok) return refuse({ ...accepted, orMeasure: dimension });
      // Said here with its unit: the bounds of the bare number would not tell a person who wrote ounces.
      return read.value >= low && read.value <= high ? read.value : refuse(accepted);
    })
    .pipe(within)
    .meta({ description: `In ${inWords}` });
}

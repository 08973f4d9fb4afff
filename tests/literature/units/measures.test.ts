import fc from 'fast-check';
import { unit } from 'mathjs';
import { describe, expect, it } from 'vitest';
import { fromBase, parseMeasure, toBase, type Dimension, type Unit } from '#units';

fc.configureGlobal({ seed: 1 });

/** Oracle: the unit system of the mathematics library mathjs. */
const theirs: [ours: Unit, theirs: string, base: string, dimension: Dimension, written: string][] = [
  ['g', 'g', 'g', 'mass', 'g'],
  ['kg', 'kg', 'g', 'mass', 'kg'],
  ['oz', 'oz', 'g', 'mass', 'oz'],
  ['lb', 'lbm', 'g', 'mass', 'lb'],
  ['mL', 'mL', 'mL', 'volume', 'mL'],
  ['L', 'L', 'mL', 'volume', 'L'],
  ['fl oz', 'fluidounce', 'mL', 'volume', 'fl oz'],
  ['in³', 'cuin', 'mL', 'volume', 'cubic inches'],
  ['mm', 'mm', 'mm', 'length', 'mm'],
  ['cm', 'cm', 'mm', 'length', 'cm'],
  ['in', 'inch', 'mm', 'length', 'inches'],
  ['cm²', 'cm^2', 'cm^2', 'area', 'cm2'],
  ['in²', 'sqin', 'cm^2', 'area', 'sq in'],
  ['°C', 'degC', 'degC', 'temperature', 'C'],
  ['°F', 'degF', 'degF', 'temperature', 'F'],
];

describe.each(theirs)('%s', (ours, name, base, dimension, written) => {
  const inBase = dimension === 'temperature' ? 'degC' : base;
  const amount = fc.double({ min: 0.001, max: 100_000, noNaN: true });

  it('is as large as in a units library', () => {
    fc.assert(
      fc.property(amount, (value) => {
        const expected = unit(value, name).toNumber(inBase);
        expect(Math.abs(toBase(value, ours) - expected)).toBeLessThanOrEqual(1e-9 * (1 + Math.abs(expected)));
        const back = unit(value, inBase).toNumber(name);
        expect(Math.abs(fromBase(value, ours) - back)).toBeLessThanOrEqual(1e-9 * (1 + Math.abs(back)));
      }),
    );
  });

  it('is read as the same amount', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 99_999 }), fc.integer({ min: 0, max: 99 }), (whole, part) => {
        const text = `${String(whole)}.${String(part).padStart(2, '0')}`;
        const read = parseMeasure(`${text} ${written}`, dimension);
        const expected = unit(Number(text), name).toNumber(inBase);
        expect(read.ok && Math.abs(read.value - expected) <= 1e-9 * (1 + Math.abs(expected))).toBe(true);
      }),
    );
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseMeasure, describeMeasure, UnitError, type Dimension, type UnitSystem } from '#units';

fc.configureGlobal({ seed: 1 });

const dimensions: Dimension[] = ['mass', 'volume', 'length', 'area', 'temperature'];
const systems: UnitSystem[] = ['metric', 'us'];

function parsed(text: string, dimension: Dimension): number {
  const result = parseMeasure(text, dimension);
  if (!result.ok) throw new Error(`“${text}” was refused`);
  return result.value;
}

describe('parseMeasure', () => {
  // Worked from the definitions: 1 lb = 453.59237 g = 16 oz, 1 in = 25.4 mm, 231 cu in = 128 fl oz, C = (F - 32) · 5/9.
  it.each<[string, Dimension, number]>([
    ['8 oz', 'mass', 226.796185],
    ['1 lb 4 oz', 'mass', 566.9904625],
    ['1LB4OZ', 'mass', 566.9904625],
    ['1/2 lb', 'mass', 226.796185],
    ['250 g', 'mass', 250],
    ['1.2 kg', 'mass', 1200],
    ['1 kg 200 g', 'mass', 1200],
    ['30 mL', 'volume', 30],
    ['.5 L', 'volume', 500],
    ['1 fl. oz.', 'volume', 29.5735295625],
    ['2 cubic inches', 'volume', 32.774128],
    ['2 in³', 'volume', 32.774128],
    ['2.5 in', 'length', 63.5],
    ['2 1/2 in', 'length', 63.5],
    ['2½"', 'length', 63.5],
    ['6.4 cm', 'length', 64],
    ['4 sq in', 'area', 25.8064],
    ['26 cm2', 'area', 26],
    ['95 °F', 'temperature', 35],
    ['95 F', 'temperature', 35],
    ['−40 ° f', 'temperature', -40],
    ['-5 C', 'temperature', -5],
  ])('reads “%s” as %s', (text, dimension, value) => {
    expect(parsed(text, dimension)).toBeCloseTo(value, 9);
  });

  it.each<[string, Dimension, string]>([
    ['', 'mass', 'measure.unreadable'],
    ['250', 'mass', 'measure.unreadable'],
    ['oz', 'mass', 'measure.unreadable'],
    ['1,200 g', 'mass', 'measure.unreadable'],
    ['1e3 g', 'mass', 'measure.unreadable'],
    ['8 ozzz', 'mass', 'measure.unreadable'],
    ['4 oz 1 lb', 'mass', 'measure.unreadable'],
    ['1 lb 20 g', 'mass', 'measure.unreadable'],
    ['1/0 oz', 'mass', 'measure.unreadable'],
    ['95 F 2 F', 'temperature', 'measure.unreadable'],
    ['-500 F', 'temperature', 'measure.unreadable'],
    ['8 oz', 'volume', 'measure.wrong-dimension'],
    ['2 in', 'area', 'measure.wrong-dimension'],
    ['1'.repeat(70), 'mass', 'measure.unreadable'],
  ])('refuses “%s” as %s', (text, dimension, code) => {
    const result = parseMeasure(text, dimension);
    expect(result).toMatchObject({ ok: false, issues: [{ code, path: [], value: text }] });
  });

  it('names what was found and what is accepted', () => {
    const result = parseMeasure('8 stone', 'mass');
    expect(result).toMatchObject({
      issues: [{ value: '8 stone', dimension: 'mass', accepted: { kind: 'measure', dimension: 'mass' } }],
    });
  });

  it('answers whatever it is given', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme' }), fc.constantFrom(...dimensions), (text, dimension) => {
        const result = parseMeasure(text, dimension);
        expect(result.ok ? Number.isFinite(result.value) : result.issues.length === 1).toBe(true);
      }),
    );
  });
});

describe('describeMeasure', () => {
  it.each<[number, Dimension, UnitSystem, string]>([
    [99.94, 'mass', 'metric', '99.9 g'],
    [99.96, 'mass', 'metric', '100 g'],
    [1234.5, 'mass', 'metric', '1235 g'],
    [226.796185, 'mass', 'us', '8.00 oz'],
    [453.59237, 'mass', 'us', '1 lb 0.00 oz'],
    // 31.999 oz: rounded up to two pounds, not to “1 lb 16.00 oz”.
    [907.156, 'mass', 'us', '2 lb 0.00 oz'],
    [84, 'volume', 'metric', '84.0 mL'],
    [29.5735295625, 'volume', 'us', '1.00 fl oz'],
    [63.5, 'length', 'us', '2.50 in'],
    [25.8064, 'area', 'us', '4.00 in²'],
    [35, 'temperature', 'us', '95.0 °F'],
    [-0.04, 'temperature', 'metric', '0.0 °C'],
    [-5, 'temperature', 'metric', '-5.0 °C'],
  ])('shows %d of %s, %s, as “%s”', (value, dimension, system, text) => {
    expect(describeMeasure(value, dimension, system)).toBe(text);
  });

  it('takes another number of decimals', () => {
    expect(describeMeasure(38, 'temperature', 'us', 0)).toBe('100 °F');
    expect(describeMeasure(500, 'mass', 'us', 1)).toBe('1 lb 1.6 oz');
  });

  it.each([NaN, Infinity, 1e13])('refuses %d', (value) => {
    expect(() => describeMeasure(value, 'mass', 'us')).toThrow(UnitError);
  });
});

const anyValue = fc.double({ min: -270, max: 60_000, noNaN: true });

describe('there and back', () => {
  it('shows what was shown and read again as the same text', () => {
    fc.assert(
      fc.property(
        anyValue,
        fc.constantFrom(...dimensions),
        fc.constantFrom(...systems),
        fc.option(fc.integer({ min: 0, max: 6 }), { nil: undefined }),
        (value, dimension, system, digits) => {
          const text = describeMeasure(value, dimension, system, digits);
          expect(describeMeasure(parsed(text, dimension), dimension, system, digits)).toBe(text);
        },
      ),
      { numRuns: 3000 },
    );
  });

  // Half of the last digit shown, in the metric unit: 0.01 oz, 0.01 fl oz, 0.01 in, 0.01 sq in, 0.1 °F.
  it.each<[Dimension, number]>([
    ['mass', 0.01 * 28.349523125],
    ['volume', 0.01 * 29.5735295625],
    ['length', 0.01 * 25.4],
    ['area', 0.01 * 6.4516],
    ['temperature', 0.1 / 1.8],
  ])('by way of US units, %s errs by half a digit at most', (dimension, lastDigit) => {
    fc.assert(
      fc.property(anyValue, (value) => {
        const back = parsed(describeMeasure(value, dimension, 'us'), dimension);
        expect(Math.abs(back - value)).toBeLessThanOrEqual(lastDigit / 2 + 1e-9);
      }),
      { numRuns: 2000 },
    );
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import {
  celsius,
  grams,
  millilitres,
  millimetres,
  parseWith,
  squareCentimetres,
  type Quantity,
} from '#contract';

fc.configureGlobal({ seed: 1 });

const jar = z.strictObject({ massG: grams(1, 1000), capMm: millimetres(1, 100).optional() });

describe('a quantity', () => {
  // Worked from the definitions: 8 oz = 226.796185 g, 5 fl oz = 147.8676478125 mL, 2.5 in = 63.5 mm, 95 °F = 35 °C.
  it.each<[string, Quantity, string, number]>([
    ['grams', grams(0, 1000), '8 oz', 226.796185],
    ['millilitres', millilitres(0, 1000), '5 fl oz', 147.8676478125],
    ['millimetres', millimetres(0, 1000), '2 1/2 in', 63.5],
    ['square centimetres', squareCentimetres(0, 1000), '4 sq in', 25.8064],
    ['degrees Celsius', celsius(0, 100), '95 °F', 35],
  ])('of %s is a number or a text', (_, schema, text, value) => {
    const read = parseWith(schema, text);
    expect(read.ok && Math.abs(read.value - value) < 1e-9).toBe(true);
    expect(parseWith(schema, value)).toEqual({ ok: true, value });
  });

  it('comes out as it went in when it is read a second time', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 3500 }), (hundredths) => {
        const once = parseWith(jar, { massG: `${String(hundredths / 100)} oz` });
        expect(once.ok ? parseWith(jar, once.value) : once).toEqual(once);
      }),
    );
  });

  it.each<[unknown, string, object]>([
    ['8 stone', 'input.invalid-format', { orMeasure: 'mass' }],
    ['250', 'input.invalid-format', { orMeasure: 'mass' }],
    [true, 'input.invalid-union', {}],
    [undefined, 'input.missing', {}],
    [0.5, 'input.too-small', {}],
    [5000, 'input.too-big', {}],
    ['8 lb', 'input.invalid-format', {}],
    ['-1 oz', 'input.invalid-format', {}],
  ])('refuses %j and says what it takes', (massG, code, also) => {
    const accepted = { kind: 'range', low: 1, high: 1000, unit: 'g', ...also };
    const read = parseWith(jar, { massG });
    expect(read.ok ? [] : read.issues).toMatchObject([{ code, path: ['massG'], value: massG, accepted }]);
  });

  it('is described as a number when it is answered, and as a number or a text when it is sent', () => {
    const answered = z.toJSONSchema(jar, { io: 'output' }).properties?.massG;
    expect(answered).toMatchObject({ type: 'number', minimum: 1, maximum: 1000 });
    const sent = z.toJSONSchema(jar, { io: 'input' }).properties?.massG;
    expect(sent).toMatchObject({
      anyOf: [{ type: 'number', minimum: 1, maximum: 1000 }, { type: 'string' }],
    });
  });
});

import { describe, expect, it } from 'vitest';
import { mould, parseWith } from '#contract';

const plain = { key: 'hexagon', title: 'Hexagons', kind: 'silicone-cavity', cavities: 24 };

describe('mould', () => {
  it.each<[object, object]>([
    [{ cavityMl: 84 }, { cavityMl: 84 }],
    [{ cavityMl: '5 cu in' }, { cavityMl: 81.93532 }],
    [
      { waterFillG: '3 oz', waterC: '68 F' },
      { waterFillG: 85.048569375, waterC: 20 },
    ],
    [
      { shape: { form: 'cylinder', diameterMm: '3 in', heightMm: 25 } },
      { shape: { form: 'cylinder', diameterMm: 76.2, heightMm: 25 } },
    ],
    [
      { shape: { form: 'half-torus', outerDiameterMm: '9 cm', tubeDiameterMm: 26 } },
      { shape: { form: 'half-torus', outerDiameterMm: 90, tubeDiameterMm: 26 } },
    ],
    [
      { cavityMl: 84, wallMm: '1/4 in', shape: { form: 'cylinder', diameterMm: 60, heightMm: 30 } },
      { cavityMl: 84, wallMm: 6.35, shape: { form: 'cylinder', diameterMm: 60, heightMm: 30 } },
    ],
  ])('takes %o', (cavity, read) => {
    expect(parseWith(mould, { ...plain, ...cavity })).toEqual({ ok: true, value: { ...plain, ...read } });
  });

  it.each<[object, (string | number)[], object]>([
    [{}, ['cavityMl'], { code: 'input.missing', rule: 'cavity-stated-once' }],
    [
      { cavityMl: 84, waterFillG: 84 },
      ['waterFillG'],
      { code: 'input.custom', value: 84, rule: 'cavity-stated-once' },
    ],
    [{ cavityMl: 84, waterC: 20 }, ['waterC'], { rule: 'water-temperature-without-weight' }],
    [
      { waterFillG: 84, waterC: 60 },
      ['waterC'],
      { code: 'input.too-big', accepted: { kind: 'range', low: 0, high: 40, unit: '°C' } },
    ],
    [
      { cavityMl: '3 oz' },
      ['cavityMl'],
      { accepted: { kind: 'range', low: 0.1, high: 50_000, unit: 'mL', orMeasure: 'volume' } },
    ],
    [
      { shape: { form: 'star' } },
      ['shape', 'form'],
      { value: 'star', accepted: { kind: 'form', form: 'documented-form' } },
    ],
    [
      { shape: { form: 'hemisphere' } },
      ['shape', 'diameterMm'],
      { code: 'input.missing', accepted: { kind: 'range', low: 1, high: 2000, unit: 'mm' } },
    ],
  ])('refuses %o', (cavity, path, told) => {
    const read = parseWith(mould, { ...plain, ...cavity });
    expect(read.ok ? [] : read.issues).toMatchObject([{ path, ...told }]);
  });
});

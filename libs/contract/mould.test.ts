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
  ])('takes %o', (cavity, read) => {
    expect(parseWith(mould, { ...plain, ...cavity })).toEqual({ ok: true, value: { ...plain, ...read } });
  });

  it.each<[object, (string | number)[], string]>([
    [{}, ['cavityMl'], 'Found none to state the cavity; accepted: just one of cavityMl, waterFillG, shape.'],
    [
      { cavityMl: 84, waterFillG: 84 },
      ['waterFillG'],
      'Found cavityMl and waterFillG to state the cavity; accepted: just one of cavityMl, waterFillG, shape.',
    ],
    [
      { cavityMl: 84, waterC: 20 },
      ['waterC'],
      'Found a temperature of water without its weight; accepted: waterC together with waterFillG.',
    ],
    [{ waterFillG: 84, waterC: 60 }, ['waterC'], 'Found 60; accepted: at most 40.'],
    [
      { cavityMl: '3 oz' },
      ['cavityMl'],
      'Found "3 oz"; accepted: a number of millilitres, or a text such as “5 fl oz”.',
    ],
    [{ shape: { form: 'star' } }, ['shape', 'form'], 'Found "star"; accepted: a known form.'],
    [
      { shape: { form: 'hemisphere' } },
      ['shape', 'diameterMm'],
      'Found nothing; accepted: a number of millimetres, or a text such as “2 1/2 in”.',
    ],
  ])('refuses %o', (cavity, path, message) => {
    const read = parseWith(mould, { ...plain, ...cavity });
    expect(read.ok ? [] : read.issues).toMatchObject([{ path, message }]);
  });
});

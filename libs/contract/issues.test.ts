import { expect, it } from 'vitest';
import { parseWith } from './issues.js';
import { mould } from './mould.js';

const cups = { key: 'cups', title: 'Cups', kind: 'silicone-cavity', cavityMl: 80, cavities: 12 };
const unknown = (count: number) =>
  Object.fromEntries(Array.from({ length: count }, (_, i) => [`field${String(i)}`, i]));

it('tells the first hundred issues, and counts the rest', () => {
  const many = parseWith(mould, { ...cups, cavities: 'twelve', ...unknown(60_000) });
  if (many.ok) throw new Error('it was accepted');
  expect(many.issues).toHaveLength(100);
  // Those, and the cavities that are no number.
  expect(many.more).toBe(60_001 - 100);
  expect(many.issues[0]).toMatchObject({ code: 'input.invalid-type', path: ['cavities'], value: 'twelve' });
  expect(many.issues[99]).toMatchObject({ code: 'input.unknown-field', path: ['field98'], value: 98 });
});

it('leaves none out where there are few', () => {
  expect(parseWith(mould, { ...cups, ...unknown(3) })).toMatchObject({
    ...{ ok: false, more: 0 },
    issues: [{ path: ['field0'] }, { path: ['field1'] }, { path: ['field2'] }],
  });
});

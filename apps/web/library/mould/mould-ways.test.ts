import { expect, it } from 'vitest';
import * as contract from '#contract';
import { forms, measuresOf, mouldWay } from './mould-ways.js';

it.each(forms)('asks for just the measures that a %s has', (form) => {
  const told = Object.fromEntries(measuresOf(form).map((measure) => [measure, 20]));
  expect(contract.cavityShape.safeParse({ form, ...told }).error).toBeUndefined();
  const [first, ...fewer] = measuresOf(form);
  expect(first).toBeDefined();
  const less = Object.fromEntries(fewer.map((measure) => [measure, 20]));
  expect(contract.cavityShape.safeParse({ form, ...less }).success).toBe(false);
});

it('knows in which way a cavity is told', () => {
  expect(mouldWay({ waterC: 20 })).toBe('waterFillG');
  expect(mouldWay({ cavityMl: 84 })).toBe('cavityMl');
  // Chosen, but nothing typed yet.
  expect(mouldWay({ cavityMl: null })).toBe('cavityMl');
  expect(mouldWay({ shape: { form: 'box' } })).toBe('shape');
  // Beside a volume the measures only tell the form.
  expect(mouldWay({ shape: { form: 'box' }, cavityMl: 84 })).toBe('cavityMl');
  expect(mouldWay({ shape: { form: 'box' }, waterFillG: 84 })).toBe('waterFillG');
  expect(mouldWay({ shape: { form: 'box' }, waterC: 20 })).toBe('waterFillG');
  expect(measuresOf('star')).toEqual([]);
});

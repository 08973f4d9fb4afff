import { expect, it } from 'vitest';
import { z } from 'zod';
import { mould, readStored, recipe, runOrder } from '#contract';

const order = { key: 'one', title: 'One', design: 'tile', count: 3, startAfter: '2026-11-27T18:00' };

it('gives what was added since its default', () => {
  expect(readStored(runOrder, order)).toEqual({ ...order, certaintyPercent: 95 });
});

it('reads what is out of bounds that came later, with defaults all the same', () => {
  const early = { ...order, startAfter: '0001-01-01T00:00', count: 7000 };
  expect(runOrder.safeParse(early).success).toBe(false);
  expect(readStored(runOrder, early)).toEqual({ ...early, certaintyPercent: 95 });
  const hot = { key: 'hot', title: 'Hot', fats: [{ fat: 'olive', percent: 100 }], batterTemperatureC: 99 };
  expect(readStored(recipe, hot)).toMatchObject({ batterTemperatureC: 99, gel: 'auto' });
  const wide = { key: 'wide', title: 'Wide', kind: 'lined-wood', cavityMl: 60_000, cavities: 20_000 };
  expect(readStored(mould, wide)).toEqual(wide);
});

it('does not read what is of another kind', () => {
  expect(() => readStored(runOrder, { ...order, count: 'three' })).toThrow(z.ZodError);
  expect(() => readStored(runOrder, { ...order, startAfter: 'soon' })).toThrow(z.ZodError);
  expect(() => readStored(runOrder, { ...order, colour: 'red' })).toThrow(z.ZodError);
});

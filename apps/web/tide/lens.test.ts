import { expect, it } from 'vitest';
import { lensShape } from './lens.js';

it('is thin at both ends, full at its best, nearly full where it is sure', () => {
  const shape = lensShape({ opens: 0, surelyOpen: 10, best: 20, surelyUntil: 30, lastCall: 60 }, 100);
  expect(shape.map(({ at }) => at)).toEqual([0, 10, 20, 30, 60]);
  const [opens, sure, best, still, last] = shape.map(({ fullness }) => fullness);
  expect(best).toBe(1);
  expect(sure).toBe(still);
  expect(opens).toBe(last);
  expect(opens!).toBeLessThan(sure!);
  expect(sure!).toBeLessThan(best!);
});

it('leaves out certainty that cannot be had', () => {
  const never = lensShape({ opens: 50, surelyOpen: null, best: 50, surelyUntil: 20, lastCall: 90 }, 100);
  expect(never.map(({ at }) => at)).toEqual([50, 90]);
  expect(never[0]!.fullness).toBe(1);
});

it('is a lens of a day and a thread where it stays open for long', () => {
  const day = 24 * 3_600_000;
  const open = { opens: 0, surelyOpen: null, best: day, surelyUntil: null };
  for (const lastCall of [null, 9 * day]) {
    const shape = lensShape({ ...open, lastCall }, 9 * day);
    expect(shape.map(({ at }) => at / day)).toEqual([0, 1, 2, 9]);
    expect(shape[2]!.fullness).toBe(shape[3]!.fullness);
    expect(shape[3]!.fullness).toBeLessThan(shape[0]!.fullness);
  }
  expect(lensShape({ ...open, lastCall: 3 * day }, 9 * day).map(({ at }) => at / day)).toEqual([0, 1, 3]);
});

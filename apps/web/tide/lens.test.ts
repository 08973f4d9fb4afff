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

it('stays open where nothing closes it', () => {
  const open = lensShape({ opens: 0, surelyOpen: 5, best: 20, surelyUntil: null, lastCall: null }, 100);
  expect(open.at(-1)).toMatchObject({ at: 100 });
  expect(open.at(-1)!.fullness).toBeGreaterThan(open[0]!.fullness);
});

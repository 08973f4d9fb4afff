import fc from 'fast-check';
import { expect, it } from 'vitest';
import { shippedFats } from '#chemistry';
import { loadRunFile } from '../../../tests/support/run-files.js';
import { resolveRuns } from '../input/resolve-run.js';
import { clocksOf } from './forecast-clocks.js';

fc.configureGlobal({ seed: 1843 });

const file = loadRunFile('ok', 'two-layer');
/** Acids that are free, and waxes, thicken a batter by themselves: a per cent of them is felt. */
const gentle = shippedFats.filter(({ kind }) => kind === 'triglyceride').map(({ key }) => key);
const strong = shippedFats.filter(({ kind }) => kind !== 'triglyceride').map(({ key }) => key);

/** Likely times of the lower layer, of fats in shares. */
function times(fats: readonly { readonly fat: string; readonly percent: number }[]): Map<string, number> {
  const recipes = file.recipes.map((recipe) => ({ ...recipe, fats: [...fats] }));
  const [run] = resolveRuns({ ...file, recipes });
  const clocks = clocksOf(run!, file.workshop).get('under');
  return new Map([...(clocks ?? [])].map(([state, { medianMin }]) => [state, medianMin]));
}

/** The largest change of any clock when a per cent of one fat is traded for another. */
function largestChange(base: readonly string[], share: number, other: string): number {
  const [first = '', second = ''] = base;
  const mixed = (of: number) => [
    { fat: first, percent: share - of },
    { fat: second, percent: 100 - share - of },
    { fat: other, percent: 2 * of },
  ];
  const [before, after] = [times(mixed(5)), times(mixed(5.5))];
  return Math.max(...[...before].map(([state, min]) => Math.abs(Math.log((after.get(state) ?? NaN) / min))));
}

it('no clock has a cliff in any fat', () => {
  const pair = fc.uniqueArray(fc.constantFrom(...gentle), { minLength: 3, maxLength: 3 });
  fc.assert(
    fc.property(pair, fc.integer({ min: 10, max: 90 }), ([a = '', b = '', c = ''], share) => {
      expect(largestChange([a, b], share, c)).toBeLessThan(0.06);
    }),
    { numRuns: 150 },
  );
  fc.assert(
    fc.property(pair, fc.constantFrom(...strong), ([a = '', b = ''], other) => {
      expect(largestChange([a, b], 50, other)).toBeLessThan(0.25);
    }),
    { numRuns: 40 },
  );
});

/** Olive oil, the fat of the cliff that was: from coconut to olive per cent by per cent. */
it('olive soap takes longer to cure by every per cent, and never by a leap', () => {
  const cured = Array.from({ length: 99 }, (_, i) =>
    times([
      { fat: 'olive', percent: i + 1 },
      { fat: 'coconut', percent: 99 - i },
    ]).get('cured'),
  ) as number[];
  for (const [i, now] of cured.entries()) {
    const before = cured[i - 1] ?? now;
    expect(now / before).toBeGreaterThanOrEqual(1);
    expect(now / before).toBeLessThan(1.05);
  }
});

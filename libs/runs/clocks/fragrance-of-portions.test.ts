import { expect, it } from 'vitest';
import type { Recipe } from '#contract';
import { loadRunFile } from '../../../tests/support/run-files.js';
import { resolveRuns } from '../input/resolve-run.js';
import { clocksOf } from './forecast-clocks.js';

type Scent = Recipe['fragrances'][number];
type Behaviour = Scent['behaviour'];

const scent = (behaviour: Behaviour, percent = 3): Scent => ({
  ...{ key: behaviour, title: behaviour, kind: 'fragrance-oil', percent, behaviour },
  ...{ limitCategory: '9', vanillinPercent: 0, allergens: [] },
});

/** The likely minutes to thick trace of a layer that is poured in two portions with these fragrances. */
function untilThick(recipe: readonly Scent[], ...portions: readonly (readonly Scent[])[]): number {
  const file = loadRunFile('ok', 'two-layer');
  const designs = file.designs.map((design) => ({
    ...design,
    parts: design.parts.map((part) =>
      part.kind === 'batch'
        ? {
            ...part,
            colourants: [],
            portions: portions.map((fragrances, i) => ({
              ...{ key: `p${String(i)}`, title: 'P', sharePercent: 100 / portions.length },
              ...{ colourants: [], additions: [], fragrances: [...fragrances] },
            })),
          }
        : part,
    ),
  }));
  const recipes = file.recipes.map((each) => ({ ...each, fragrances: [...recipe] }));
  const [run] = resolveRuns({ ...file, designs, recipes });
  return clocksOf(run!, file.workshop).get('under')?.get('thick-trace')?.medianMin ?? NaN;
}

/** Common practice, no source: what is poured at once has to be poured while the quickest of it still flows. */
it('leaves as much time as the quickest portion does', () => {
  const still = untilThick([], [], []);
  const brisk = untilThick([scent('brisk')], [], []);
  expect(brisk).toBeLessThan(still);
  expect(untilThick([], [], [scent('brisk')])).toBeCloseTo(brisk, 9);
  expect(untilThick([], [scent('strong')], [scent('brisk')])).toBeLessThan(brisk);
});

it('is not slowed by a portion that is slow, while another is not', () => {
  const still = untilThick([], [], []);
  expect(untilThick([], [scent('slowing')], [])).toBeCloseTo(still, 9);
  expect(untilThick([], [scent('slowing')], [scent('slowing')])).toBeGreaterThan(still);
});

it('weighs what scents a portion against what scents all of the batter', () => {
  // 0.3 of 3.3 is little, so it counts as one class milder.
  const mild = untilThick([scent('none')], [], [scent('mild')]);
  expect(untilThick([scent('none')], [], [scent('brisk', 0.3)])).toBeCloseTo(mild, 9);
});

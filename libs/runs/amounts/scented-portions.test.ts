import { expect, it } from 'vitest';
import type { PartAmounts, Recipe, RunFile } from '#contract';
import { checkInput } from '#runs';
import { loadRunFile } from '../../../tests/support/run-files.js';
import { resolveRuns } from '../input/resolve-run.js';
import { materialsOf } from './materials-of.js';
import { sizeBatches } from './size-batches.js';

type Scent = Recipe['fragrances'][number];

const file = loadRunFile('ok', 'two-layer');

const scent = (percent: number, allergens: Scent['allergens'] = []): Scent => ({
  ...{ key: 'scent', title: 'Scent', kind: 'essential-oil', percent, behaviour: 'none' },
  ...{ limitCategory: '9', vanillinPercent: 0, supplierLimitPercent: 90, allergens },
});

/** The lower layer in two halves, of which the second is scented. */
function scented(recipe: Scent[], portion: Scent[]): RunFile {
  const own = { colourants: [], additions: [] };
  const portions = [
    { key: 'plain', title: 'Plain', sharePercent: 50, ...own, fragrances: [] },
    { key: 'scented', title: 'Scented', sharePercent: 50, ...own, fragrances: portion },
  ];
  return {
    ...file,
    recipes: file.recipes.map((each) => ({ ...each, fragrances: recipe })),
    designs: file.designs.map((design) => ({
      ...design,
      parts: design.parts.map((part) =>
        part.key === 'under' && part.kind === 'batch' ? { ...part, colourants: [], portions } : part,
      ),
    })),
  };
}

function underOf(input: RunFile): PartAmounts {
  const [run] = resolveRuns(input);
  const sized = sizeBatches(run!);
  if (!sized.ok) throw new Error(JSON.stringify(sized.issues));
  return sized.value.find(({ part }) => part === 'under')!;
}

it('allows what a recipe may hold, in each portion', () => {
  expect(checkInput(scented([scent(6)], [scent(4)]))).toEqual([]);
  expect(checkInput(scented([scent(7)], [scent(4)]))).toMatchObject([
    {
      code: 'recipe.fragrances-out-of-range',
      path: ['designs', 0, 'parts', 0, 'portions', 1, 'fragrances'],
      sum: 11,
    },
  ]);
});

it('knows the allergens of portions, and tells those of the recipe at the recipe', () => {
  const odd = [{ name: 'Nonsense', percent: 1 }];
  expect(checkInput(scented([scent(2)], [scent(2, odd)]))).toMatchObject([
    {
      code: 'recipe.unknown-allergen',
      path: ['designs', 0, 'parts', 0, 'portions', 1, 'fragrances', 0, 'allergens', 0, 'name'],
    },
  ]);
  expect(checkInput(scented([scent(2, odd)], [scent(2)])).map(({ path }) => path[0])).toEqual(['recipes']);
});

it('holds each portion to the limits of suppliers by what is in it alone', () => {
  const limit = (percent: number): Scent => ({ ...scent(percent), supplierLimitPercent: 3 });
  const codes = (input: RunFile): string[] => underOf(input).risks.map(({ code }) => code);
  // 3 % of the fats is less than 3 % of the soap; 6 % in half of the layer is as much of the layer, and too much there.
  expect(codes(scented([], [limit(3)]))).not.toContain('fragrance.over-limit');
  expect(codes(scented([], [limit(6)]))).toContain('fragrance.over-limit');
  // Each within its limit, together beyond them.
  expect(codes(scented([limit(2.5)], [{ ...limit(2.5), key: 'other', title: 'Other' }]))).toContain(
    'fragrance.over-together',
  );
});

it('names the allergens of a portion by what they are of the whole part, and gathers its fragrance as one', () => {
  const under = underOf(scented([], [scent(2, [{ name: 'Limonene', percent: 10 }])]));
  const [named] = under.batch!.allergens;
  const scentG = 0.5 * 0.02 * under.batch!.fatsG;
  expect(named?.name).toBe('Limonene');
  expect(under.batch!.fragrances.map(({ massG }) => massG)).toEqual([expect.closeTo(scentG, 6)]);
  // Soap that has lost its water weighs between its fats and its fats with their lye.
  expect(named!.percent).toBeLessThan((10 * scentG) / under.batch!.fatsG);
  expect(named!.percent).toBeGreaterThan((10 * scentG) / (1.25 * under.batch!.fatsG));
  expect(materialsOf([under])).toContainEqual(
    expect.objectContaining({
      kind: 'fragrance',
      title: 'Scent',
      amount: expect.closeTo(scentG, 6) as number,
    }),
  );
});

import { expect, it } from 'vitest';
import { recipe } from '#contract';
import { withAdditions } from './pasted-additions.js';

const clay = { key: 'honey', title: 'Pink clay', kind: 'clay', percent: 1 };

it('adds what a pasted text names, under a key of its own, or changes the share of what is there', () => {
  const added = withAdditions([clay], [{ kind: 'honey', percent: 2 }], { honey: 'Honig' });
  expect(added).toEqual([clay, { key: 'honey-2', title: 'Honig', kind: 'honey', percent: 2 }]);
  expect(withAdditions(added, [{ kind: 'honey', percent: 3 }], { honey: 'honey' })).toEqual([
    clay,
    { key: 'honey-2', title: 'Honig', kind: 'honey', percent: 3 },
  ]);
  const fats = [{ fat: 'olive', percent: 100 }];
  expect(recipe.safeParse({ key: 'bar', title: 'Bar', fats, additions: added }).success).toBe(true);
});

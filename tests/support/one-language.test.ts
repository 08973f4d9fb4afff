import { describe, expect, it } from 'vitest';
import { foreignIn, namesIn } from './one-language.js';

const german = { language: 'de', units: 'metric' } as const;
const english = { language: 'en', units: 'us' } as const;

describe('what is foreign in a text', () => {
  it.each([
    ['Nichts in cavities.', german, ['cavities: Nichts in cavities.']],
    ['Mindestens 3 oz abwiegen.', german, ['3 oz: Mindestens 3 oz abwiegen.']],
    ['Der Rand ist 2,5 in.', german, ['5 in: Der Rand ist 2,5 in.']],
    ['Weigh 900 g, at least.', english, ['0 g: Weigh 900 g, at least.']],
    ['It is 29 °C und warm.', english, ['und: It is 29 °C und warm.', '9 °C: It is 29 °C und warm.']],
    ['Weigh undefined.', english, ['undefined: Weigh undefined.']],
  ])('%s', (text, wanted, finds) => {
    expect(foreignIn(text, wanted)).toEqual(finds);
  });

  it('is nothing that the maker wrote, no odds and no figure of a supplier’s sheet', () => {
    expect(foreignIn('„Set it in with the others“ kommt danach.', german)).toEqual([]);
    expect(foreignIn('Sea air (demo) kommt danach.', german, ['Sea air (demo)'])).toEqual([]);
    expect(foreignIn('About 4 in 10, at 190 mg KOH/g.', english)).toEqual([]);
  });
});

it('finds the names in a document', () => {
  expect(namesIn({ runs: [{ title: 'Tiles', key: 'tiles', parts: [{ recipeTitle: 'Base' }] }] })).toEqual([
    'Tiles',
    'Base',
  ]);
});

import type { StandardFat } from './standard-fat.js';

/** What is not an ordinary fat: the hydroxy acid of castor oil, and waxes, which give no glycerol. */
export const castorAndWaxes: readonly StandardFat[] = [
  {
    key: 'castor',
    title: 'Castor oil',
    inci: 'Ricinus Communis Seed Oil',
    saponification: [176, 182],
    relativeDensity: { range: [0.957, 0.961], sampleC: 25, waterC: 25 },
    acids: {
      ricinoleic: [85, 92],
      'C16:0': [0, 2],
      'C18:0': [0, 2.5],
      'C18:1': [2.5, 6],
      'C18:2': [2.5, 7],
      'C18:3': [0, 1],
      'C20:1': [0, 1],
    },
    tags: ['castor'],
    source: 'USP 29, Castor Oil [S11]; saponification value and fatty acids recalled',
    evidence: 'from memory',
  },
  {
    // About half of it never saponifies, which is why the value is so low.
    key: 'beeswax',
    title: 'Beeswax',
    inci: 'Cera Alba',
    saponification: [87, 104],
    relativeDensity: { range: [0.96, 0.96], sampleC: 20, waterC: 20 },
    acids: {},
    tags: ['wax'],
    source: 'European Pharmacopoeia, Beeswax, white [S11]; density of the solid',
    evidence: 'published',
  },
  {
    key: 'jojoba',
    title: 'Jojoba oil',
    inci: 'Simmondsia Chinensis Seed Oil',
    saponification: [92.2, 92.2],
    relativeDensity: { range: [0.8642, 0.8642], sampleC: 25, waterC: 25 },
    acids: {},
    tags: ['wax'],
    source: 'Merck Index, Jojoba Oil [S13]',
    evidence: 'published',
  },
];

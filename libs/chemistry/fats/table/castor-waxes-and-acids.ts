import {
  beeswax,
  beeswaxMelt,
  candelillaWax,
  carnaubaWax,
  castorOil,
  castorOilRecalled,
  freeAcidStoichiometry,
  jojobaOil,
  jojobaWidth,
  stearicAcid,
  stearicAcidDensity,
  waxMelt,
  woolFat,
} from './sources.js';
import type { StandardFat } from './standard-fat.js';

/** What is no ordinary fat: the hydroxy acid of castor oil, waxes that give no glycerol, and free acid. */
export const castorWaxesAndAcids: readonly StandardFat[] = [
  {
    key: 'castor',
    title: 'Castor oil',
    inci: 'Ricinus Communis Seed Oil',
    saponification: [176, 182],
    iodine: [83, 88],
    unsaponifiable: [0, 0.8],
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
    behaviour:
      'Steadies the lather and speeds trace; above about a tenth of the fats the bar turns soft and sticky.',
    evidence: { figures: castorOilRecalled, density: castorOil },
  },
  {
    // About half of it never saponifies, which is why the value is so low.
    key: 'beeswax',
    title: 'Beeswax',
    inci: 'Cera Alba',
    kind: 'wax',
    saponification: [87, 104],
    relativeDensity: { range: [0.818, 0.827], sampleC: 98.5, waterC: 15 },
    acids: {},
    behaviour:
      'Hardens the bar and dulls the lather; one or two per cent is enough, and the batter has to stay above about 60 °C until it is mixed in.',
    evidence: { figures: beeswax, density: beeswaxMelt },
  },
  {
    key: 'jojoba',
    title: 'Jojoba oil',
    inci: 'Simmondsia Chinensis Seed Oil',
    kind: 'wax',
    // The one figure of the handbook, 92.2 and 81.7, with the width that lots are remembered to have.
    saponification: [88, 97],
    iodine: [78, 88],
    relativeDensity: { range: [0.8642, 0.8642], sampleC: 25, waterC: 25 },
    acids: {},
    tags: ['soft-wax'],
    behaviour:
      'A liquid wax: half of it stays in the bar as it is. A few per cent feels silky; more dulls the lather.',
    evidence: { figures: jojobaWidth, density: jojobaOil },
  },
  {
    key: 'candelilla-wax',
    title: 'Candelilla wax',
    inci: 'Euphorbia Cerifera Cera',
    kind: 'wax',
    saponification: [43, 65],
    relativeDensity: { range: [0.8, 0.86], sampleC: 98.5, waterC: 15 },
    acids: {},
    behaviour:
      'A hard plant wax in place of beeswax: one or two per cent. The batter has to stay above about 70 °C until it is mixed in.',
    evidence: { figures: candelillaWax, density: waxMelt },
  },
  {
    key: 'carnauba-wax',
    title: 'Carnauba wax',
    inci: 'Copernicia Cerifera Cera',
    kind: 'wax',
    saponification: [78, 95],
    relativeDensity: { range: [0.82, 0.86], sampleC: 98.5, waterC: 15 },
    acids: {},
    behaviour:
      'The hardest of the waxes, and it melts above about 80 °C: a per cent at most, melted with the hard fats first.',
    evidence: { figures: carnaubaWax, density: waxMelt },
  },
  {
    key: 'lanolin',
    title: 'Wool fat (lanolin)',
    inci: 'Lanolin',
    kind: 'wax',
    saponification: [90, 105],
    iodine: [18, 36],
    relativeDensity: { range: [0.932, 0.945], sampleC: 20, waterC: 20 },
    acids: {},
    tags: ['soft-wax'],
    behaviour:
      'A sticky wax: a per cent or two makes the bar creamy, more dulls the lather. Some people are allergic to it.',
    evidence: { figures: woolFat },
  },
  {
    // Most of what is sold as stearic acid is a mixture with palmitic acid; the limits are those of 60 and 40 % stearic.
    // The purer grade takes a twentieth less lye and is a fat of its own: `stearic-acid-95`.
    key: 'stearic-acid',
    title: 'Stearic acid (half palmitic)',
    inci: 'Stearic Acid',
    kind: 'fatty-acid',
    saponification: [205.8, 210.2],
    iodine: [0, 4],
    relativeDensity: { range: [0.847, 0.847], sampleC: 70, waterC: 4 },
    acids: { 'C16:0': [40, 60], 'C18:0': [40, 60] },
    behaviour:
      'Turns to soap the moment lye touches it, so the batter thickens at once and must be hot; a few per cent for hardness.',
    evidence: { figures: stearicAcid, saponification: freeAcidStoichiometry, density: stearicAcidDensity },
  },
];

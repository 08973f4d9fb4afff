import type { Evidence } from '#units';

/** Where the figures of the shipped fats come from; ids as in SOURCES.md. */

/** Read, or read in a copy of the table. */
const read = (source: string): Evidence => ({ kind: 'published', source });
const recalled = (source: string): Evidence => ({ kind: 'from memory', source });

const vegetableOils = 'CXS 210-1999 as amended to 2022, Tables 1 and 2 [S7]';
export const codexOils = read(vegetableOils);
export const codexOilsRecalled = recalled(vegetableOils);
export const codexOilsMainAcids = recalled(`${vegetableOils}; oleic and linoleic acid were read`);

export const oliveOils1989 = recalled('CXS 33-1981, the text of 1989 [S8]');
export const oliveAcids = recalled('CXS 33-1981, section 3.9 [S8]; all but C18:3, C22:0 and C24:0 were read');
export const codexAnimalFats = recalled('CXS 211-1999, Table 1 and appendix [S9]');
export const codexShea = read('CXS 325R-2017, Table 2 [S10]');
export const codexSheaRecalled = recalled('CXS 325R-2017 [S10]');
export const codexHazelnut = recalled('CXS 210-1999 as amended to 2019, Tables 1 and 2 [S7]');

export const cocoaButter = recalled('CXS 86-1981 and USP-NF, Cocoa Butter [S11]');
export const almondOil = read(
  'USP-NF and European Pharmacopoeia, Almond oil, as quoted on trade sheets [S11]',
);
export const castorOil = read('USP 29, Castor Oil [S11]');
export const castorOilRecalled = recalled('USP 29 and European Pharmacopoeia, Castor oil [S11]');
export const beeswax = read('European Pharmacopoeia, Beeswax, white [S11]');
export const beeswaxMelt = recalled(
  'Allen’s Commercial Organic Analysis [S23]: 0.822 at 98.5 °C, of the melt',
);
export const candelillaWax = read('USP 29, Candelilla Wax [S11]');
export const carnaubaWax = read('USP 32, Carnauba Wax [S11]');
export const waxMelt = recalled('handbooks [S23], of the melt; uncertain');
export const persicOil = recalled('USP-NF, Persic Oil [S11]');
export const mediumChain = recalled('European Pharmacopoeia, Triglycerides, medium-chain [S11]');
export const woolFat = recalled('European Pharmacopoeia, Wool fat [S11]; density from trade sheets');
export const stearicAcid = recalled('European Pharmacopoeia, Stearic acid, type 50 [S11]');
export const stearicAcidDensity = recalled('CRC Handbook [S6]: 0.847 g/mL for the pure acid at 70 °C');
export const freeAcidGrades = recalled('stoichiometry of the grades sold [S1, S2]');
export const oleicAcidGrade = recalled(
  'European Pharmacopoeia, Oleic acid, and its stoichiometry [S1, S2, S11]',
);
export const acidDensity = recalled('CRC Handbook [S6]');
export const rosin = recalled('handbooks [S23]; resin acids as abietic acid');
export const eveningPrimroseOil = recalled('European Pharmacopoeia, Evening primrose oil, refined [S11]');
export const borageOil = recalled('European Pharmacopoeia, Borage oil, refined [S11]');
export const wheatGermOil = recalled('European Pharmacopoeia, Wheat-germ oil, refined [S11]');
export const freeAcidStoichiometry = recalled('stoichiometry at 40 and 60% of stearic acid [S1, S2]');

export const avocadoOil = read('CAMEO, Museum of Fine Arts, Boston [S12]');
export const avocadoAcids = recalled('the Codex draft for avocado oil; uncertain');
export const jojobaOil = read('Merck Index, Jojoba Oil [S13]');
export const jojobaWidth = recalled('suppliers’ sheets around the Merck Index’s 92.2 and 81.7 [S13, S16]');
export const arganOil = recalled('the Moroccan standard NM 08.5.090 [S15]');
export const tradeSheets = recalled('suppliers’ sheets; there is no standard [S16]');

export const handbooks = recalled('handbooks of fats and oils; no standard gives these limits [S23]');

export const inciDictionary = recalled('the INCI dictionary');
export const inciPattern = recalled(
  'named as the INCI dictionary names soaps; whether it lists this one is not known',
);
export const expansionOfTriglycerides = read('Rodenbush et al. 1999, Eq. 1 [S5]');
export const borrowedExpansion = recalled(
  'the expansion of triglycerides [S5], borrowed: none was found for this fat',
);
export const practice: Evidence = { kind: 'common practice' };

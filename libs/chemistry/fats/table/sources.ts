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
export const beeswaxSolid = read('European Pharmacopoeia, Beeswax, white [S11]; of the solid');
export const persicOil = recalled('USP-NF, Persic Oil [S11]');
export const mediumChain = recalled('European Pharmacopoeia, Triglycerides, medium-chain [S11]');
export const woolFat = recalled('European Pharmacopoeia, Wool fat [S11]; density from trade sheets');
export const stearicAcid = recalled('European Pharmacopoeia, Stearic acid, type 50 [S11]');
export const stearicAcidDensity = recalled('CRC Handbook [S6]: 0.847 g/mL for the pure acid at 70 °C');
export const freeAcidStoichiometry = recalled('stoichiometry at 40 and 60% of stearic acid [S1, S2]');

export const avocadoOil = read('CAMEO, Museum of Fine Arts, Boston [S12]');
export const avocadoAcids = recalled('the Codex draft for avocado oil; uncertain');
export const jojobaOil = read('Merck Index, Jojoba Oil [S13]');
export const arganOil = recalled('the Moroccan standard NM 08.5.090 [S15]');
export const tradeSheets = recalled('suppliers’ sheets; there is no standard [S16]');

export const inciDictionary = recalled('the INCI dictionary');
export const expansionOfTriglycerides = read('Rodenbush et al. 1999, Eq. 1 [S5]');
export const borrowedExpansion = recalled(
  'the expansion of triglycerides [S5], borrowed: none was found for this fat',
);
export const practice: Evidence = { kind: 'common practice' };

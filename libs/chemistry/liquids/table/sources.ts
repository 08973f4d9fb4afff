import type { Evidence } from '#units';

/** Where the figures of liquids come from; ids as in SOURCES.md. */

/** Read in a copy of the table. @param number of the food in the database */
export const usda = (number: string): Evidence => ({
  kind: 'published',
  source: `USDA SR ${number} [S24]`,
});
/** Remembered, not read. @param number of the food in the database */
export const usdaRecalled = (number: string): Evidence => ({
  kind: 'from memory',
  source: `USDA SR ${number} [S24]`,
});
export const milkAcidity: Evidence = {
  kind: 'from memory',
  source: 'dairy handbooks: 0.13 to 0.18% as lactic acid for fresh milk',
};
export const goatMilkAcidity: Evidence = {
  kind: 'published',
  source: 'Fandialan and Davide 2001, 102 samples: 0.126 to 0.195% as lactic acid [S26]',
};
export const fermentedMilks: Evidence = {
  kind: 'from memory',
  source: 'CXS 243-2003: at least 0.3, yoghurt and kefir 0.6% as lactic acid [S27]',
};
export const vinegarAcidity: Evidence = {
  kind: 'published',
  source: 'USDA Standard Reference, footnote to vinegars: 5% acetic acid [S24]',
};
export const recalledAcidity: Evidence = {
  kind: 'from memory',
  source: 'handbooks of fruit juices and beverages; sorts differ',
};
export const recalledLabels: Evidence = { kind: 'from memory', source: 'labels of several makes' };
export const practiceOfSalt: Evidence = { kind: 'common practice' };
export const inci: Evidence = { kind: 'from memory', source: 'the INCI dictionary' };

import type { Names } from '../names.js';

const oils = 'CXS 210-1999 in der Fassung von 2022, Tabellen 1 und 2 [S7]';
const pharmacopoeia = 'Europäisches Arzneibuch';

/** Quellen, die nicht nur ein Titel sind, wie in den Tabellen von `libs/chemistry` und `libs/clocks`. */
export const sources: Names['sources'] = {
  'CXS 210-1999 as amended to 2022, Tables 1 and 2 [S7]': oils,
  'CXS 210-1999 as amended to 2022, Tables 1 and 2 [S7]; oleic and linoleic acid were read': `${oils}; Öl- und Linolsäure wurden nachgelesen`,
  'CXS 33-1981, the text of 1989 [S8]': 'CXS 33-1981, Text von 1989 [S8]',
  'CXS 33-1981, section 3.9 [S8]; all but C18:3, C22:0 and C24:0 were read':
    'CXS 33-1981, Abschnitt 3.9 [S8]; alle außer C18:3, C22:0 und C24:0 wurden nachgelesen',
  'CXS 211-1999, Table 1 and appendix [S9]': 'CXS 211-1999, Tabelle 1 und Anhang [S9]',
  'CXS 325R-2017, Table 2 [S10]': 'CXS 325R-2017, Tabelle 2 [S10]',
  'CXS 210-1999 as amended to 2019, Tables 1 and 2 [S7]':
    'CXS 210-1999 in der Fassung von 2019, Tabellen 1 und 2 [S7]',
  'CXS 86-1981 and USP-NF, Cocoa Butter [S11]': 'CXS 86-1981 und USP-NF, „Cocoa Butter“ [S11]',
  'USP-NF and European Pharmacopoeia, Almond oil, as quoted on trade sheets [S11]': `USP-NF und ${pharmacopoeia}, „Almond oil“, wie auf Datenblättern zitiert [S11]`,
  'USP 29, Castor Oil [S11]': 'USP 29, „Castor Oil“ [S11]',
  'USP 29 and European Pharmacopoeia, Castor oil [S11]': `USP 29 und ${pharmacopoeia}, „Castor oil“ [S11]`,
  'European Pharmacopoeia, Beeswax, white [S11]': `${pharmacopoeia}, „Beeswax, white“ [S11]`,
  'Allen’s Commercial Organic Analysis [S23]: 0.822 at 98.5 °C, of the melt':
    'Allen’s Commercial Organic Analysis [S23]: 0,822 bei 98,5 °C, der Schmelze',
  'USP 29, Candelilla Wax [S11]': 'USP 29, „Candelilla Wax“ [S11]',
  'USP 32, Carnauba Wax [S11]': 'USP 32, „Carnauba Wax“ [S11]',
  'handbooks [S23], of the melt; uncertain': 'Handbücher [S23], der Schmelze; unsicher',
  'suppliers’ sheets around the Merck Index’s 92.2 and 81.7 [S13, S16]':
    'Datenblätter von Lieferanten um die 92,2 und 81,7 des Merck Index [S13, S16]',
  'stoichiometry of the grades sold [S1, S2]': 'Stöchiometrie der gehandelten Qualitäten [S1, S2]',
  'European Pharmacopoeia, Oleic acid, and its stoichiometry [S1, S2, S11]': `${pharmacopoeia}, „Oleic acid“, und ihre Stöchiometrie [S1, S2, S11]`,
  'CRC Handbook [S6]': 'CRC Handbook [S6]',
  'handbooks [S23]; resin acids as abietic acid': 'Handbücher [S23]; Harzsäuren als Abietinsäure',
  'European Pharmacopoeia, Evening primrose oil, refined [S11]': `${pharmacopoeia}, „Evening primrose oil, refined“ [S11]`,
  'European Pharmacopoeia, Borage oil, refined [S11]': `${pharmacopoeia}, „Borage oil, refined“ [S11]`,
  'European Pharmacopoeia, Wheat-germ oil, refined [S11]': `${pharmacopoeia}, „Wheat-germ oil, refined“ [S11]`,
  'handbooks of fats and oils; no standard gives these limits [S23]':
    'Handbücher der Fette und Öle; keine Norm gibt diese Grenzen [S23]',
  'named as the INCI dictionary names soaps; whether it lists this one is not known':
    'gebildet, wie das INCI-Verzeichnis Seifen benennt; ob es diesen Namen führt, ist nicht bekannt',
  'USP-NF, Persic Oil [S11]': 'USP-NF, „Persic Oil“ [S11]',
  'European Pharmacopoeia, Triglycerides, medium-chain [S11]': `${pharmacopoeia}, „Triglycerides, medium-chain“ [S11]`,
  'European Pharmacopoeia, Wool fat [S11]; density from trade sheets': `${pharmacopoeia}, „Wool fat“ [S11]; Dichte von Datenblättern`,
  'European Pharmacopoeia, Stearic acid, type 50 [S11]': `${pharmacopoeia}, „Stearic acid, type 50“ [S11]`,
  'CRC Handbook [S6]: 0.847 g/mL for the pure acid at 70 °C':
    'CRC Handbook [S6]: 0,847 g/mL für die reine Säure bei 70 °C',
  'stoichiometry at 40 and 60% of stearic acid [S1, S2]':
    'Stöchiometrie bei 40 und 60 % Stearinsäure [S1, S2]',
  'CAMEO, Museum of Fine Arts, Boston [S12]': 'CAMEO, „Museum of Fine Arts“, Boston [S12]',
  'the Codex draft for avocado oil; uncertain': 'Entwurf des Codex für Avocadoöl; unsicher',
  'Merck Index, Jojoba Oil [S13]': 'Merck Index, „Jojoba Oil“ [S13]',
  'the Moroccan standard NM 08.5.090 [S15]': 'die marokkanische Norm NM 08.5.090 [S15]',
  'suppliers’ sheets; there is no standard [S16]':
    'Datenblätter von Lieferanten; eine Norm gibt es nicht [S16]',
  'the INCI dictionary': 'das INCI-Verzeichnis',
  'Rodenbush et al. 1999, Eq. 1 [S5]': 'Rodenbush u. a. 1999, Gl. 1 [S5]',
  'the expansion of triglycerides [S5], borrowed: none was found for this fat':
    'die Ausdehnung von Triglyceriden [S5], geborgt: Für dieses Fett fand sich keine',
  'the saponification and iodine values, by Lund’s relation [S5]':
    'die Verseifungs- und Iodzahl, nach der Beziehung von Lund [S5]',
  'activation energies of 42 to 60 kJ/mol for alkaline ester hydrolysis':
    'Aktivierungsenergien von 42 bis 60 kJ/mol für die alkalische Esterhydrolyse',
  'Newton’s law of cooling, poured at 55 °C and set at 40 °C':
    'Newtonsches Abkühlungsgesetz, bei 55 °C gegossen, bei 40 °C fest',
  'dairy handbooks: 0.13 to 0.18% as lactic acid for fresh milk':
    'Handbücher der Milchkunde: 0,13 bis 0,18 % als Milchsäure in frischer Milch',
  'Fandialan and Davide 2001, 102 samples: 0.126 to 0.195% as lactic acid [S26]':
    'Fandialan und Davide 2001, 102 Proben: 0,126 bis 0,195 % als Milchsäure [S26]',
  'CXS 243-2003: at least 0.3, yoghurt and kefir 0.6% as lactic acid [S27]':
    'CXS 243-2003: mindestens 0,3, Joghurt und Kefir 0,6 % als Milchsäure [S27]',
  'USDA Standard Reference, footnote to vinegars: 5% acetic acid [S24]':
    'USDA SR, Fußnote zu Essigen: 5 % Essigsäure [S24]',
  'handbooks of fruit juices and beverages; sorts differ':
    'Handbücher der Säfte und Getränke; die Sorten sind verschieden',
  'labels of several makes': 'Etiketten mehrerer Marken',
};

import type { BatchAmounts } from '../batter/batch-amounts.js';
import type { FatFacts } from '../fats/fat-facts.js';
import { molarMass } from '../fats/molar-mass.js';
import { acids } from '../lye/acids.js';
import { keptShare } from '../lye/alkali-demand.js';
import type { AcidName, BatterRecipe } from '../recipe/batter-recipe.js';
import type { LabelIngredient } from './label-ingredient.js';
import { acidG, NAMES, water } from './put-in.js';

/** The salts of the acids, without the alkali in front. INCI names recalled. */
const salts: Readonly<Record<AcidName, string>> = {
  'citric-acid': 'Citrate',
  'citric-acid-monohydrate': 'Citrate',
  'lactic-acid': 'Lactate',
  'acetic-acid': 'Acetate',
};

/** Alkali that reacts, and which: moles of all of it to grams of each. */
interface Alkali {
  readonly kohShare: number;
  readonly gPerMol: number;
}

/**
 * What fats, acids and lye turn into, before any water dries out.
 * - a glyceride:  fat + 3 MOH → 3 soap + glycerol
 * - a free acid:  acid + MOH → soap + water; so do the acids beside the fats, for each of their protons
 * - a wax keeps its name, with the alkali that it takes
 *
 * The superfat is left of each fat in the same proportion: which fat stays, nobody knows. What is left of the alkali, of a
 * superfat below 0 or taken by the acids of liquids, is listed as it was put in.
 */
export function saponified(
  recipe: BatterRecipe,
  fats: ReadonlyMap<string, FatFacts>,
  batch: BatchAmounts,
): LabelIngredient[] {
  const kohShare = (recipe.kohSharePercent ?? 0) / 100;
  const alkali = { kohShare, gPerMol: (1 - kohShare) * molarMass.naoh + kohShare * molarMass.koh };
  const kept = Math.min(1, keptShare(recipe));
  const made = batch.fats.map((fat) => ofFat(fat, fats.get(fat.fat), kept, alkali));
  const ofAcids = batch.acids.map(({ key, massG }, i) =>
    ofAcid(key as AcidName, acidG(recipe, i, massG), alkali),
  );
  const all = [...made, ...ofAcids];
  const taken = all.reduce((sum, { mol }) => sum + mol, 0);
  const left = Math.max(0, (batch.pureNaohG + batch.pureKohG) / alkali.gPerMol - taken);
  const acidWaterG = batch.acids.reduce((sum, { massG }, i) => sum + massG - acidG(recipe, i, massG), 0);
  return [
    ...all.flatMap(({ list }) => list),
    { ...NAMES.naoh, massG: left * (1 - kohShare) * molarMass.naoh },
    { ...NAMES.koh, massG: left * kohShare * molarMass.koh },
    // What else the flakes hold counts as water, as it does in the concentration.
    water(batch.lyeG - batch.pureNaohG - batch.pureKohG + acidWaterG),
  ];
}

/** Alkali that something takes, mol, and what becomes of it. */
interface Reacted {
  readonly mol: number;
  readonly list: LabelIngredient[];
}

function ofFat(
  { fat, title, massG, inci, soapInci }: BatchAmounts['fats'][number],
  facts: FatFacts | undefined,
  kept: number,
  alkali: Alkali,
): Reacted {
  const name = { key: fat, title, ...(inci !== undefined && { inci }) };
  const reactedG = massG * kept;
  const mol = (reactedG * (facts?.saponificationMgKohPerG.used ?? 0)) / 1000 / molarMass.koh;
  if (facts?.kind === 'wax') return { mol, list: [{ ...name, massG: massG + mol * alkali.gPerMol }] };
  const glycerolG = facts?.kind === 'fatty-acid' ? 0 : (mol / 3) * molarMass.glycerol;
  const waterG = facts?.kind === 'fatty-acid' ? mol * molarMass.water : 0;
  // What the alkali is put onto: the fat without what the reaction sets free.
  const restG = reactedG - glycerolG - waterG;
  const soaps = eachAlkali(mol, restG, alkali).map(({ massG: soapG, metal }) => {
    const soap = soapInci?.find((each) => each.startsWith(metal)) ?? soapInci?.[0];
    return { ...name, ...(soap === undefined ? {} : { inci: soap }), massG: soapG };
  });
  return {
    mol,
    list: [
      ...soaps,
      { ...NAMES.glycerol, massG: glycerolG },
      water(waterG),
      { ...name, massG: massG - reactedG },
    ],
  };
}

function ofAcid(key: AcidName, massG: number, alkali: Alkali): Reacted {
  const { molarMass: ofOne, protons, title } = acids[key];
  const mol = (massG * protons) / ofOne;
  const waterG = mol * molarMass.water;
  const made = eachAlkali(mol, massG - waterG, alkali);
  return {
    mol,
    list: [
      ...made.map(({ massG: saltG, metal }) => ({
        key,
        title,
        inci: `${metal} ${salts[key]}`,
        massG: saltG,
      })),
      water(waterG),
    ],
  };
}

/** Moles of alkali put onto a mass of acids, apart for sodium and potassium. */
function eachAlkali(
  mol: number,
  restG: number,
  { kohShare }: Alkali,
): { readonly metal: 'Sodium' | 'Potassium'; readonly massG: number }[] {
  return [
    { metal: 'Sodium', massG: (1 - kohShare) * (restG + mol * molarMass.naoh) },
    { metal: 'Potassium', massG: kohShare * (restG + mol * molarMass.koh) },
  ];
}

import type { LiquidFacts } from '../liquid-facts.js';
import { fermentedMilks, goatMilkAcidity, inci, milkAcidity, usda, usdaRecalled } from './sources.js';

/** Milk has no free lactic acid while it is fresh; its proteins and phosphates take as much alkali as that much of it. */
const milk = { kind: 'milk', fat: 'milk-fat', allergens: ['milk'] } as const;

export const milks: readonly LiquidFacts[] = [
  {
    ...milk,
    key: 'cow-milk',
    title: 'Cow’s milk, whole',
    aliases: ['milk', 'whole milk', 'cow milk', 'Kuhmilch', 'Milch', 'Vollmilch'],
    figures: {
      ...{ waterG: 88.13, fatG: 3.25, sugarG: 5.05, proteinG: 3.15, saltG: 0 },
      acid: { acid: 'lactic-acid', grams: 0.16 },
    },
    ranges: { waterG: [87.3, 88.1], fatG: [3, 4.5], sugarG: [4.5, 5.1], acidG: [0.13, 0.18] },
    inci: 'Lac',
    evidence: { figures: usdaRecalled('01077'), acid: milkAcidity, inci },
  },
  {
    ...milk,
    key: 'skimmed-milk',
    title: 'Cow’s milk, skimmed',
    aliases: ['skim milk', 'nonfat milk', 'fat free milk', 'skimmed milk', 'Magermilch', 'entrahmte Milch'],
    figures: {
      ...{ waterG: 90.84, fatG: 0.08, sugarG: 5.09, proteinG: 3.37, saltG: 0 },
      acid: { acid: 'lactic-acid', grams: 0.16 },
    },
    ranges: { fatG: [0.05, 0.5], acidG: [0.13, 0.18] },
    inci: 'Lac',
    evidence: { figures: usda('01085'), acid: milkAcidity, inci },
  },
  {
    ...milk,
    key: 'goat-milk',
    title: 'Goat’s milk',
    aliases: ['goat milk', 'goats milk', 'Ziegenmilch', 'Geißenmilch'],
    figures: {
      ...{ waterG: 87.03, fatG: 4.14, sugarG: 4.45, proteinG: 3.56, saltG: 0 },
      acid: { acid: 'lactic-acid', grams: 0.16 },
    },
    ranges: { waterG: [86.4, 89], fatG: [3.3, 4.5], sugarG: [4.2, 4.5], acidG: [0.126, 0.195] },
    inci: 'Caprae Lac',
    evidence: { figures: usda('01106'), acid: goatMilkAcidity, inci },
  },
  {
    ...milk,
    key: 'sheep-milk',
    title: 'Sheep’s milk',
    aliases: ['sheep milk', 'ewe milk', 'ewes milk', 'Schafmilch', 'Schafsmilch'],
    figures: {
      ...{ waterG: 80.7, fatG: 7, sugarG: 5.36, proteinG: 5.98, saltG: 0 },
      acid: { acid: 'lactic-acid', grams: 0.2 },
    },
    ranges: { waterG: [80.7, 83], fatG: [5.8, 7], sugarG: [4.5, 5.4], acidG: [0.16, 0.25] },
    inci: 'Sheep Milk',
    evidence: { figures: usda('01109'), acid: milkAcidity, inci },
  },
  {
    ...milk,
    key: 'buttermilk',
    title: 'Buttermilk',
    aliases: ['butter milk', 'Buttermilch'],
    figures: {
      ...{ waterG: 90.13, fatG: 0.88, sugarG: 4, proteinG: 3.31, saltG: 0 },
      acid: { acid: 'lactic-acid', grams: 0.8 },
    },
    ranges: { fatG: [0.3, 1], acidG: [0.5, 0.9] },
    inci: 'Buttermilk',
    evidence: { figures: usda('01088'), acid: fermentedMilks, inci },
  },
  {
    ...milk,
    key: 'yoghurt',
    title: 'Yoghurt or kefir, plain',
    aliases: ['yogurt', 'joghurt', 'jogurt', 'kefir', 'Naturjoghurt', 'plain yogurt'],
    figures: {
      ...{ waterG: 87.9, fatG: 3.25, sugarG: 3.7, proteinG: 3.47, saltG: 0 },
      acid: { acid: 'lactic-acid', grams: 0.95 },
    },
    ranges: { fatG: [1.5, 3.8], acidG: [0.6, 1.3] },
    inci: 'Yogurt',
    evidence: { figures: usda('01116'), acid: fermentedMilks, inci },
  },
  {
    ...milk,
    key: 'cream',
    title: 'Cream, for whipping',
    aliases: ['heavy cream', 'whipping cream', 'double cream', 'Sahne', 'Schlagsahne', 'Schlagobers', 'Rahm'],
    figures: {
      ...{ waterG: 57.71, fatG: 37, sugarG: 2.79, proteinG: 2.05, saltG: 0 },
      acid: { acid: 'lactic-acid', grams: 0.1 },
    },
    ranges: { waterG: [57, 64], fatG: [30, 38], acidG: [0.08, 0.15] },
    inci: 'Cream',
    evidence: { figures: { ...usda('01053'), kind: 'from memory' }, acid: milkAcidity, inci },
  },
];

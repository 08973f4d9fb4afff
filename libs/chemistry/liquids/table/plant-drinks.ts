import type { LiquidFacts } from '../liquid-facts.js';
import { inci, recalledLabels, usdaRecalled } from './sources.js';

/** Drinks of plants, unsweetened; none is sour enough to count. Makes differ more than these figures tell: read the label. */
export const plantDrinks: readonly LiquidFacts[] = [
  {
    key: 'coconut-milk',
    title: 'Coconut milk, canned',
    aliases: ['Kokosmilch', 'canned coconut milk', 'Kokosnussmilch'],
    kind: 'plant-drink',
    figures: { waterG: 72.88, fatG: 21.33, sugarG: 2.8, proteinG: 2.02, saltG: 0 },
    ranges: { waterG: [67, 80], fatG: [15, 24], sugarG: [1.5, 3.5] },
    fat: 'coconut',
    allergens: [],
    inci: 'Cocos Nucifera Fruit Extract',
    evidence: { figures: usdaRecalled('12118'), acid: recalledLabels, inci },
  },
  {
    key: 'oat-drink',
    title: 'Oat drink',
    aliases: ['oat milk', 'Haferdrink', 'Hafermilch'],
    kind: 'plant-drink',
    figures: { waterG: 90, fatG: 1.2, sugarG: 4.1, proteinG: 1, saltG: 0.1 },
    ranges: { waterG: [86, 92], fatG: [0.5, 3], sugarG: [0, 6] },
    allergens: ['gluten'],
    inci: 'Avena Sativa Kernel Extract',
    evidence: { figures: recalledLabels, acid: recalledLabels, inci },
  },
  {
    key: 'almond-drink',
    title: 'Almond drink, unsweetened',
    aliases: ['almond milk', 'Mandeldrink', 'Mandelmilch'],
    kind: 'plant-drink',
    figures: { waterG: 96.5, fatG: 1.1, sugarG: 0.1, proteinG: 0.5, saltG: 0.1 },
    ranges: { waterG: [93, 97.5], fatG: [0.9, 3.5], sugarG: [0, 3] },
    fat: 'sweet-almond',
    allergens: ['nuts'],
    inci: 'Prunus Amygdalus Dulcis Seed Extract',
    evidence: { figures: usdaRecalled('14091'), acid: recalledLabels, inci },
  },
  {
    key: 'rice-drink',
    title: 'Rice drink, unsweetened',
    aliases: ['rice milk', 'Reisdrink', 'Reismilch'],
    kind: 'plant-drink',
    figures: { waterG: 89.28, fatG: 0.97, sugarG: 5.28, proteinG: 0.28, saltG: 0.1 },
    ranges: { waterG: [86, 91], fatG: [0.8, 1.2], sugarG: [3, 8] },
    fat: 'rice-bran',
    allergens: [],
    inci: 'Oryza Sativa Extract',
    evidence: { figures: usdaRecalled('14639'), acid: recalledLabels, inci },
  },
];

import type { LiquidFacts } from '../liquid-facts.js';
import { inci, practiceOfSalt, recalledAcidity, usdaRecalled, vinegarAcidity } from './sources.js';

/**
 * Beer and wine are told as they go into lye: boiled, and made up with water to what they weighed, so that what boils off of
 * the alcohol counts as water. Half an hour of simmering leaves a third of it (USDA Table of Nutrient Retention Factors, release 6; from memory): of 3.9 g in
 * 100 g of beer, and of 10.4 g in wine.
 */
export const drinks: readonly LiquidFacts[] = [
  {
    key: 'beer',
    title: 'Beer, boiled flat',
    aliases: ['Bier', 'ale', 'stout', 'lager', 'flat beer'],
    kind: 'alcohol',
    figures: {
      ...{ waterG: 94.6, fatG: 0, sugarG: 1, proteinG: 0.46, saltG: 0, alcoholG: 1.3 },
      acid: { acid: 'lactic-acid', grams: 0.18 },
    },
    ranges: { waterG: [93, 97], sugarG: [0.5, 4], acidG: [0.1, 0.3] },
    allergens: ['gluten'],
    inci: 'Beer',
    evidence: { figures: usdaRecalled('14003'), acid: recalledAcidity, inci },
  },
  {
    key: 'wine',
    title: 'Wine, boiled',
    aliases: ['Wein', 'red wine', 'white wine', 'Rotwein', 'Weißwein', 'Sekt', 'champagne'],
    kind: 'alcohol',
    figures: {
      ...{ waterG: 93.6, fatG: 0, sugarG: 0.62, proteinG: 0.07, saltG: 0, alcoholG: 3.5 },
      acid: { acid: 'tartaric-acid', grams: 0.6 },
    },
    ranges: { waterG: [90, 98], sugarG: [0.1, 8], acidG: [0.4, 0.9] },
    allergens: [],
    inci: 'Wine',
    evidence: { figures: usdaRecalled('14096'), acid: recalledAcidity, inci },
  },
  {
    key: 'coffee',
    title: 'Coffee, brewed',
    aliases: ['Kaffee', 'brewed coffee', 'espresso'],
    kind: 'infusion',
    figures: { waterG: 99.39, fatG: 0.02, sugarG: 0, proteinG: 0.12, saltG: 0 },
    ranges: { waterG: [97.5, 99.5] },
    allergens: [],
    inci: 'Coffea Arabica Seed Extract',
    evidence: { figures: usdaRecalled('14209'), acid: recalledAcidity, inci },
  },
  {
    key: 'tea',
    title: 'Tea or herbal infusion',
    aliases: [
      'Tee',
      'Kräutertee',
      'herbal tea',
      'green tea',
      'black tea',
      'infusion',
      'chamomile tea',
      'Kamillentee',
    ],
    kind: 'infusion',
    figures: { waterG: 99.7, fatG: 0, sugarG: 0, proteinG: 0, saltG: 0 },
    ranges: { waterG: [99, 99.8] },
    allergens: [],
    inci: 'Camellia Sinensis Leaf Extract',
    evidence: { figures: usdaRecalled('14355'), acid: recalledAcidity, inci },
  },
  {
    key: 'cider-vinegar',
    title: 'Apple-cider vinegar',
    aliases: ['apple cider vinegar', 'ACV', 'Apfelessig', 'vinegar', 'Essig'],
    kind: 'acid',
    figures: {
      ...{ waterG: 93.81, fatG: 0, sugarG: 0.4, proteinG: 0, saltG: 0 },
      acid: { acid: 'acetic-acid', grams: 5 },
    },
    ranges: { acidG: [4, 6] },
    allergens: [],
    inci: 'Acetum',
    evidence: { figures: usdaRecalled('02048'), acid: vinegarAcidity, inci },
  },
  {
    key: 'lemon-juice',
    title: 'Lemon juice',
    aliases: ['Zitronensaft', 'juice of lemons'],
    kind: 'acid',
    figures: {
      ...{ waterG: 91.5, fatG: 0.24, sugarG: 1.6, proteinG: 0.35, saltG: 0 },
      acid: { acid: 'citric-acid', grams: 5.5 },
    },
    ranges: { waterG: [90, 92.5], acidG: [4.5, 7] },
    allergens: [],
    inci: 'Citrus Limon Juice',
    evidence: { figures: usdaRecalled('09152'), acid: recalledAcidity, inci },
  },
  {
    // 25 g to 100 g of water: near what lye still leaves dissolved.
    key: 'brine',
    title: 'Brine, 1 part of salt to 4 of water',
    aliases: ['Sole', 'Salzsole', 'salt water', 'sea water', 'Meerwasser', 'soleseife'],
    kind: 'brine',
    figures: { waterG: 80, fatG: 0, sugarG: 0, proteinG: 0, saltG: 20 },
    ranges: {},
    allergens: [],
    inci: 'Sodium Chloride',
    evidence: { figures: practiceOfSalt, acid: practiceOfSalt, inci },
  },
];

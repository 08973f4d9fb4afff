import { tradeSheets } from './sources.js';
import type { StandardFat } from './standard-fat.js';

/** Oils hardened with hydrogen, and blends sold as shortening. No standard; every figure is from sheets. */
export const hardenedFats: readonly StandardFat[] = [
  {
    key: 'palm-shortening',
    title: 'Palm shortening',
    inci: 'Elaeis Guineensis Oil',
    saponification: [190, 208],
    iodine: [38, 54],
    acids: {
      'C12:0': [0, 0.5],
      'C14:0': [0.5, 2],
      'C16:0': [40, 54],
      'C18:0': [4, 9],
      'C18:1': [29, 42],
      'C18:2': [6, 12],
    },
    behaviour: 'Palm oil that does not separate in the tub; a hard bar, a creamy lather.',
    evidence: { figures: tradeSheets },
  },
  {
    key: 'hydrogenated-palm',
    title: 'Palm oil, hydrogenated',
    inci: 'Hydrogenated Palm Oil',
    saponification: [190, 210],
    iodine: [0, 6],
    acids: { 'C12:0': [0, 0.5], 'C14:0': [0.5, 2], 'C16:0': [38, 50], 'C18:0': [46, 60], 'C18:1': [0, 2] },
    behaviour: 'Very hard; it sets in the bowl unless the batter is kept above about 55 °C.',
    evidence: { figures: tradeSheets },
  },
  {
    key: 'hydrogenated-soybean',
    title: 'Soybean oil, partly hydrogenated (vegetable shortening)',
    inci: 'Hydrogenated Soybean Oil',
    saponification: [186, 198],
    iodine: [55, 90],
    acids: {
      'C16:0': [9, 16],
      'C18:0': [6, 22],
      'C18:1': [45, 72],
      'C18:2': [2, 22],
      'C18:3': [0, 2],
      'C20:0': [0, 1],
    },
    behaviour:
      'Slow to trace, cheap, mild; a bar of medium hardness. Brands differ, so use the figures on the tub’s sheet.',
    evidence: { figures: tradeSheets },
  },
  {
    // Candle blends may hold other waxes: only pure hydrogenated soybean oil has these figures.
    key: 'soy-wax',
    title: 'Soy wax (soybean oil, fully hydrogenated)',
    inci: 'Hydrogenated Soybean Oil',
    saponification: [182, 198],
    iodine: [0, 10],
    acids: { 'C16:0': [9, 14], 'C18:0': [80, 90], 'C18:1': [0, 4], 'C20:0': [0, 1.5], 'C22:0': [0, 1] },
    behaviour:
      'Hardens a bar in place of palm stearin; it sets below about 55 °C, so the batter has to be warm. Candle wax with additives is not this.',
    evidence: { figures: tradeSheets },
  },
  {
    key: 'hydrogenated-rapeseed',
    title: 'Rapeseed oil, fully hydrogenated',
    inci: 'Hydrogenated Rapeseed Oil',
    saponification: [178, 196],
    iodine: [0, 6],
    acids: { 'C16:0': [3, 7], 'C18:0': [84, 94], 'C18:1': [0, 2], 'C20:0': [0.5, 3], 'C22:0': [0.3, 3] },
    behaviour: 'Much like soy wax: hard, and it sets below about 60 °C.',
    evidence: { figures: tradeSheets },
  },
];

import type { LiquidFacts } from './liquid-facts.js';
import { drinks } from './table/drinks.js';
import { milks } from './table/milks.js';
import { plantDrinks } from './table/plant-drinks.js';
import { purees } from './table/purees.js';

/** Every liquid that ships, in the order in which it is offered. */
export const shippedLiquids: readonly LiquidFacts[] = [...milks, ...plantDrinks, ...drinks, ...purees];

/** The same by key. */
export const liquidTable: ReadonlyMap<string, LiquidFacts> = new Map(
  shippedLiquids.map((liquid) => [liquid.key, liquid]),
);

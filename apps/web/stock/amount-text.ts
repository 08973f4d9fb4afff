import { useAmounts } from '../look/amounts.js';
import { useStockWords } from './stock-words.js';
import type { Unit } from './use-stock.js';

/** Writes an amount in the unit that a material is kept by. */
export function useAmountText(): (unit: Unit, amount: number) => string {
  const words = useStockWords();
  const { mass } = useAmounts();
  return (unit, amount) => (unit === 'g' ? mass(amount) : words.pieces(Math.round(amount)));
}

import type { StockWords } from '../words/en/stock.js';
import { lazyWords } from '../words/lazy-words.js';

/** The texts about stock in the language that was chosen. */
export const useStockWords = lazyWords<StockWords>({
  en: async () => (await import('../words/en/stock.js')).stock,
  de: async () => (await import('../words/de/stock.js')).stock,
});

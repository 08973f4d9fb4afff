import type { DotsWords } from '../words/en/dots.js';
import { lazyWords } from '../words/lazy-words.js';

/** The texts beside dots in the language that was chosen. */
export const useDotsWords = lazyWords<DotsWords>({
  en: async () => (await import('../words/en/dots.js')).dots,
  de: async () => (await import('../words/de/dots.js')).dots,
});

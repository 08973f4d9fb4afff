import type { PastingWords } from '../../words/en/pasting.js';
import { lazyWords } from '../../words/lazy-words.js';

/** The texts about pasting a recipe in the language that was chosen. */
export const usePastingWords = lazyWords<PastingWords>({
  en: async () => (await import('../../words/en/pasting.js')).pasting,
  de: async () => (await import('../../words/de/pasting.js')).pasting,
});

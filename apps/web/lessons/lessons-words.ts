import type { LessonsWords } from '../words/en/lessons.js';
import { lazyWords } from '../words/lazy-words.js';

/** The texts about what the log teaches in the language that was chosen. */
export const useLessonsWords = lazyWords<LessonsWords>({
  en: async () => (await import('../words/en/lessons.js')).lessons,
  de: async () => (await import('../words/de/lessons.js')).lessons,
});

import { createContext, use } from 'react';
import { en, type Words } from './en/index.js';

export type { Words };

export const languages = { en: 'English', de: 'Deutsch' } as const;
export type Language = keyof typeof languages;

export const WordsContext = createContext<{ readonly language: Language; readonly words: Words }>({
  language: 'en',
  words: en,
});

/** The texts in the language that was chosen. */
export function useWords(): Words {
  return use(WordsContext).words;
}

export function useLanguage(): Language {
  return use(WordsContext).language;
}

/** English is there from the start; others are fetched when they are wanted. */
export async function wordsOf(language: Language): Promise<Words> {
  return language === 'de' ? (await import('./de/index.js')).de : en;
}

import { createContext, use } from 'react';
import type { Language, Words as Sentences } from '#words';
import type { Words } from './en/index.js';

export { languages, type Language } from '#words';
export type { Words };

/** What is said in a language: the texts of the pages, and the sentences of what the program has to tell. */
export interface Said {
  readonly language: Language;
  readonly words: Words;
  readonly sentences: Sentences;
}

export const WordsContext = createContext<Said | null>(null);

/** All that is said in the language that was chosen. @throws outside of the page */
export function useSaid(): Said {
  const said = use(WordsContext);
  if (said === null) throw new Error('no language was loaded');
  return said;
}

/** The texts in the language that was chosen. */
export function useWords(): Words {
  return useSaid().words;
}

export function useLanguage(): Language {
  return useSaid().language;
}

/** Fetches a language: no page brings along one that it does not show. */
export async function loadWords(language: Language): Promise<Said> {
  const [words, sentences] = await loaders[language]();
  return { language, words, sentences };
}

const loaders: Readonly<Record<Language, () => Promise<readonly [Words, Sentences]>>> = {
  en: async () => {
    const [{ en: words }, { en: sentences }] = await Promise.all([
      import('./en/index.js'),
      import('#words/en'),
    ]);
    return [words, sentences];
  },
  de: async () => {
    const [{ de: words }, { de: sentences }] = await Promise.all([
      import('./de/index.js'),
      import('#words/de'),
    ]);
    return [words, sentences];
  },
};

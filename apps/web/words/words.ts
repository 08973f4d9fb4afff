import { createContext, use } from 'react';
import { en as english, type Language, type Words as Sentences } from '#words';
import { en, type Words } from './en/index.js';

export { languages, type Language } from '#words';
export type { Words };

/** What is said in a language: the texts of the pages, and the sentences of what the program has to tell. */
export interface Said {
  readonly language: Language;
  readonly words: Words;
  readonly sentences: Sentences;
}

/** English is there from the start. */
export const said: Said = { language: 'en', words: en, sentences: english };

export const WordsContext = createContext<Said>(said);

/** The texts in the language that was chosen. */
export function useWords(): Words {
  return use(WordsContext).words;
}

export function useLanguage(): Language {
  return use(WordsContext).language;
}

/** Other languages than English are fetched when they are wanted. */
export async function loadWords(language: Language): Promise<Said> {
  if (language === 'en') return said;
  const [{ de: words }, { de: sentences }] = await Promise.all([
    import('./de/index.js'),
    import('#words/de'),
  ]);
  return { language, words, sentences };
}

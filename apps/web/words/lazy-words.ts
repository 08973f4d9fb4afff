import { use } from 'react';
import { useLanguage, type Language } from './words.js';

/**
 * Texts that come with the pages that need them, not with every page.
 * @param loaders of each language
 * @returns a hook: the texts in the language that was chosen; the page waits for them as for its own script
 */
export function lazyWords<T>(loaders: Readonly<Record<Language, () => Promise<T>>>): () => T {
  const loaded = new Map<Language, Promise<T>>();
  const textsIn = (language: Language): Promise<T> => {
    let texts = loaded.get(language);
    if (texts === undefined) {
      texts = loaders[language]();
      // A lost connection must not be remembered.
      texts.catch(() => loaded.delete(language));
      loaded.set(language, texts);
    }
    return texts;
  };
  return function useLazyWords() {
    return use(textsIn(useLanguage()));
  };
}

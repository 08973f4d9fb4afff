import { use } from 'react';
import { useLanguage, type Language } from './words.js';

/**
 * Texts that few pages need, fetched with what shows them.
 * @returns a hook: the texts in the language that was chosen; who calls it waits for them as for its own script
 */
export function lazyWords<W>(loaders: Readonly<Record<Language, () => Promise<W>>>): () => W {
  const loaded = new Map<Language, Promise<W>>();
  const textsIn = (language: Language): Promise<W> => {
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

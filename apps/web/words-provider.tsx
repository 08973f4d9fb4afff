import { useEffect, useState, type ReactNode } from 'react';
import { usePreference } from './preferences/preferences.js';
import { en } from './words/en/index.js';
import { WordsContext, wordsOf, type Language, type Words } from './words/words.js';

/** Hands out the texts of the chosen language; until they have come, those shown before stay. */
export function WordsProvider({ children }: { readonly children: ReactNode }): ReactNode {
  const [language] = usePreference('language');
  const [shown, setShown] = useState<{ readonly language: Language; readonly words: Words }>({
    language: 'en',
    words: en,
  });
  useEffect(() => {
    let isWanted = true;
    void wordsOf(language).then((words) => {
      if (!isWanted) return;
      document.documentElement.lang = language;
      setShown({ language, words });
    });
    return () => {
      isWanted = false;
    };
  }, [language]);
  return <WordsContext value={shown}>{children}</WordsContext>;
}

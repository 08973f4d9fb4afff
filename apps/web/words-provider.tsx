import { useEffect, useState, type ReactNode } from 'react';
import { usePreference } from './preferences/preferences.js';
import { loadWords, said, WordsContext } from './words/words.js';

/** Hands out the texts of the chosen language; until they have come, those shown before stay. */
export function WordsProvider({ children }: { readonly children: ReactNode }): ReactNode {
  const [language] = usePreference('language');
  const [shown, setShown] = useState(said);
  useEffect(() => {
    let isWanted = true;
    void loadWords(language).then((loaded) => {
      if (!isWanted) return;
      document.documentElement.lang = language;
      setShown(loaded);
    });
    return () => {
      isWanted = false;
    };
  }, [language]);
  return <WordsContext value={shown}>{children}</WordsContext>;
}

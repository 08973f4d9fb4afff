import { useEffect, useState, type ReactNode } from 'react';
import { usePreference } from './preferences/preferences.js';
import { loadWords, WordsContext, type Said } from './words/words.js';

/**
 * Hands out the texts of the chosen language; until they have come, those shown before stay.
 * @param first the texts of the language that was chosen when the page was opened
 */
export function WordsProvider(props: { readonly first: Said; readonly children: ReactNode }): ReactNode {
  const { first, children } = props;
  const [language] = usePreference('language');
  const [shown, setShown] = useState(first);
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

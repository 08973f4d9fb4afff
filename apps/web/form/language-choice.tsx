import type { ReactNode } from 'react';
import { languages, useWords, type Language } from '../words/words.js';
import { Choice } from './choice.js';
import { usePreference } from '../preferences/preferences.js';

/** The language, each called by its own name. */
export function LanguageChoice(): ReactNode {
  const { shell } = useWords();
  const [language, setLanguage] = usePreference('language');
  const options = (Object.keys(languages) as Language[]).map((value) => ({
    ...{ value, text: languages[value], lang: value },
  }));
  return (
    <Choice
      legend={shell.language}
      name="language"
      value={language}
      options={options}
      onChoose={setLanguage}
    />
  );
}

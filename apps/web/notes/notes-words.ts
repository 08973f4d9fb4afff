import { use } from 'react';
import type { NotesWords } from '../words/en/notes.js';
import { useLanguage, type Language } from '../words/words.js';

const loaders: Readonly<Record<Language, () => Promise<{ readonly notes: NotesWords }>>> = {
  en: () => import('../words/en/notes.js'),
  de: () => import('../words/de/notes.js'),
};

const loaded = new Map<Language, Promise<NotesWords>>();

/** The texts about notes in the language that was chosen; the page waits for them as for its own script. */
export function useNotesWords(): NotesWords {
  return use(textsIn(useLanguage()));
}

function textsIn(language: Language): Promise<NotesWords> {
  let texts = loaded.get(language);
  if (texts === undefined) {
    texts = loaders[language]().then(({ notes }) => notes);
    // A lost connection must not be remembered.
    texts.catch(() => loaded.delete(language));
    loaded.set(language, texts);
  }
  return texts;
}

import type { NotesWords } from '../words/en/notes.js';
import { lazyWords } from '../words/lazy-words.js';

/** The texts about notes in the language that was chosen. */
export const useNotesWords = lazyWords<NotesWords>({
  en: async () => (await import('../words/en/notes.js')).notes,
  de: async () => (await import('../words/de/notes.js')).notes,
});

import type { Language } from '#words';
import { de } from './de.js';
import { en, type PrintedWords } from './en.js';

/** What the command line says around messages, in each language. */
export const printed: Readonly<Record<Language, PrintedWords>> = { en, de };

import type { Language } from '#words';
import { de } from './de/index.js';
import { en, type PrintedWords } from './en/index.js';

export type { PrintedWords } from './en/index.js';

/** What the command line says around messages, in each language. */
export const printed: Readonly<Record<Language, PrintedWords>> = { en, de };

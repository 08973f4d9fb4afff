/** The words of every language, for programs that write for many readers. Pages fetch one language at a time instead. */
import { de } from '../de/index.js';
import { en } from '../en/index.js';
import type { Language } from '../reader.js';
import type { Words } from '../words.js';

export const wordsOf: Readonly<Record<Language, Words>> = { en, de };

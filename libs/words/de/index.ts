import type { Words } from '../words.js';
import { cautions } from './cautions.js';
import { phrases } from './phrases.js';

/** All that is said in German. */
export const de: Words = { phrases, messages: { ...cautions } };

import type { Words } from '../words.js';
import { cautions } from './cautions.js';
import { influences } from './influences.js';
import { phrases } from './phrases.js';
import { states } from './states.js';

/** All that is said in German. */
export const de: Words = { phrases, names: { states, influences }, messages: { ...cautions } };

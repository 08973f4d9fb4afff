import type { Words } from '../words.js';
import { cautions } from './cautions.js';
import { clock } from './clock.js';
import { names } from './names.js';
import { nudges } from './nudges.js';
import { phrases } from './phrases.js';
import { remedies } from './remedies.js';

/** All that is said in German. */
export const de: Words = { phrases, names, messages: { ...cautions, ...clock, ...nudges, ...remedies } };

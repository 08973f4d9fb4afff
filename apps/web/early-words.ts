import { preferences } from './preferences/preferences.js';
import { loadWords } from './words/words.js';

/**
 * Asks for the texts of the chosen language while the first script is still on its way: a script of its own, as small
 * as can be, that the build puts before the first one. If it fails, the first script asks again and says so.
 */
loadWords(preferences().language).catch(() => undefined);

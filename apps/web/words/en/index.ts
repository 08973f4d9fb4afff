import { session } from './session.js';
import { shell } from './shell.js';

/** English, the language that all others follow. One file for each room. */
export const en = { shell, session };

import { session } from './session.js';
import { shell } from './shell.js';

/** English, the language that all others follow. One file for each room. */
export const en = { shell, session };

/** All texts of one language; where something has to be filled in, a function. */
export type Words = typeof en;

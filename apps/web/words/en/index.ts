import { lessons } from './lessons.js';
import { session } from './session.js';
import { settings } from './settings.js';
import { shelf } from './shelf.js';
import { shell } from './shell.js';

/** English, the language that all others follow. One file for each room. */
export const en = { shell, session, shelf, lessons, settings };

/** All texts of one language; where something has to be filled in, a function. */
export type Words = typeof en;

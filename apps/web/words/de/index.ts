import type { Words } from '../words.js';
import { session } from './session.js';
import { shell } from './shell.js';

export const de: Words = { shell, session };

import type { Words } from '../en/index.js';
import { session } from './session.js';
import { shell } from './shell.js';

export const de: Words = { shell, session };

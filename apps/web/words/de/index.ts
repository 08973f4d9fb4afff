import type { Words } from '../en/index.js';
import { lessons } from './lessons.js';
import { session } from './session.js';
import { settings } from './settings.js';
import { shelf } from './shelf.js';
import { shell } from './shell.js';

export const de: Words = { shell, session, shelf, lessons, settings };

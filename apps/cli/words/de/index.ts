import type { PrintedWords } from '../en/index.js';
import { file } from './file.js';
import { clocks } from './clocks.js';
import { options } from './options.js';
import { plan } from './plan.js';
import { sheet } from './sheet.js';
import { usage } from './usage.js';

export const de: PrintedWords = { plan, sheet, clocks, options, usage, file };

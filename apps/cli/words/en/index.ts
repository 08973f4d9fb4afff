import { file } from './file.js';
import { clocks } from './clocks.js';
import { options } from './options.js';
import { plan } from './plan.js';
import { sheet } from './sheet.js';
import { usage } from './usage.js';

/** What the command line says around messages. */
export const en = { plan, sheet, clocks, options, usage, file };

export type PrintedWords = typeof en;

import type { Words } from '../words.js';
import { amounts } from './amounts.js';
import { cautions } from './cautions.js';
import { clock } from './clock.js';
import { names } from './names.js';
import { nudges } from './nudges.js';
import { phrases } from './phrases.js';
import { remedies } from './remedies.js';
import { riskRemedies } from './risk-remedies.js';
import { risks } from './risks.js';

/** All that is said in English. */
export const en: Words = {
  phrases,
  names,
  riskRemedies,
  messages: { ...amounts, ...risks, ...cautions, ...clock, ...nudges, ...remedies },
};

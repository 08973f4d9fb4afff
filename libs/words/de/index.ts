import type { Words } from '../words.js';
import { amounts } from './amounts.js';
import { cautions } from './cautions.js';
import { clock } from './clock.js';
import { conflictReasons, losses } from './conflict.js';
import { startReasons } from './latest-start.js';
import { causes, effects, logged } from './logged.js';
import { fields } from './fields.js';
import { heat } from './heat.js';
import { accepted, issues } from './issues/index.js';
import { names } from './names.js';
import { nudges } from './nudges.js';
import { phrases } from './phrases.js';
import { relaxations, timings } from './relaxation.js';
import { remedies } from './remedies.js';
import { riskRemedies } from './risk-remedies.js';
import { risks } from './risks.js';
import { why } from './why.js';

/** All that is said in German. */
export const de: Words = {
  phrases,
  names,
  riskRemedies,
  messages: {
    ...amounts,
    ...cautions,
    ...causes,
    ...clock,
    ...conflictReasons,
    ...effects,
    ...heat,
    ...logged,
    ...losses,
    ...nudges,
    ...relaxations,
    ...remedies,
    ...risks,
    ...startReasons,
    ...timings,
    ...why,
  },
  issues,
  accepted,
  fields,
};

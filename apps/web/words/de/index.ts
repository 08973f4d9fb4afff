import type { Words } from '../en/index.js';
import { form } from './form.js';
import { heat } from './heat.js';
import { hours } from './hours.js';
import { library } from './library.js';
import { now } from './now.js';
import { offline } from './offline.js';
import { patterns } from './patterns.js';
import { plan } from './plan.js';
import { run } from './run.js';
import { session } from './session.js';
import { shelf } from './shelf.js';
import { shell } from './shell.js';
import { start } from './start.js';
import { tide } from './tide.js';

export const de: Words = {
  shell,
  session,
  start,
  form,
  library,
  heat,
  hours,
  now,
  offline,
  patterns,
  plan,
  shelf,
  run,
  tide,
};

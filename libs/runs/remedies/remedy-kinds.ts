import type { RemedyKind } from './candidate.js';
import { ownMoreCavities } from './kinds/cavities.js';
import { makeFewer } from './kinds/count.js';
import { dropParts } from './kinds/drop-parts.js';
import { planAnew } from './kinds/plan-anew.js';
import { giveLaterDay } from './kinds/ready-by.js';
import { changeRecipe } from './kinds/recipe.js';
import { addSitting } from './kinds/sitting.js';
import { splitRun } from './kinds/split.js';
import { shiftStart } from './kinds/start.js';

/** Every kind of remedy. To add one: a member of `remedyChange`, its case in `withChange`, its file here. */
export const remedyKinds: readonly RemedyKind[] = [
  planAnew,
  changeRecipe,
  shiftStart,
  addSitting,
  ownMoreCavities,
  splitRun,
  dropParts,
  makeFewer,
  giveLaterDay,
];

import type { FatFacts } from '../fat-facts.js';
import { buttersAndAnimalFats } from './butters-and-animal-fats.js';
import { castorAndWaxes } from './castor-and-waxes.js';
import { linoleicOils } from './linoleic-oils.js';
import { oleicOils } from './oleic-oils.js';
import { fromStandard } from './standard-fat.js';
import { tropicalFats } from './tropical-fats.js';

/** The fats that need no entry of the maker's own. How one figure comes from a range: `fromStandard`. */
export const shippedFats: readonly FatFacts[] = [
  ...tropicalFats,
  ...oleicOils,
  ...linoleicOils,
  ...buttersAndAnimalFats,
  ...castorAndWaxes,
].map(fromStandard);

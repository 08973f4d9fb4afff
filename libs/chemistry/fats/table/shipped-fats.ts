import { buttersAndAnimalFats } from './butters-and-animal-fats.js';
import { castorWaxesAndAcids } from './castor-waxes-and-acids.js';
import { linoleicOils } from './linoleic-oils.js';
import { linolenicOils } from './linolenic-oils.js';
import { oleicOils } from './oleic-oils.js';
import { fromStandard, type ShippedFatFacts } from './standard-fat.js';
import { tropicalFats } from './tropical-fats.js';

/** The fats that need no entry of the maker's own. How one figure comes from a range: `fromStandard`. */
export const shippedFats: readonly ShippedFatFacts[] = [
  ...tropicalFats,
  ...oleicOils,
  ...linoleicOils,
  ...linolenicOils,
  ...buttersAndAnimalFats,
  ...castorWaxesAndAcids,
].map(fromStandard);

import { animalFats } from './animal-fats.js';
import { berryAndHerbOils } from './berry-and-herb-oils.js';
import { buttersAndAnimalFats } from './butters-and-animal-fats.js';
import { castorWaxesAndAcids } from './castor-waxes-and-acids.js';
import { exoticButters } from './exotic-butters.js';
import { freeAcidsAndRosin } from './free-acids-and-rosin.js';
import { hardenedFats } from './hardened-fats.js';
import { kernelAndNutOils } from './kernel-and-nut-oils.js';
import { lauricFats } from './lauric-fats.js';
import { linoleicOils } from './linoleic-oils.js';
import { linolenicOils } from './linolenic-oils.js';
import { oleicOils } from './oleic-oils.js';
import { seedOils } from './seed-oils.js';
import { fromStandard, type ShippedFatFacts } from './standard-fat.js';
import { tropicalFats } from './tropical-fats.js';
import { tropicalOils } from './tropical-oils.js';

/** The fats that need no entry of the maker's own. How one figure comes from a range: `fromStandard`. */
export const shippedFats: readonly ShippedFatFacts[] = [
  ...tropicalFats,
  ...lauricFats,
  ...hardenedFats,
  ...oleicOils,
  ...kernelAndNutOils,
  ...tropicalOils,
  ...linoleicOils,
  ...seedOils,
  ...linolenicOils,
  ...berryAndHerbOils,
  ...buttersAndAnimalFats,
  ...exoticButters,
  ...animalFats,
  ...castorWaxesAndAcids,
  ...freeAcidsAndRosin,
].map(fromStandard);

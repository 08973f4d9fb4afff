import type { Fragrance, FragranceBehaviour } from '../recipe/batter-recipe.js';

/** What a fragrance does to a batter, from what holds it up to what stops all work, by how soon the batter is thick. */
const quickening: readonly FragranceBehaviour[] = [
  ...(['slowing', 'none', 'mild', 'ricing', 'unknown', 'brisk', 'strong', 'seizing'] as const),
];

/** What is left of a behaviour where there is little of the fragrance. A batter rices, or surprises, from little, too. */
const milder: Readonly<Record<FragranceBehaviour, FragranceBehaviour>> = {
  slowing: 'none',
  none: 'none',
  mild: 'none',
  ricing: 'ricing',
  unknown: 'unknown',
  brisk: 'mild',
  strong: 'brisk',
  seizing: 'strong',
};

/** A fragrance that makes up less than this of all of them counts as one class milder. */
const LITTLE = 0.2;

/**
 * What all fragrances of a batter do together: as the quickest of them does, one of which there is little counting as one
 * class milder. Common practice is no more than that the quickest decides; where little begins is our own judgement.
 */
export function behaviourTogether(fragrances: readonly Fragrance[] = []): FragranceBehaviour {
  const all = fragrances.reduce((sum, { percent }) => sum + percent, 0);
  const found = fragrances
    .filter(({ percent }) => percent > 0)
    .map(({ percent, behaviour = 'unknown' }) => (percent < LITTLE * all ? milder[behaviour] : behaviour));
  return found.reduce<FragranceBehaviour>(quicker, found[0] ?? 'none');
}

/** The behaviour that makes a batter thick soonest: who pours several at once has as long as the quickest of them. */
export function quickestBehaviour(
  behaviours: readonly [FragranceBehaviour, ...FragranceBehaviour[]],
): FragranceBehaviour {
  return behaviours.reduce(quicker);
}

function quicker(a: FragranceBehaviour, b: FragranceBehaviour): FragranceBehaviour {
  return quickening.indexOf(a) >= quickening.indexOf(b) ? a : b;
}

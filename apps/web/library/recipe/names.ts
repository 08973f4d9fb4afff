/**
 * Names of the contract that a select offers. The contract itself is too large for a form to fetch with its page; a test
 * holds these to it.
 */
export const acidNames = ['citric-acid', 'citric-acid-monohydrate', 'lactic-acid', 'acetic-acid'] as const;
export const fragranceBehaviours = ['none', 'mild', 'brisk', 'strong', 'seizing'] as const;
export const additionKinds = [
  'clay',
  'dried-plant',
  'scrub',
  'powdered-milk',
  'fresh-food',
  'other',
] as const;
export const mixings = ['blender', 'hand'] as const;
export const gels = ['none', 'full'] as const;

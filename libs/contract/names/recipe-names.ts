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

/** What a colour is stirred into before it goes into the batter. */
export const carrierKinds = ['glycerol', 'water', 'fat'] as const;

export const mixings = ['blender', 'hand'] as const;
export const gels = ['none', 'full'] as const;

/** Esters of glycerol, esters of long alcohols, or acids that are free already. */
export const fatKinds = ['triglyceride', 'wax', 'fatty-acid'] as const;

export const mouldKinds = ['silicone-cavity', 'lined-wood', 'lined-carton', 'rigid-plastic'] as const;

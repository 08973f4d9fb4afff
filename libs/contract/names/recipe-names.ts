export const acidNames = ['citric-acid', 'citric-acid-monohydrate', 'lactic-acid', 'acetic-acid'] as const;

/** Acids that the acidity of a liquid is told as. */
export const liquidAcidNames = [
  'lactic-acid',
  'acetic-acid',
  'citric-acid',
  'malic-acid',
  'tartaric-acid',
] as const;

/** Lye is dissolved in a liquid, or the liquid goes into the batter. */
export const liquidPlaces = ['lye', 'batter'] as const;

/** How a liquid behaves with lye. */
export const liquidKinds = ['milk', 'plant-drink', 'alcohol', 'infusion', 'puree', 'acid', 'brine'] as const;

/** What liquids may hold that people are allergic to. */
export const liquidAllergens = ['milk', 'nuts', 'gluten'] as const;

/** What a fragrance does to the batter; `unknown` is one that was not tried. */
export const fragranceBehaviours = [
  'none',
  'slowing',
  'mild',
  'brisk',
  'strong',
  'seizing',
  'ricing',
  'unknown',
] as const;

export const fragranceKinds = ['fragrance-oil', 'essential-oil'] as const;

/** Kinds of products that limits of fragrances are told by (IFRA Standards; from memory). Soap is 9. */
export const limitCategories = [
  ...(['1', '2', '3', '4', '5A', '5B', '5C', '5D', '6', '7A', '7B', '8', '9'] as const),
  ...(['10A', '10B', '11A', '11B', '12'] as const),
] as const;

export const additionKinds = [
  'clay',
  'honey',
  'dried-plant',
  'scrub',
  'powdered-milk',
  'fresh-food',
  'other',
] as const;

/** What a colour is stirred into before it goes into the batter. */
export const carrierKinds = ['glycerol', 'water', 'fat'] as const;

/** With a stick blender all the way, with it only until the emulsion holds, or by hand. */
export const mixings = ['blender', 'to-emulsion', 'hand'] as const;
/** Whether it goes through gel: as its own heat has it, or as the maker sees to it. */
export const gels = ['auto', 'none', 'full'] as const;
/** How a mould stands after the pour: open, with a lid, wrapped in towels, or in the refrigerator. */
export const keptWays = ['open', 'covered', 'wrapped', 'chilled'] as const;

/** How the air moves where soap stands and cures: shut in, as in any room, or before a fan or in a draught. */
export const airMovements = ['still', 'usual', 'moving'] as const;

/** What a batch has been through when it goes into the mould: poured as batter, cooked till it is soap, or made of soap that was melted again. */
export const processes = ['cold', 'cooked', 'rebatched'] as const;

/** Esters of glycerol, esters of long alcohols, or acids that are free already. */
export const fatKinds = ['triglyceride', 'wax', 'fatty-acid'] as const;

export const mouldKinds = ['silicone-cavity', 'lined-wood', 'lined-carton', 'rigid-plastic'] as const;

/** Names of the contract that the page of a design offers; a test holds them to it. */
export const stageKinds = [
  'press-decor',
  'pour',
  'layer',
  'unmould',
  'patch',
  'dip',
  'pipe',
  'set-in',
  'glaze',
  'turn',
  'cut',
  'stamp',
  'wrap',
] as const;
export type StageKind = (typeof stageKinds)[number];

const openingOfSoap = ['holds-layer', 'firm', 'cuttable', 'coat-turnable', 'piping-firm', 'cured'] as const;
const openingOfMelt = ['glaze-set'] as const;
const closingOfSoap = ['bonds-until', 'pliable-until', 'cuttable-until', 'piping-skinned'] as const;

export type OpeningState = (typeof openingOfSoap)[number] | (typeof openingOfMelt)[number];
export type ClosingState = (typeof closingOfSoap)[number];

/** States of a kind of part that a stage can wait for, and those before which it must have begun. */
export function statesOf(partKind: unknown): {
  readonly opening: readonly OpeningState[];
  readonly closing: readonly ClosingState[];
} {
  if (partKind === 'batch') return { opening: openingOfSoap, closing: closingOfSoap };
  return { opening: partKind === 'melt-and-pour' ? openingOfMelt : [], closing: [] };
}

export const partKinds = ['batch', 'melt-and-pour', 'decor'] as const;
export type PartKind = (typeof partKinds)[number];

/** Ways to say how much one piece takes; `ml` is the bare figure. */
export const amountWays = ['ml', 'cavity', 'finished', 'coat', 'bead', 'bead-section', 'weighing'] as const;
export type AmountWay = (typeof amountWays)[number];

/** What a part is made from. */
export const partKinds = ['batch', 'melt-and-pour', 'decor'] as const;
export type PartKind = (typeof partKinds)[number];

/** Ways to say how much of a part one piece takes, where it is not simply given in millilitres. */
export const amountWays = ['cavity', 'finished', 'coat', 'bead', 'bead-section', 'weighing'] as const;
export type AmountWay = (typeof amountWays)[number];

/** What is done at a stage. Each kind brings its cautions and its hold on a mould. */
export const stageKinds = [
  'make-lye',
  'melt-fats',
  'melt-base',
  'mix',
  'split',
  'cook',
  'rebatch',
  'press-decor',
  'pour',
  'layer',
  'unmould',
  'patch',
  'dip',
  'pipe',
  'set-in',
  'sprinkle',
  'mist',
  'glaze',
  'rest',
  'turn',
  'cut',
  'stamp',
  'zap-test',
  'wrap',
  'label',
] as const;
export type StageKind = (typeof stageKinds)[number];

/** What is lost where a stage comes too late: sound pieces, or no more than how they look and how easy they are to work. */
export const lateLosses = ['pieces', 'looks'] as const;
export type LateLoss = (typeof lateLosses)[number];

/** States after which something may be done with a part, by its kind. */
export const openingStatesOf = {
  batch: [
    'lye-cool',
    'fats-cool',
    'emulsion',
    'light-trace',
    'medium-trace',
    'holds-layer',
    'ash-safe',
    'patchable',
    'firm',
    'handled',
    'cuttable',
    'coat-turnable',
    'piping-firm',
    'piping-turnable',
    'usable',
    'cured',
    'best',
  ],
  'melt-and-pour': ['glaze-set', 'glaze-turnable', 'melt-firm'],
  decor: [],
} as const satisfies Record<PartKind, readonly string[]>;

/** States after which it is too late. */
export const closingStatesOf = {
  batch: [
    'lye-keeps-until',
    'medium-trace',
    'thick-trace',
    'stiff',
    'spoonable-until',
    'skinned',
    'coat-tacky-until',
    'takes-decor-until',
    'bonds-until',
    'pliable-until',
    'cuttable-until',
    'piping-skinned',
    'takes-piping-until',
    'takes-coat-until',
    'takes-glaze-until',
    'embeds-until',
  ],
  'melt-and-pour': [],
  decor: [],
} as const satisfies Record<PartKind, readonly string[]>;

export const openingStates = [...openingStatesOf.batch, ...openingStatesOf['melt-and-pour']] as const;
export const closingStates = closingStatesOf.batch;
export type OpeningState = (typeof openingStates)[number];
export type ClosingState = (typeof closingStates)[number];

import type { Stage, StageKind } from '#contract';
import type { Evidence } from '#units';
import { preparingKinds } from './preparing-kinds.js';
import {
  commonPractice,
  hands,
  type BatchWait,
  type HandsOn,
  type KindWait,
  type StageKindFacts,
  type StateWait,
} from './stage-kind-facts.js';

const fromMemory: Evidence = { kind: 'from memory' };

const spoonable: BatchWait = {
  from: 'cook',
  closes: 'spoonable-until',
  loses: 'pieces',
  evidence: commonPractice,
};

const freshlyPoured: StateWait = { opens: 'holds-layer', closes: 'bonds-until', loses: 'pieces' };

/** A second pour of melted base, or what else goes onto it in its mould, lies on the skin that it has by then. */
const skinned: StateWait = { opens: 'glaze-set' };

const onceCured: KindWait = {
  of: 'piece',
  states: {
    'in-mould': { opens: 'cured' },
    'out-of-mould': { opens: 'cured' },
    'without-mould': { opens: 'cured' },
    dipped: { opens: 'cured' },
    piped: { opens: 'cured' },
  },
  evidence: commonPractice,
};

/**
 * One row per kind of stage, with the physics that come with it. To add a kind: a name in the contract, a row here or
 * among those that prepare a batch, and its test.
 */
export const stageKindFacts: Readonly<Record<StageKind, StageKindFacts>> = {
  ...preparingKinds,
  'press-decor': {
    makes: true,
    loses: 'looks',
    frees: false,
    handsOn: hands(10, 60),
    cautions: ['caution.fresh-soap'],
  },
  pour: {
    makes: true,
    loses: 'pieces',
    frees: false,
    handsOn: hands(35, 8),
    fills: 'pour',
    batch: [spoonable],
    cautions: ['caution.lye'],
  },
  layer: {
    makes: true,
    loses: 'pieces',
    frees: false,
    handsOn: hands(30, 8),
    fills: 'layer',
    batch: [spoonable],
    hosted: true,
    waits: {
      of: 'host',
      states: { 'in-mould': freshlyPoured, 'melt-in-mould': skinned },
      evidence: commonPractice,
    },
    cautions: ['caution.lye'],
  },
  unmould: {
    makes: false,
    loses: 'looks',
    frees: true,
    handsOn: hands(5, 30),
    waits: {
      of: 'cavity',
      states: {
        'in-mould': { opens: 'firm' },
        'without-mould': { opens: 'firm' },
        dipped: { opens: 'coat-turnable' },
        piped: { opens: 'piping-firm' },
        melted: { opens: 'glaze-set' },
        'melt-in-mould': { opens: 'melt-firm' },
      },
      evidence: commonPractice,
    },
    cautions: ['caution.fresh-soap'],
  },
  patch: {
    makes: false,
    loses: 'looks',
    frees: false,
    handsOn: hands(5, 30),
    after: [{ of: 'cavity', kinds: ['unmould'] }],
    cautions: ['caution.fresh-soap'],
  },
  dip: {
    makes: true,
    loses: 'pieces',
    frees: false,
    handsOn: hands(35, 15),
    fills: 'dip',
    batch: [spoonable],
    hosted: true,
    after: [{ of: 'host', kinds: ['unmould'] }],
    waits: {
      of: 'host',
      states: {
        'out-of-mould': { closes: 'takes-coat-until', loses: 'pieces' },
        'without-mould': { opens: 'firm', closes: 'takes-coat-until', loses: 'pieces' },
        dipped: { opens: 'coat-turnable' },
        piped: { opens: 'piping-turnable' },
        melted: { opens: 'glaze-turnable' },
      },
      evidence: commonPractice,
    },
    cautions: ['caution.lye'],
  },
  pipe: {
    makes: true,
    loses: 'pieces',
    frees: false,
    handsOn: hands(35, 30),
    fills: 'pipe',
    batch: [spoonable],
    hosted: true,
    waits: {
      of: 'host',
      states: {
        'in-mould': freshlyPoured,
        'out-of-mould': { closes: 'takes-piping-until', loses: 'pieces' },
        'without-mould': { opens: 'holds-layer', closes: 'takes-piping-until', loses: 'pieces' },
        dipped: { opens: 'coat-turnable', closes: 'takes-piping-until', loses: 'pieces' },
        melted: { opens: 'glaze-set' },
        'melt-in-mould': skinned,
      },
      evidence: commonPractice,
    },
    cautions: ['caution.lye'],
  },
  'set-in': {
    makes: false,
    loses: 'pieces',
    frees: false,
    handsOn: hands(5, 25),
    hosted: true,
    after: [{ of: 'embed', kinds: ['unmould', 'cut'] }],
    waits: {
      of: 'host',
      states: {
        'in-mould': { opens: 'holds-layer', closes: 'takes-decor-until', loses: 'pieces' },
        piped: { closes: 'piping-skinned', loses: 'pieces' },
      },
      evidence: commonPractice,
    },
    // Soap that has dried for weeks sits loose in the batter, unless it is misted: the pieces are sound.
    embed: {
      of: 'own',
      states: {
        'out-of-mould': { closes: 'embeds-until', loses: 'looks' },
        'without-mould': { opens: 'firm', closes: 'embeds-until', loses: 'looks' },
        piped: { opens: 'piping-turnable', closes: 'embeds-until', loses: 'looks' },
      },
      evidence: commonPractice,
    },
    // What was pressed or set in holds by what sets around it, or by the water or batter that it was glued with.
    settles: [
      { before: ['turn'], leastMin: 240, evidence: commonPractice },
      { before: ['wrap'], leastMin: 1440, evidence: commonPractice },
    ],
    cautions: ['caution.fresh-soap'],
  },
  sprinkle: {
    makes: false,
    loses: 'looks',
    frees: false,
    handsOn: hands(3, 5),
    hosted: true,
    waits: {
      of: 'host',
      states: {
        'in-mould': { closes: 'takes-decor-until', loses: 'looks' },
        'without-mould': { closes: 'takes-decor-until', loses: 'looks' },
        dipped: { closes: 'coat-tacky-until', loses: 'looks' },
        piped: { closes: 'piping-skinned', loses: 'looks' },
      },
      evidence: commonPractice,
    },
    cautions: ['caution.fresh-soap', 'caution.dust'],
  },
  mist: {
    makes: false,
    loses: 'looks',
    frees: false,
    handsOn: hands(2, 3),
    waits: {
      of: 'own',
      // It keeps ash off, and helps what is put on; without it the pieces are sound.
      states: {
        'in-mould': { closes: 'skinned', loses: 'looks' },
        'without-mould': { closes: 'skinned', loses: 'looks' },
        dipped: { closes: 'coat-tacky-until', loses: 'looks' },
        piped: { closes: 'piping-skinned', loses: 'looks' },
      },
      evidence: commonPractice,
    },
    cautions: ['caution.alcohol', 'caution.fresh-soap'],
  },
  glaze: {
    makes: true,
    loses: 'looks',
    frees: false,
    handsOn: hands(15, 25),
    hosted: true,
    waits: {
      of: 'host',
      states: {
        'in-mould': { opens: 'firm' },
        'out-of-mould': { closes: 'takes-glaze-until', loses: 'looks' },
        'without-mould': { opens: 'firm', closes: 'takes-glaze-until', loses: 'looks' },
        dipped: { opens: 'coat-turnable', closes: 'takes-glaze-until', loses: 'looks' },
        piped: { opens: 'piping-firm', closes: 'takes-glaze-until', loses: 'looks' },
        melted: { opens: 'glaze-set' },
        'melt-in-mould': skinned,
      },
      evidence: fromMemory,
    },
    cautions: ['caution.hot-base', 'caution.alcohol'],
  },
  rest: {
    makes: false,
    loses: 'looks',
    frees: false,
    restMin: 60,
    handsOn: hands(0, 0),
    cautions: [],
  },
  turn: {
    makes: false,
    loses: 'looks',
    frees: false,
    handsOn: hands(2, 12),
    after: [{ of: 'cavity', kinds: ['unmould'] }],
    waits: {
      of: 'piece',
      states: {
        dipped: { opens: 'coat-turnable' },
        piped: { opens: 'piping-turnable' },
        melted: { opens: 'glaze-turnable' },
        'melt-in-mould': { opens: 'melt-firm' },
      },
      evidence: commonPractice,
    },
    cautions: ['caution.fresh-soap'],
  },
  cut: {
    makes: false,
    loses: 'pieces',
    frees: false,
    handsOn: hands(10, 20),
    after: [{ of: 'cavity', kinds: ['unmould'] }],
    // Soap that is unmoulded first is firm by then; a block that is cut in its mould needs only to stand.
    waits: {
      of: 'cavity',
      states: {
        'in-mould': { opens: 'cuttable', closes: 'cuttable-until', loses: 'pieces' },
        'without-mould': { opens: 'cuttable', closes: 'cuttable-until', loses: 'pieces' },
        'out-of-mould': { closes: 'cuttable-until', loses: 'pieces' },
        dipped: { opens: 'coat-turnable' },
        piped: { opens: 'piping-firm' },
        melted: { opens: 'glaze-set' },
        'melt-in-mould': { opens: 'melt-firm' },
      },
      evidence: commonPractice,
    },
    cautions: ['caution.fresh-soap'],
  },
  stamp: {
    makes: false,
    loses: 'looks',
    frees: false,
    handsOn: hands(5, 20),
    after: [{ of: 'cavity', kinds: ['unmould'] }],
    cautions: ['caution.fresh-soap'],
  },
  'zap-test': {
    makes: false,
    loses: 'looks',
    frees: false,
    handsOn: hands(10, 0),
    // What was cooked is tested in the pot or on the day, as it has no lye to lose in its cure.
    after: [
      { of: 'batch', kinds: ['cook', 'rebatch'] },
      { of: 'cavity', kinds: ['unmould', 'cut'], unlessCooked: true },
    ],
    waits: { ...onceCured, unlessCooked: true },
    cautions: ['caution.zap-test'],
  },
  wrap: {
    makes: false,
    loses: 'looks',
    frees: false,
    handsOn: hands(5, 60),
    after: [
      { of: 'piece', kinds: ['zap-test'] },
      { of: 'cavity', kinds: ['unmould', 'cut'] },
    ],
    waits: onceCured,
    cautions: [],
  },
  label: {
    makes: false,
    loses: 'looks',
    frees: false,
    handsOn: hands(5, 20),
    after: [
      { of: 'cavity', kinds: ['wrap'] },
      { of: 'piece', kinds: ['zap-test'] },
      { of: 'cavity', kinds: ['unmould', 'cut'] },
    ],
    waits: onceCured,
    cautions: [],
  },
};

/** Whether a stage of the kind puts its part onto or into another. */
export function isPutOnto(kind: StageKind): boolean {
  return stageKindFacts[kind].hosted === true;
}

/** Time at the bench for a stage: as the design says, else what its kind usually takes. */
export function handsOnOf({
  kind,
  setupMin,
  perPieceS,
}: Pick<Stage, 'kind' | 'setupMin' | 'perPieceS'>): HandsOn {
  if (setupMin === undefined && perPieceS === undefined) return stageKindFacts[kind].handsOn;
  return { setupMin: setupMin ?? 0, perPieceS: perPieceS ?? 0 };
}

/** How long a rest lasts, in minutes. @returns undefined for work */
export function restMinutesOf({ kind, restMin }: Pick<Stage, 'kind' | 'restMin'>): number | undefined {
  const usual = stageKindFacts[kind].restMin;
  return usual === undefined ? undefined : (restMin ?? usual);
}

/** Whether a stage of that kind turns something into its part; the part's clocks start at its end. */
export function makesPart(kind: StageKind): boolean {
  return stageKindFacts[kind].makes;
}

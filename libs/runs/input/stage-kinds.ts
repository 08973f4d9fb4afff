import type { CautionCode, ClosingState, OpeningState, Stage, StageKind } from '#contract';
import type { Evidence } from '#units';

/** How a part was made and where it is when a stage comes to it. */
export type PartCondition =
  | 'in-mould'
  | 'out-of-mould'
  | 'without-mould'
  | 'dipped'
  | 'piped'
  | 'melted'
  | 'decor';

/** What a stage waits for, or must come before, of a part. */
interface StateWait {
  readonly opens?: OpeningState;
  readonly closes?: ClosingState;
}

/** What a kind of stage asks of the soap, by how the part was made and where it is; nothing where nothing is said. */
export interface KindWait {
  /**
   * Whose states count: `cavity`, of all that was cast together with the part that is handled; `host`, of what that part
   * is put onto or into; `piece`, of all that is on the piece by then.
   */
  readonly of: 'cavity' | 'host' | 'piece';
  readonly states: Readonly<Partial<Record<PartCondition, StateWait>>>;
  readonly evidence: Evidence;
}

/** Kinds of stages that come first if there are any: of what was cast with the part itself, or with what it is put onto. */
interface KindOrder {
  readonly of: 'cavity' | 'host';
  readonly kinds: readonly StageKind[];
}

/** Time at the bench, as a maker would enter it. */
export interface HandsOn {
  /** However many pieces. */
  readonly setupMin: number;
  readonly perPieceS: number;
}

/** What the planner and the maker need to know of a kind of stage. */
export interface StageKindFacts {
  /** It turns a recipe, melt-and-pour base or dough into its part; the part's clocks start at its end. */
  readonly makes: boolean;
  /** It frees the mould that holds its part. */
  readonly frees: boolean;
  /** What it usually takes where the design does not say. Common practice, no source: for two dozen pieces by one maker. */
  readonly handsOn: HandsOn;
  /** What it makes is put onto or into another part. */
  readonly hosted?: true;
  readonly after?: KindOrder;
  readonly waits?: KindWait;
  /** Shown at every stage of the kind. */
  readonly cautions: readonly CautionCode[];
}

const commonPractice: Evidence = { kind: 'common practice' };
const fromMemory: Evidence = { kind: 'from memory' };

const hands = (setupMin: number, perPieceS: number): HandsOn => ({ setupMin, perPieceS });

const freshlyPoured: StateWait = { opens: 'holds-layer', closes: 'bonds-until' };

/**
 * One row per kind of stage, with the physics that come with it. To add a kind: a name in the contract, a row here, and
 * its test.
 */
export const stageKindFacts: Readonly<Record<StageKind, StageKindFacts>> = {
  'press-decor': { makes: true, frees: false, handsOn: hands(10, 60), cautions: ['caution.fresh-soap'] },
  pour: { makes: true, frees: false, handsOn: hands(35, 8), cautions: ['caution.lye'] },
  layer: {
    makes: true,
    frees: false,
    handsOn: hands(30, 8),
    hosted: true,
    waits: { of: 'host', states: { 'in-mould': freshlyPoured }, evidence: commonPractice },
    cautions: ['caution.lye'],
  },
  unmould: {
    makes: false,
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
      },
      evidence: commonPractice,
    },
    cautions: ['caution.fresh-soap'],
  },
  patch: {
    makes: false,
    frees: false,
    handsOn: hands(5, 30),
    after: { of: 'cavity', kinds: ['unmould'] },
    cautions: ['caution.fresh-soap'],
  },
  dip: {
    makes: true,
    frees: false,
    handsOn: hands(35, 15),
    hosted: true,
    after: { of: 'host', kinds: ['unmould'] },
    waits: {
      of: 'host',
      states: {
        'out-of-mould': { closes: 'takes-coat-until' },
        'without-mould': { opens: 'firm', closes: 'takes-coat-until' },
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
    frees: false,
    handsOn: hands(35, 30),
    hosted: true,
    waits: {
      of: 'host',
      states: {
        'in-mould': freshlyPoured,
        'out-of-mould': { closes: 'takes-piping-until' },
        'without-mould': { opens: 'holds-layer', closes: 'takes-piping-until' },
        dipped: { opens: 'coat-turnable', closes: 'takes-piping-until' },
        melted: { opens: 'glaze-set' },
      },
      evidence: commonPractice,
    },
    cautions: ['caution.lye'],
  },
  'set-in': {
    makes: false,
    frees: false,
    handsOn: hands(5, 25),
    hosted: true,
    waits: {
      of: 'host',
      states: {
        'in-mould': { opens: 'holds-layer', closes: 'takes-decor-until' },
        piped: { closes: 'piping-skinned' },
      },
      evidence: commonPractice,
    },
    cautions: ['caution.fresh-soap'],
  },
  glaze: {
    makes: true,
    frees: false,
    handsOn: hands(15, 25),
    hosted: true,
    waits: {
      of: 'host',
      states: {
        'in-mould': { opens: 'firm' },
        'out-of-mould': { closes: 'takes-glaze-until' },
        'without-mould': { opens: 'firm', closes: 'takes-glaze-until' },
        dipped: { opens: 'coat-turnable', closes: 'takes-glaze-until' },
        piped: { opens: 'piping-firm', closes: 'takes-glaze-until' },
        melted: { opens: 'glaze-set' },
      },
      evidence: fromMemory,
    },
    cautions: ['caution.hot-base', 'caution.alcohol'],
  },
  turn: {
    makes: false,
    frees: false,
    handsOn: hands(2, 12),
    after: { of: 'cavity', kinds: ['unmould'] },
    waits: {
      of: 'piece',
      states: {
        dipped: { opens: 'coat-turnable' },
        piped: { opens: 'piping-turnable' },
        melted: { opens: 'glaze-turnable' },
      },
      evidence: commonPractice,
    },
    cautions: ['caution.fresh-soap'],
  },
  cut: {
    makes: false,
    frees: false,
    handsOn: hands(10, 20),
    after: { of: 'cavity', kinds: ['unmould'] },
    // Soap that is unmoulded first is firm by then; a block that is cut in its mould needs only to stand.
    waits: {
      of: 'cavity',
      states: {
        'in-mould': { opens: 'cuttable', closes: 'cuttable-until' },
        'without-mould': { opens: 'cuttable', closes: 'cuttable-until' },
        'out-of-mould': { closes: 'cuttable-until' },
        dipped: { opens: 'coat-turnable' },
        piped: { opens: 'piping-firm' },
        melted: { opens: 'glaze-set' },
      },
      evidence: commonPractice,
    },
    cautions: ['caution.fresh-soap'],
  },
  stamp: {
    makes: false,
    frees: false,
    handsOn: hands(5, 20),
    after: { of: 'cavity', kinds: ['unmould'] },
    cautions: ['caution.fresh-soap'],
  },
  wrap: {
    makes: false,
    frees: false,
    handsOn: hands(5, 60),
    after: { of: 'cavity', kinds: ['unmould', 'cut'] },
    waits: {
      of: 'piece',
      states: {
        'in-mould': { opens: 'cured' },
        'out-of-mould': { opens: 'cured' },
        'without-mould': { opens: 'cured' },
        dipped: { opens: 'cured' },
        piped: { opens: 'cured' },
      },
      evidence: commonPractice,
    },
    cautions: [],
  },
};

/** Time at the bench for a stage: as the design says, else what its kind usually takes. */
export function handsOnOf({
  kind,
  setupMin,
  perPieceS,
}: Pick<Stage, 'kind' | 'setupMin' | 'perPieceS'>): HandsOn {
  if (setupMin === undefined && perPieceS === undefined) return stageKindFacts[kind].handsOn;
  return { setupMin: setupMin ?? 0, perPieceS: perPieceS ?? 0 };
}

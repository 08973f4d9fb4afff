import { describe, expect, it } from 'vitest';
import { partKinds, stageKinds, type PieceDesign, type Stage } from '#contract';
import { states } from '#clocks';
import { impliedOrder } from '#runs';
import { handsOnOf, stageKindFacts } from './stage-kinds.js';
import { stateHasClock } from './states-of-parts.js';
import { askedBy, piece } from '../../../tests/support/told-stages.js';

const asked = askedBy(impliedOrder);

/** Common practice, no source: what each kind of stage waits for and what closes it. */
const practice: readonly (readonly [string, string, string[], string[]])[] = [
  ['making lye', 'make-lye base', ['make-lye base', 'pour base'], []],
  ['melting fats', 'melt-fats base', ['melt-fats base', 'pour base'], []],
  [
    'mixing',
    'mix base',
    ['make-lye base', 'melt-fats base', 'mix base', 'pour base'],
    ['base lye-cool', 'base before lye-keeps-until', 'base fats-cool'],
  ],
  [
    'mixing for a layer',
    'mix top',
    ['pour base', 'mix top', 'layer top', 'unmould top'],
    ['base holds-layer'],
  ],
  [
    'mixing for a coat',
    'mix coat',
    ['pour base', 'unmould base', 'mix coat', 'dip coat'],
    ['after unmould-base'],
  ],
  ['mixing with lye that is ready', 'mix base', ['mix base', 'pour base'], []],
  [
    'a pour that mixes itself',
    'pour base',
    ['make-lye base', 'melt-fats base', 'pour base'],
    ['after make-lye-base', 'after melt-fats-base'],
  ],
  [
    'splitting and colouring',
    'split base',
    ['mix base', 'split base', 'pour base'],
    ['base emulsion', 'base before medium-trace'],
  ],
  [
    'a pour of what was mixed before',
    'pour base',
    ['mix base', 'pour base'],
    ['base emulsion', 'base before medium-trace'],
  ],
  [
    'a pour of what was split',
    'pour base',
    ['mix base', 'split base', 'pour base'],
    ['after split-base', 'base emulsion', 'base before medium-trace'],
  ],
  [
    'piping what was mixed before',
    'pipe foam',
    ['mix foam', 'pipe foam'],
    ['foam medium-trace', 'foam before stiff'],
  ],
  ['cooking', 'cook base', ['mix base', 'cook base', 'pour base'], ['base light-trace']],
  [
    'casting what was cooked',
    'pour base',
    ['mix base', 'cook base', 'pour base'],
    ['base before spoonable-until'],
  ],
  [
    'casting what was cooked and tested in the pot',
    'pour base',
    ['mix base', 'cook base', 'zap-test base', 'pour base'],
    // It counts from the test, until which it stays on the heat.
    ['base before spoonable-until'],
  ],
  [
    'testing what was cooked, in the pot',
    'zap-test base',
    ['mix base', 'cook base', 'zap-test base', 'pour base'],
    ['after cook-base'],
  ],
  [
    'testing what was melted again, on the day, without waiting for its mould or its cure',
    'zap-test base',
    ['rebatch base', 'pour base', 'zap-test base', 'unmould base'],
    [],
  ],
  [
    'wrapping what was cooked',
    'wrap base',
    ['mix base', 'cook base', 'pour base', 'unmould base', 'wrap base'],
    ['after unmould-base', 'base cured'],
  ],
  ['melting base', 'melt-base star', ['melt-base star', 'pour star', 'unmould star'], []],
  [
    'casting melted base',
    'pour star',
    ['melt-base star', 'pour star', 'unmould star'],
    ['after melt-base-star'],
  ],
  [
    'unmoulding melted base',
    'unmould star',
    ['melt-base star', 'pour star', 'unmould star'],
    ['star melt-firm'],
  ],
  [
    'a second pour of melted base onto the first',
    'layer rim',
    ['pour star', 'layer rim', 'unmould star'],
    ['star glaze-set'],
  ],
  [
    'setting in what was cast from melted base',
    'set-in star',
    ['pour star', 'unmould star', 'pour base', 'set-in star', 'unmould base'],
    ['after unmould-star', 'base holds-layer', 'base before takes-decor-until'],
  ],
  ['melting soap again', 'rebatch base', ['mix base', 'rebatch base', 'pour base'], ['after mix-base']],
  ['a pour', 'pour base', ['pour base'], []],
  ['pressed decor', 'press-decor shells', ['pour base', 'press-decor shells'], []],
  [
    'decor on a coat',
    'set-in shells',
    ['press-decor shells', 'pour base', 'unmould base', 'dip coat', 'set-in shells'],
    ['after dip-coat'],
  ],
  [
    'a layer',
    'layer top',
    ['pour base', 'layer top', 'unmould top'],
    ['base holds-layer', 'base before bonds-until'],
  ],
  ['unmoulding', 'unmould base', ['pour base', 'unmould base'], ['base firm']],
  ['patching', 'patch base', ['pour base', 'patch base', 'unmould base'], ['after unmould-base']],
  ['stamping', 'stamp base', ['pour base', 'unmould base', 'stamp base'], ['after unmould-base']],
  [
    'dipping an unmoulded base',
    'dip coat',
    ['pour base', 'unmould base', 'dip coat'],
    ['after unmould-base', 'base before takes-coat-until'],
  ],
  [
    'dipping a base that is unmoulded further down the list',
    'dip coat',
    ['pour base', 'dip coat', 'unmould base'],
    ['after unmould-base', 'base before takes-coat-until'],
  ],
  [
    'a second coat over piping',
    'dip coat',
    ['pour base', 'unmould base', 'pipe foam', 'dip coat'],
    ['foam piping-turnable'],
  ],
  [
    'piping onto an unmoulded base',
    'pipe foam',
    ['pour base', 'unmould base', 'pipe foam'],
    ['after unmould-base', 'base before takes-piping-until'],
  ],
  [
    'piping onto a loaf in its mould',
    'pipe foam',
    ['pour base', 'pipe foam', 'unmould base'],
    ['base holds-layer', 'base before bonds-until'],
  ],
  [
    'piping onto a coat',
    'pipe foam',
    ['pour base', 'unmould base', 'dip coat', 'pipe foam'],
    ['coat coat-turnable', 'coat before takes-piping-until'],
  ],
  [
    'decor for soap that was just poured',
    'set-in shells',
    ['pour base', 'press-decor shells', 'set-in shells', 'unmould base'],
    ['base holds-layer', 'base before takes-decor-until'],
  ],
  [
    'decor for piping',
    'set-in shells',
    ['pour base', 'unmould base', 'pipe foam', 'set-in shells'],
    ['foam before piping-skinned'],
  ],
  [
    'decor that is told as set into the piping itself',
    'set-in foam',
    ['pour base', 'unmould base', 'pipe foam', 'set-in foam'],
    ['foam before piping-skinned'],
  ],
  [
    'sprinkling onto a pour',
    'sprinkle base',
    ['pour base', 'sprinkle base', 'unmould base'],
    ['base before takes-decor-until'],
  ],
  [
    'sprinkling onto a coat',
    'sprinkle coat',
    ['pour base', 'unmould base', 'dip coat', 'sprinkle coat'],
    ['coat before coat-tacky-until'],
  ],
  ['misting a pour', 'mist base', ['pour base', 'mist base', 'unmould base'], ['base before skinned']],
  [
    'misting piping',
    'mist foam',
    ['pour base', 'unmould base', 'pipe foam', 'mist foam'],
    ['foam before piping-skinned'],
  ],
  ['a rest between pour and unmoulding', 'rest base', ['pour base', 'rest base', 'unmould base'], []],
  [
    'what comes after a rest',
    'patch base',
    ['pour base', 'unmould base', 'rest base', 'patch base'],
    ['after unmould-base', 'after rest-base'],
  ],
  [
    'a rest to a trace',
    'pour base',
    ['mix base', 'rest base', 'pour base'],
    ['after rest-base', 'base emulsion', 'base before medium-trace'],
  ],
  [
    'a glaze on an unmoulded base',
    'glaze drops',
    ['pour base', 'unmould base', 'glaze drops'],
    ['after unmould-base', 'base before takes-glaze-until'],
  ],
  [
    'a glaze on a coat',
    'glaze drops',
    ['pour base', 'unmould base', 'dip coat', 'glaze drops'],
    ['coat coat-turnable', 'coat before takes-glaze-until'],
  ],
  [
    'a glaze on piping',
    'glaze drops',
    ['pour base', 'unmould base', 'pipe foam', 'glaze drops'],
    ['foam piping-firm', 'foam before takes-glaze-until'],
  ],
  [
    'turning',
    'turn base',
    ['pour base', 'unmould base', 'dip coat', 'pipe foam', 'glaze drops', 'turn base'],
    ['after unmould-base', 'coat coat-turnable', 'foam piping-turnable', 'drops glaze-turnable'],
  ],
  [
    'cutting what was unmoulded',
    'cut base',
    ['pour base', 'unmould base', 'cut base'],
    ['after unmould-base', 'base before cuttable-until'],
  ],
  [
    'cutting a block that nothing unmoulds',
    'cut loose',
    ['pour loose', 'cut loose'],
    ['loose cuttable', 'loose before cuttable-until'],
  ],
  [
    'wrapping',
    'wrap base',
    ['pour base', 'unmould base', 'dip coat', 'glaze drops', 'wrap base'],
    ['after unmould-base', 'base cured', 'coat cured'],
  ],
  [
    'testing for lye',
    'zap-test base',
    ['pour base', 'unmould base', 'zap-test base'],
    ['after unmould-base', 'base cured'],
  ],
  [
    'wrapping what is tested',
    'wrap base',
    ['pour base', 'unmould base', 'zap-test base', 'wrap base'],
    ['after zap-test-base', 'base cured'],
  ],
  [
    'labelling',
    'label base',
    ['pour base', 'unmould base', 'wrap base', 'label base'],
    ['after wrap-base', 'base cured'],
  ],
];

describe('what the kinds of stages bring with them', () => {
  it.each(practice)('%s', (_, stage, stages, expected) => {
    expect(asked(stage, stages)).toEqual(expected);
  });

  it('has a row for every kind, with evidence for what it asks, of states that soap can have', () => {
    const tried = new Set(practice.map(([, stage]) => stage.split(' ')[0]));
    expect(tried).toEqual(new Set(stageKinds));
    for (const waits of Object.values(stageKindFacts).flatMap((row) => [row.waits, row.embed])) {
      if (waits === undefined) continue;
      expect(['common practice', 'from memory']).toContain(waits.evidence.kind);
      for (const [condition, { opens, closes }] of Object.entries(waits.states)) {
        const kind = condition.startsWith('melt') ? 'melt-and-pour' : 'batch';
        expect(partKinds).toContain(kind);
        for (const state of [opens, closes]) {
          if (state !== undefined) expect(stateHasClock(kind, state), state).toBe(true);
        }
      }
    }
    // Nothing closes before it opens, be it the slowest rule of each that counts.
    expect(states['holds-layer'].baseMin).toBeLessThan(states['takes-decor-until'].baseMin);
    expect(states['takes-decor-until'].baseMin).toBeLessThan(states['bonds-until'].baseMin);
  });

  it('takes what its kind usually takes where a stage leaves both open, and else what it says', () => {
    expect(handsOnOf({ kind: 'cut' })).toEqual({ setupMin: 10, perPieceS: 20 });
    expect(handsOnOf({ kind: 'cut', setupMin: 4 })).toEqual({ setupMin: 4, perPieceS: 0 });
    expect(handsOnOf({ kind: 'cut', perPieceS: 9 })).toEqual({ setupMin: 0, perPieceS: 9 });
    expect(handsOnOf({ kind: 'cut', setupMin: 0, perPieceS: 0 })).toEqual({ setupMin: 0, perPieceS: 0 });
    for (const { handsOn, restMin } of Object.values(stageKindFacts)) {
      expect(handsOn.setupMin + handsOn.perPieceS > 0).toBe(restMin === undefined);
    }
  });

  const coated = ['pour base', 'unmould base', 'dip coat'] as const;
  const wait = (more: object) => [{ stage: 'dip-coat', part: 'base', ...more }] as PieceDesign['waits'];

  it('gives way to what the design says of the same stage and part', () => {
    const closes = 'pliable-until';
    expect(asked('dip coat', coated, { waits: wait({ closes }) })).toEqual(['after unmould-base']);
    const links = [{ from: 'unmould-base', to: 'dip-coat', atLeastMin: 0, atMostMin: 60 }];
    expect(asked('dip coat', coated, { links })).toEqual([]);
    const rest = [{ from: 'dip-coat', to: 'turn-coat', atLeastMin: 720 }];
    expect(asked('turn coat', [...coated, 'turn coat'], { links: rest })).toEqual([]);
    const moment = [{ from: 'dip-coat', to: 'turn-coat', atLeastMin: 10 }];
    expect(asked('turn coat', [...coated, 'turn coat'], { links: moment })).toEqual(['coat coat-turnable']);
  });

  it('is left out where the design goes without it, for that state of that part alone', () => {
    const without = [
      { stage: 'pipe-foam', part: 'coat', state: 'coat-turnable', reason: 'I pipe onto the wet coat' },
    ] as PieceDesign['without'];
    const stages = [...coated, 'pipe foam'];
    expect(asked('pipe foam', stages, { without })).toEqual(['coat before takes-piping-until']);
    expect(asked('pipe foam', [...stages, 'turn coat'], { without })).toHaveLength(1);
    expect(asked('turn coat', [...stages, 'turn coat'], { without })).toContain('coat coat-turnable');
  });

  it('counts from what the stage says it is put onto, else from what was made last before it', () => {
    const stages = ['pour base', 'unmould base', 'dip coat', 'pipe foam', 'glaze drops'];
    const onto = (part: string): Stage[] =>
      piece(stages).stages.map((stage) => (stage.kind === 'glaze' ? { ...stage, onto: part } : stage));
    expect(asked('glaze drops', stages)[0]).toBe('foam piping-firm');
    expect(asked('glaze drops', stages, { stages: onto('coat') })[0]).toBe('coat coat-turnable');
    // By the links, not by the list.
    const links = [{ from: 'glaze-drops', to: 'pipe-foam', atLeastMin: 0 }];
    expect(asked('glaze drops', stages, { links })[0]).toBe('coat coat-turnable');
  });

  it('counts from the next part below where one is dropped', () => {
    const design = piece(['pour base', 'unmould base', 'dip coat', 'glaze drops']);
    const waits = impliedOrder(design, new Set(['coat'])).waits.filter(
      ({ stage }) => stage === 'glaze-drops',
    );
    expect(waits).toEqual([{ stage: 'glaze-drops', part: 'base', closes: 'takes-glaze-until' }]);
  });
});

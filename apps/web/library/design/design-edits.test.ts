import { describe, expect, it } from 'vitest';
import { valueAt, type Value } from '../../form/values.js';
import { de } from '../../words/de/index.js';
import { en } from '../../words/en/index.js';
import {
  conditionsOf,
  mixedWith,
  withoutPart,
  withoutStage,
  withoutWait,
  withMeltMould,
  withPartKind,
  withPartTitle,
  withPreparation,
  withStage,
  withStageKind,
  withStagePart,
} from './design-edits.js';
import { designAfter } from './patterns/patterns.js';
import { pieceTitles } from './patterns/use-piece-titles.js';

const titles = pieceTitles(en);

const design: Value = {
  parts: [
    { key: 'base', kind: 'batch' },
    { key: 'drops', kind: 'melt-and-pour' },
  ],
  stages: [
    { key: 'pour', part: 'base' },
    { key: 'unmould', part: 'base' },
    { key: 'drip', part: 'drops' },
    { key: 'turn', part: 'base', onto: 'drops' },
  ],
  links: [
    { from: 'unmould', to: 'drip' },
    { from: 'drip', to: 'turn' },
  ],
  waits: [
    { stage: 'unmould', part: 'base', opens: 'firm' },
    { stage: 'turn', part: 'drops', opens: 'glaze-set' },
  ],
  without: [
    { stage: 'turn', part: 'drops', state: 'glaze-turnable', reason: 'r' },
    { stage: 'drip', part: 'base', state: 'takes-glaze-until', reason: 'r' },
  ],
};

describe('a design that is edited', () => {
  it('tells what a stage waits for, and what it goes without', () => {
    expect(conditionsOf(design, 'turn')).toEqual({ links: [1], waits: [1], without: [0] });
    expect(conditionsOf(design, 'pour')).toEqual({ links: [], waits: [], without: [] });
  });

  it('loses with a stage what speaks of it', () => {
    const left = withoutStage(design, 2);
    expect(left).toMatchObject({ stages: { length: 3 }, links: [], waits: { length: 2 } });
    expect(left).toMatchObject({ without: [{ stage: 'turn' }] });
  });

  it('loses with a part its stages, what waits for it and what is put onto it', () => {
    const left = withoutPart(design, 1);
    expect(left).toMatchObject({ parts: [{ key: 'base' }], links: [], without: [] });
    expect(left).toMatchObject({ waits: [{ stage: 'unmould' }], stages: [{}, {}, { key: 'turn' }] });
    expect(valueAt(left, ['stages', 2])).not.toHaveProperty('onto');
    expect(withoutPart(design, 0)).toMatchObject({ stages: [{ key: 'drip' }], waits: [], links: [] });
  });

  it('gains a stage where stages of its kind usually are, on what was cast', () => {
    const coated = designAfter('coated', {}, titles);
    const kinds = (made: Value): string[] =>
      (valueAt(made, ['stages']) as { kind: string }[]).map(({ kind }) => kind);
    expect(kinds(withStage(coated, 'patch', titles))).toEqual(['pour', 'unmould', 'patch', 'dip', 'turn']);
    expect(kinds(withStage(coated, 'wrap', titles))).toEqual(['pour', 'unmould', 'dip', 'turn', 'wrap']);
    expect(withStage(coated, 'patch', titles)).toMatchObject({
      stages: { 2: { key: 'patch', title: 'Patch', part: 'base' } },
    });
  });

  it('gains the test that cooked soap needs along with the cooking, once', () => {
    const kinds = (made: Value): string[] =>
      (valueAt(made, ['stages']) as { kind: string }[]).map(({ kind }) => kind);
    const cooked = withStage(designAfter('cast', {}, titles), 'cook', titles);
    expect(kinds(cooked)).toEqual(['cook', 'pour', 'unmould', 'zap-test']);
    expect(kinds(withStage(cooked, 'rebatch', titles)).filter((kind) => kind === 'zap-test')).toHaveLength(1);
    // The test of one pot says nothing of another; parts of one batch share theirs.
    const tests = (batch?: string): number => {
      const other = { key: 'other', title: 'Other', kind: 'batch', ...(batch !== undefined && { batch }) };
      const parts = [
        { key: 'base', title: 'Base', kind: 'batch', mould: 'm' },
        { ...other, mould: 'm' },
      ];
      const stages = [
        { key: 'pour', kind: 'pour', part: 'base', title: 'Pour' },
        { key: 'layer', kind: 'layer', part: 'other', title: 'Layer' },
        { key: 'test', kind: 'zap-test', part: 'other', title: 'Test' },
      ];
      const made = withStage({ parts, stages }, 'cook', titles);
      return kinds(made).filter((kind) => kind === 'zap-test').length;
    };
    expect([tests(), tests('base')]).toEqual([2, 1]);
  });

  it('casts melted base once it has a mould, and pours it onto the piece again without one', () => {
    const glazed = {
      parts: [{ key: 'drops', kind: 'melt-and-pour', title: 'Drops', perPieceMl: 2 }],
      stages: [{ key: 'glaze', kind: 'glaze', part: 'drops', title: titles.stage('glaze', 'Drops') }],
    };
    const cast = withMeltMould(glazed, 0, 'star', titles);
    expect(cast).toMatchObject({
      parts: [{ mould: 'star', perPieceMl: 2 }],
      stages: [
        { key: 'glaze', kind: 'pour', title: 'Pour the drops' },
        { kind: 'unmould', part: 'drops' },
      ],
    });
    // Another mould is no other work.
    expect(withMeltMould(cast, 0, 'moon', titles)).toMatchObject({ stages: { length: 2 } });
    expect(withMeltMould(cast, 0, undefined, titles)).toEqual({
      ...glazed,
      parts: [{ ...glazed.parts[0], mould: undefined }],
    });
  });

  it('takes a stage that makes something for the part that nothing makes yet', () => {
    const open = { parts: [{ key: 'a', kind: 'batch', title: 'Star' }], stages: [] };
    expect(
      withStage({ parts: [{ key: 'd', kind: 'decor' }, ...open.parts], stages: [] }, 'dip', titles),
    ).toEqual({
      parts: [{ key: 'd', kind: 'decor' }, ...open.parts],
      stages: [{ key: 'dip-into-the-star', title: 'Dip into the star', kind: 'dip', part: 'a' }],
    });
  });

  it('calls stages after a part as long as the maker does not call them otherwise', () => {
    const coated = designAfter('coated', {}, titles);
    const named = withPartTitle(coated, 1, 'Pearl veil', titles);
    expect(named).toMatchObject({
      parts: [{ title: 'Base' }, { title: 'Pearl veil' }],
      stages: [{ title: 'Pour the base' }, {}, { title: 'Dip into the pearl veil' }, { title: 'Turn' }],
    });
    const emptied = withPartTitle(named, 1, undefined, titles);
    expect(withPartTitle(emptied, 1, 'Veil', titles)).toMatchObject({
      stages: [{}, {}, { title: 'Dip into the veil' }, {}],
    });
    // In another language nothing is called so, and nothing changes.
    expect(withPartTitle(named, 1, 'Schleier', pieceTitles(de))).toMatchObject({
      stages: [{}, {}, { title: 'Dip into the pearl veil' }, {}],
    });
  });

  it('calls a stage by what is done at it, unless the maker calls it otherwise', () => {
    const piped = designAfter('piped', {}, titles);
    expect(withStageKind(piped, 2, 'dip', titles)).toMatchObject({
      stages: [{}, {}, { kind: 'dip', title: 'Dip into the topping' }],
    });
    expect(withStagePart(piped, 2, 'base', titles)).toMatchObject({
      stages: [{}, {}, { part: 'base', title: 'Pipe the base' }],
    });
    const own = { parts: [], stages: [{ kind: 'pipe', title: 'My way' }] };
    expect(withStageKind(own, 0, 'dip', titles)).toMatchObject({
      stages: [{ kind: 'dip', title: 'My way' }],
    });
  });

  it('begins a part of another kind afresh under its name, made in a stage that fits', () => {
    const part = { key: 'a', title: 'Star', kind: 'batch', recipe: 'base', perPieceMl: 3 };
    const stages = [
      { key: 'p', title: 'Pour the star', kind: 'pour', part: 'a' },
      { key: 'u', title: 'Unmould', kind: 'unmould', part: 'a' },
    ];
    expect(withPartKind({ parts: [part], stages }, 0, 'decor', titles)).toEqual({
      parts: [{ key: 'a', title: 'Star', kind: 'decor', perPiece: 1 }],
      stages: [{ key: 'p', title: 'Press the star', kind: 'press-decor', part: 'a' }, stages[1]],
    });
  });

  it('makes the lye, the fats and the batter in stages of their own, once for what is mixed together', () => {
    const coated = designAfter('coated', {}, titles);
    const kinds = (made: Value): unknown[] =>
      (valueAt(made, ['stages']) as { kind: string }[]).map(({ kind }) => kind);
    const prepared = withPreparation(coated, 1, titles);
    expect(kinds(prepared)).toEqual(['pour', 'unmould', 'make-lye', 'melt-fats', 'mix', 'dip', 'turn']);
    expect(withPreparation(prepared, 1, titles)).toBe(prepared);
    const { parts, ...rest } = prepared as { readonly parts: readonly object[] };
    const together = { ...rest, parts: [{ ...parts[0], batch: 'coat' }, parts[1]] } as Value;
    expect(withPreparation(together, 0, titles)).toBe(together);
    expect(kinds(withPreparation(prepared, 0, titles)).slice(0, 4)).toEqual([
      ...['make-lye', 'melt-fats', 'mix', 'pour'],
    ]);
  });

  it('mixes two parts at once, and prepares their batch once', () => {
    const coated = designAfter('coated', {}, titles);
    const together = mixedWith(withPreparation(coated, 1, titles), 1, 0, titles);
    expect(together).toMatchObject({ parts: [{ key: 'base' }, { key: 'coat', batch: 'base' }] });
    const stages = valueAt(together, ['stages']) as { kind: string; part: string }[];
    expect(stages.map(({ kind, part }) => `${kind} ${part}`)).toEqual([
      ...[
        'make-lye base',
        'melt-fats base',
        'mix base',
        'pour base',
        'unmould base',
        'dip coat',
        'turn base',
      ],
    ]);
    expect(valueAt(mixedWith(together, 1, undefined, titles), ['parts', 1])).not.toHaveProperty('batch');
  });

  it('goes without a wait, for a reason that is still to be given', () => {
    expect(withoutWait({}, 'dip', 'base', 'takes-coat-until')).toEqual({
      without: [{ stage: 'dip', part: 'base', state: 'takes-coat-until' }],
    });
  });
});

import { describe, expect, it } from 'vitest';
import { parseWith, pieceDesign } from '#contract';
import type { Value } from '../../form/values.js';
import {
  conditionsOf,
  withoutPart,
  withoutStage,
  withPart,
  withPartKind,
  withStage,
} from './design-edits.js';

const design: Value = {
  parts: [
    { key: 'base', kind: 'batch' },
    { key: 'drops', kind: 'melt-and-pour' },
  ],
  stages: [
    { key: 'pour', part: 'base' },
    { key: 'unmould', part: 'base' },
    { key: 'drip', part: 'drops' },
    { key: 'turn', part: 'base' },
  ],
  links: [
    { from: 'unmould', to: 'drip' },
    { from: 'drip', to: 'turn' },
  ],
  waits: [
    { stage: 'unmould', part: 'base', opens: 'firm' },
    { stage: 'turn', part: 'drops', opens: 'glaze-set' },
  ],
};

describe('a design that is edited', () => {
  it('tells what a stage waits for', () => {
    expect(conditionsOf(design, 'turn')).toEqual({ links: [1], waits: [1] });
    expect(conditionsOf(design, 'pour')).toEqual({ links: [], waits: [] });
  });

  it('loses with a stage what speaks of it', () => {
    expect(withoutStage(design, 2)).toMatchObject({ stages: { length: 3 }, links: [], waits: { length: 2 } });
  });

  it('loses with a part its stages and what waits for it', () => {
    const left = withoutPart(design, 1);
    expect(left).toMatchObject({ parts: [{ key: 'base' }], links: [] });
    expect(left).toMatchObject({ waits: [{ stage: 'unmould' }], stages: [{}, {}, { key: 'turn' }] });
    expect(withoutPart(design, 0)).toMatchObject({ stages: [{ key: 'drip' }], waits: [], links: [] });
  });

  it('gains with a part the stage that makes it', () => {
    const more = withPart(withPart(design, 'decor', 'Shells', 'Press'), 'decor', 'Stars', 'Press');
    expect(more).toMatchObject({
      parts: [{}, {}, { key: 'decor', perPiece: 1 }, { key: 'decor-2' }],
      stages: [
        {},
        {},
        {},
        {},
        { key: 'press-decor', part: 'decor' },
        { key: 'press-decor-2', part: 'decor-2' },
      ],
    });
    expect(withStage({}, 'wrap', 'Wrap')).toEqual({
      stages: [{ key: 'wrap', title: 'Wrap', kind: 'wrap', part: undefined }],
    });
  });

  it('begins a part of another kind afresh under its name', () => {
    const part = { key: 'a', title: 'A', kind: 'batch', recipe: 'base', perPieceMl: 3 };
    expect(withPartKind({ parts: [part] }, 0, 'decor')).toEqual({
      parts: [{ key: 'a', title: 'A', kind: 'decor', perPiece: 1 }],
    });
  });

  it('is one that the contract reads, once amounts and recipe are told', () => {
    const made = withPart(
      withPart({ key: 'd', title: 'D' }, 'batch', 'Base', 'Pour'),
      'decor',
      'Shells',
      'Press',
    );
    const told = {
      ...(made as object),
      parts: [{ ...(made as never as { parts: object[] }).parts[0], recipe: 'r', mould: 'm' }],
    };
    expect(parseWith(pieceDesign, told).ok).toBe(true);
  });
});

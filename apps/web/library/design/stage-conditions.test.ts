import { describe, expect, it } from 'vitest';
import type { Value } from '../../form/values.js';
import { en } from '../../words/en/index.js';
import { stageConditions } from './stage-conditions.js';
import { withoutWait } from './design-edits.js';
import { designAfter } from './patterns/patterns.js';
import { pieceTitles } from './patterns/use-piece-titles.js';

const coated = designAfter('coated', { mould: 'tray' }, pieceTitles(en));
const of = (design: Value, stage: string) =>
  stageConditions(design, en.library, { length: (minutes) => `${String(minutes)} minutes` }).get(stage);

describe('when a stage may be done', () => {
  it('comes with its kind; firmness cannot be refused, other waits can', () => {
    expect(of(coated, 'unmould')?.implied).toEqual([{ text: 'once “Base” is firm enough to unmould' }]);
    expect(of(coated, 'dip-into-the-coat')?.implied).toEqual([
      { text: 'after “Unmould”' },
      {
        text: 'while “Base” is fresh enough to bond with a coat',
        refusable: { part: 'base', state: 'takes-coat-until' },
      },
    ]);
  });

  it('is what the design says itself, in its own words', () => {
    const told = {
      ...(coated as object),
      links: [{ from: 'pour-the-base', to: 'turn', atLeastMin: 60, atMostMin: 90 }],
      waits: [{ stage: 'turn', part: 'coat', opens: 'coat-turnable' }],
    };
    expect(of(told, 'turn')?.own).toEqual([
      '60 minutes to 90 minutes after “Pour the base”',
      'once the coat “Coat” can be turned',
    ]);
  });

  it('lacks what the piece goes without, which is told apart', () => {
    const without = withoutWait(coated, 'dip-into-the-coat', 'base', 'takes-coat-until');
    const { implied, without: gone } = of(without, 'dip-into-the-coat') ?? {};
    expect(implied).toEqual([{ text: 'after “Unmould”' }]);
    expect(gone).toEqual(['while “Base” is fresh enough to bond with a coat']);
  });
});

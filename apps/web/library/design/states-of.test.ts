import { expect, it } from 'vitest';
import * as contract from '#contract';
import { checkDesign } from '#runs';
import { statesOf } from './states-of.js';

it.each(contract.partKinds)('offers for a part of kind %s just the states that it has', (kind) => {
  const part = { key: 'a', title: 'A', perPieceMl: 5, perPiece: 1, recipe: 'base' };
  const { recipe, perPieceMl, perPiece, ...named } = part;
  const parts = {
    batch: { ...named, recipe, perPieceMl },
    'melt-and-pour': { ...named, perPieceMl },
    decor: { ...named, perPiece },
  };
  const design = (wait: object) => {
    const read = contract.parseWith(contract.pieceDesign, {
      key: 'd',
      title: 'D',
      parts: [{ kind, ...parts[kind] }],
      stages: [
        { key: 'make', title: 'Make', kind: 'pour', part: 'a' },
        { key: 'next', title: 'Next', kind: 'patch', part: 'a' },
      ],
      waits: [{ stage: 'next', part: 'a', ...wait }],
    });
    if (!read.ok) throw new Error(JSON.stringify(read.issues));
    return read.value;
  };
  const around = { recipes: [{ key: 'base' }], fats: [], moulds: [], workshop: { equipment: [] } } as never;
  const has = (wait: object) =>
    !checkDesign(design(wait), around).some(({ code }) => code === 'design.state-without-clock');
  const { opening, closing } = statesOf(kind);
  expect(contract.openingStates.filter((opens) => has({ opens })).sort()).toEqual([...opening].sort());
  expect(contract.closingStates.filter((closes) => has({ closes })).sort()).toEqual([...closing].sort());
});

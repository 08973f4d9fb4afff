import { expect, it } from 'vitest';
import * as contract from '#contract';
import { checkDesign } from '#runs';
import { amountWays, partKinds, stageKinds, statesOf } from './names.js';

it('offers what the contract knows', () => {
  expect(stageKinds).toEqual(contract.stageKinds);
  const ways = contract.amountPerPiece.options.map((option) => option.shape.by.value);
  expect([...amountWays].sort()).toEqual(['ml', ...ways].sort());
  const soap = statesOf('batch');
  const melt = statesOf('melt-and-pour');
  expect([...soap.opening, ...melt.opening].sort()).toEqual([...contract.openingStates].sort());
  expect([...soap.closing, ...melt.closing].sort()).toEqual([...contract.closingStates].sort());
});

it.each(partKinds)('offers for a part of kind %s just the states that it has', (kind) => {
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

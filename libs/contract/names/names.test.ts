import { expect, it } from 'vitest';
import {
  amountPerPiece,
  amountWays,
  openingStates,
  closingStates,
  part,
  partKinds,
  soapStates,
} from '#contract';

it('names each kind of part and each way to say an amount that the schemas know', () => {
  expect(partKinds).toEqual(part.options.map((option) => option.shape.kind.value));
  expect(amountWays).toEqual(amountPerPiece.options.map((option) => option.shape.by.value));
});

it('lets designs wait for states of the soap alone', () => {
  expect([...openingStates, ...closingStates].filter((state) => !soapStates.includes(state))).toEqual([]);
});

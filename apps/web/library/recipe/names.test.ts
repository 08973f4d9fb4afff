import { expect, it } from 'vitest';
import * as contract from '#contract';
import { acidNames, additionKinds, fragranceBehaviours, gels, mixings } from './names.js';

it('offers what the contract knows', () => {
  expect(acidNames).toEqual(contract.acidNames);
  expect(fragranceBehaviours).toEqual(contract.fragranceBehaviours);
  expect(additionKinds).toEqual(contract.additionKinds);
  expect(mixings).toEqual(contract.recipe.shape.mixing.unwrap().options);
  expect(gels).toEqual(contract.recipe.shape.gel.unwrap().options);
});

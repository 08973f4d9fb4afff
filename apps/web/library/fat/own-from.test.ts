import { expect, it } from 'vitest';
import { checkFat, fattyAcidMolarMass, fromSheet, shippedFats } from '#chemistry';
import { fat, parseWith } from '#contract';
import { fattyAcids, ownFrom } from './own-from.js';

it('offers the acids that the chemistry knows', () => {
  expect(fattyAcids.filter((acid) => fattyAcidMolarMass(acid) === undefined)).toEqual([]);
});

it.each(shippedFats.map((each) => [each.key, each] as const))(
  'makes an own fat of %s once its certificate is told',
  (_, shipped) => {
    const begun = ownFrom(shipped, 'Mine', shipped.behaviour) as object;
    expect(parseWith(fat, { ...begun, key: 'mine', source: 'Certificate' }).ok).toBe(false);
    const value = shipped.saponificationMgKohPerG.used;
    const read = parseWith(fat, {
      ...begun,
      key: 'mine',
      source: 'Certificate',
      saponificationMgKohPerG: value,
    });
    expect(read.ok && read.value.saponificationMgKohPerG).toEqual({ low: value, used: value, high: value });
    expect(
      read.ok && checkFat(fromSheet(read.value)).filter(({ code }) => code.endsWith('disordered')),
    ).toEqual([]);
  },
);

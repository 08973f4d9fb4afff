import fc from 'fast-check';
import { checkInputs, choices, measures, type ClockInputs, type Measure } from '#clocks';

// Whole tenths spread evenly over the range; doubles would nearly all lie next to 0.
const within = (key: Measure) =>
  fc.integer({ min: measures[key].low * 10, max: measures[key].high * 10 }).map((tenths) => tenths / 10);
const measured = Object.fromEntries(
  (Object.keys(measures) as Measure[]).map((key) => [key, within(key)]),
) as Readonly<Record<Measure, fc.Arbitrary<number>>>;
const chosen = {
  air: fc.constantFrom(...choices.air),
  mould: fc.constantFrom(...choices.mould),
  fragrance: fc.constantFrom(...choices.fragrance),
  mixing: fc.constantFrom(...choices.mixing),
  process: fc.constantFrom(...choices.process),
};
/** Shares of fats of a batch are drawn together: apart they nearly always come to more than a whole. */
const fatShares = fc
  .tuple(
    fc.array(fc.integer({ min: 0, max: 100 }), { minLength: 7, maxLength: 7 }),
    fc.integer({ min: 0, max: 1000 }),
  )
  .map(([parts, whole]) => {
    const sum = Math.max(
      1,
      parts.reduce((total, part) => total + part, 0),
    );
    const [castor, butters, pomace, lard, freeAcids, wax] = parts.map(
      (part) => Math.round((part / sum) * whole) / 10,
    ) as [number, number, number, number, number, number];
    return {
      castorPercent: castor,
      buttersPercent: butters,
      olivePomacePercent: pomace,
      lardPercent: lard,
      freeAcidsPercent: freeAcids,
      waxPercent: wax,
    };
  });
const acids = fc
  .tuple(
    fc.integer({ min: 0, max: 1000 }),
    fc.integer({ min: 0, max: 1000 }),
    fc.integer({ min: 0, max: 1000 }),
  )
  .map(([a, b, c]) => {
    const [first, second, third] = [a, b, c].sort((x, y) => x - y) as [number, number, number];
    return {
      hardFattyAcidsPercent: first / 10,
      oleicPercent: (second - first) / 10,
      polyunsaturatedPercent: (third - second) / 10,
    };
  });
/** Inputs of batches that can exist, all over the accepted ranges. */
export const anyInputs: fc.Arbitrary<ClockInputs> = fc
  .tuple(fc.record({ ...measured, ...chosen }), fatShares, acids)
  .map(([inputs, shares, profile]) => ({ ...inputs, ...shares, ...profile }))
  .filter((inputs) => checkInputs(inputs).length === 0);

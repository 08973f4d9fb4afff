import fc from 'fast-check';
import { checkInputs, choices, measures, type ClockInputs, type Measure } from '#clocks';

// Whole tenths spread evenly over the range; doubles would nearly all lie next to 0.
const within = (key: Measure) =>
  fc.integer({ min: measures[key].low * 10, max: measures[key].high * 10 }).map((tenths) => tenths / 10);
/** Inputs of batches that can exist, all over the accepted ranges. */
export const anyInputs: fc.Arbitrary<ClockInputs> = fc
  .record({
    lyeConcentrationPercent: within('lyeConcentrationPercent'),
    sodiumLactatePercent: within('sodiumLactatePercent'),
    saltPercent: within('saltPercent'),
    sugarPercent: within('sugarPercent'),
    hardFattyAcidsPercent: within('hardFattyAcidsPercent'),
    oleicPercent: within('oleicPercent'),
    castorPercent: within('castorPercent'),
    buttersPercent: within('buttersPercent'),
    olivePomacePercent: within('olivePomacePercent'),
    batterTemperatureC: within('batterTemperatureC'),
    roomTemperatureC: within('roomTemperatureC'),
    roomHumidityPercent: within('roomHumidityPercent'),
    mould: fc.constantFrom(...choices.mould),
    fragrance: fc.constantFrom(...choices.fragrance),
    gel: fc.constantFrom(...choices.gel),
    mixing: fc.constantFrom(...choices.mixing),
    process: fc.constantFrom(...choices.process),
  })
  .filter((inputs) => checkInputs(inputs).length === 0);

import { describe, expect, it } from 'vitest';
import { batchForFats, fatTable } from '#chemistry';

const recipe = {
  fats: [
    { fat: 'olive', percent: 95 },
    { fat: 'beeswax', percent: 5 },
  ],
  ...{ lyeConcentrationPercent: 33, superfatPercent: 5, naohPurityPercent: 100, batterTemperatureC: 40 },
  ...{ sodiumLactatePercent: 0, saltPercent: 0, sugarPercent: 0, gel: 'none', mixing: 'blender' },
} as const;

/** Names of the INCI dictionary, from memory. */
describe('names for the label', () => {
  it.each([
    [0, ['Sodium Olivate']],
    [40, ['Sodium Olivate', 'Potassium Olivate']],
    [100, ['Potassium Olivate']],
  ])('are those of the soaps that %d %% of KOH makes', (kohSharePercent, soapInci) => {
    const batch = batchForFats({ ...recipe, kohSharePercent, kohPurityPercent: 90 }, fatTable([]), 1000);
    expect(batch.ok && batch.value.fats).toMatchObject([
      { fat: 'olive', inci: 'Olea Europaea Fruit Oil', soapInci },
      { fat: 'beeswax', inci: 'Cera Alba' },
    ]);
    expect(batch.ok && batch.value.fats[1]).not.toHaveProperty('soapInci');
  });
});

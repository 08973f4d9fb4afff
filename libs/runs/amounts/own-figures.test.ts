import { expect, it } from 'vitest';
import type { Fat } from '#contract';
import { shippedFats } from '#chemistry';
import { writeBatchSheet } from '#runs';
import { loadRunFile } from '../../../tests/support/run-files.js';

const file = loadRunFile('demo', 'orchard-loaves');

/** What the sheet says of figures of the maker's own, with these in place of the shipped olive oil's. */
function toldOf(saponificationMgKohPerG?: Fat['saponificationMgKohPerG']) {
  const shipped = shippedFats.find(({ key }) => key === 'olive');
  if (shipped === undefined) throw new Error('no olive oil');
  const { key, title, fattyAcidsPercent, densityGPerMl } = shipped;
  const own = { key, title, fattyAcidsPercent, densityGPerMl, source: 'an invented sheet' };
  const fats = saponificationMgKohPerG === undefined ? [] : [{ ...own, saponificationMgKohPerG }];
  const sheet = writeBatchSheet({ ...file, fats });
  if (!sheet.ok) throw new Error(JSON.stringify(sheet.issues));
  const risks = sheet.value.runs[0]?.batches[0]?.risks ?? [];
  return risks.filter((risk) => risk.code === 'fat.own-figure');
}

it('says on the sheet that an own figure counts, and how far it is off the shipped one', () => {
  const used = shippedFats.find(({ key }) => key === 'olive')?.saponificationMgKohPerG.used ?? NaN;
  const figure = (share: number) => ({ low: used * share, used: used * share, high: used * share });
  expect(toldOf()).toEqual([]);
  const offBy = (share: number) => toldOf(figure(share))[0]?.differsByPercent;
  expect(offBy(1.03)).toBeCloseTo(3, 9);
  expect(offBy(0.98)).toBeCloseTo(-2, 9);
  expect(toldOf(figure(1))).toMatchObject([{ fat: 'olive', used, shipped: used, differsByPercent: 0 }]);
});

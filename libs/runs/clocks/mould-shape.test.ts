import fc from 'fast-check';
import { expect, it } from 'vitest';
import type { BatchPart, Mould, PartHeat } from '#contract';
import { loadRunFile } from '../../../tests/support/run-files.js';
import { resolveRuns } from '../input/resolve-run.js';
import { presentHeat } from './present-heat.js';

fc.configureGlobal({ seed: 1843 });

const file = loadRunFile('demo', 'orchard-loaves');
const VOLUME_ML = 1250;

/** What becomes of a loaf in a mould of that shape. */
function heatIn(cavity: Pick<Mould, 'cavityMl' | 'shape'>): PartHeat {
  const [{ cavityMl: _, ...mould }] = file.moulds as [Mould];
  const [run] = resolveRuns({ ...file, moulds: [{ ...mould, ...cavity }] });
  const part = run?.design.parts.find((each): each is BatchPart => each.kind === 'batch');
  const heat = run && part && presentHeat(part, run, file.workshop);
  if (!heat) throw new Error('no heat');
  return heat;
}

/** A box of the volume, square, so many times as wide as it is high. */
function boxOf(flatness: number): PartHeat {
  const heightMm = Math.cbrt((VOLUME_ML * 1000) / flatness ** 2);
  const side = heightMm * flatness;
  return heatIn({ shape: { form: 'box', lengthMm: side, widthMm: side, heightMm } });
}

it('the flatter a mould of the same volume, the less it gels, and the cooler it stays', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 1.1, max: 6, noNaN: true }),
      fc.double({ min: 1.05, max: 3, noNaN: true }),
      (flatness, flatter) => {
        const [high, flat] = [boxOf(flatness), boxOf(flatness * flatter)];
        expect(flat.gel.whole).toBeLessThanOrEqual(high.gel.whole + 1e-9);
        expect(flat.gel.none).toBeGreaterThanOrEqual(high.gel.none - 1e-9);
        expect(flat.hottestC.likely).toBeLessThan(high.hottestC.likely);
      },
    ),
    { numRuns: 15 },
  );
});

it('a loaf as loaves are is taken as one whose shape is not told, and a slab is far from it', () => {
  const untold = heatIn({ cavityMl: VOLUME_ML });
  const told = heatIn({ shape: { form: 'box', lengthMm: 200, widthMm: 89, heightMm: 70 } });
  expect(Math.abs(told.gel.whole - untold.gel.whole)).toBeLessThan(0.1);
  const slab = heatIn({ shape: { form: 'box', lengthMm: 280, widthMm: 180, heightMm: 25 } });
  expect(slab.gel.whole).toBeLessThan(untold.gel.whole / 2);
});

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
function heatIn(cavity: Pick<Mould, 'cavityMl' | 'shape' | 'wallMm'>): PartHeat {
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

it('goes by form beside a volume, which stays what is poured', () => {
  const loaf = { form: 'box', lengthMm: 200, widthMm: 89, heightMm: 70 } as const;
  const slab = { form: 'box', lengthMm: 280, widthMm: 180, heightMm: 25 } as const;
  const [deep, flat] = [loaf, slab].map((shape) => heatIn({ cavityMl: VOLUME_ML, shape }));
  expect(flat!.hottestC.likely).toBeLessThan(deep!.hottestC.likely - 3);
  // Measures that are a tenth too large tell the same form.
  const larger = { form: 'box', lengthMm: 206, widthMm: 92, heightMm: 72 } as const;
  const near = heatIn({ cavityMl: VOLUME_ML, shape: larger });
  expect(Math.abs(near.hottestC.likely - deep!.hottestC.likely)).toBeLessThan(0.5);
});

/** A wall of 15 mm of wood keeps 0.115 m² K/W, one of 30 mm twice that, one of a sheet next to nothing. */
it('is warmer the thicker the wall, and as told where nobody says', () => {
  const hottest = (wallMm?: number) => heatIn({ cavityMl: VOLUME_ML, wallMm }).hottestC.likely;
  expect(hottest(30)).toBeGreaterThan(hottest(15) + 0.5);
  expect(hottest(1)).toBeLessThan(hottest(15) - 1);
  expect(hottest()).toBe(hottest(15));
});

import { expect, it } from 'vitest';
import type { PieceDesign } from '#contract';
import { loadRunFile } from '../../../tests/support/run-files.js';
import { resolveRuns } from '../input/resolve-run.js';
import { clocksOf } from './forecast-clocks.js';

/** The likely minutes to medium trace of the lower layer, in a design with these changes. */
function trace(
  change: (design: PieceDesign) => PieceDesign,
  mixing: 'blender' | 'hand' = 'blender',
): number | undefined {
  const file = loadRunFile('ok', 'two-layer');
  const designs = file.designs.map(change);
  const recipes = file.recipes.map((recipe) => ({ ...recipe, mixing }));
  const [run] = resolveRuns({ ...file, designs, recipes });
  return clocksOf(run!, file.workshop).get('under')?.get('medium-trace')?.medianMin;
}

const withParts =
  (change: object) =>
  (design: PieceDesign): PieceDesign => ({
    ...design,
    parts: design.parts.map((part) => (part.kind === 'batch' ? { ...part, ...change } : part)),
  });

/** Who splits a batter stops the blender at the emulsion; by hand it is slow anyway. Common practice, no source. */
it.each([
  [
    'is split',
    (design: PieceDesign) => ({
      ...design,
      stages: [
        ...design.stages,
        { key: 'split', title: 'Split', kind: 'split' as const, part: 'under', needs: [] },
      ],
    }),
  ],
  [
    'has portions',
    withParts({
      portions: [
        { key: 'a', title: 'A', sharePercent: 50, colourants: [], additions: [], fragrances: [] },
        { key: 'b', title: 'B', colourants: [], additions: [], fragrances: [] },
      ],
    }),
  ],
  ['is shared', withParts({ batch: 'both' })],
])('a batch that %s stays thin twice as long', (_, change) => {
  const whole = trace((design) => design) ?? NaN;
  expect(trace(change)).toBeCloseTo(2 * whole, 9);
  expect(trace(change, 'hand')).toBeCloseTo(4 * whole, 9);
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fatDensity, fatTable, lyeDensity, type BatterRecipe } from '#chemistry';
import type { BatchPart, BatchToMix, PartAmounts, Portion, Recipe, RunFile } from '#contract';
import { anyRecipe, weighedTogether } from '../../../tests/support/any-recipe.js';
import { loadRunFile } from '../../../tests/support/run-files.js';
import { resolveRuns } from '../input/resolve-run.js';
import { batchesToMix } from './batches-to-mix.js';
import { materialsOf } from './materials-of.js';
import { sizeBatches } from './size-batches.js';

fc.configureGlobal({ seed: 1 });

const file = loadRunFile('ok', 'swirl-loaf');

interface Made {
  readonly parts: readonly PartAmounts[];
  readonly batches: readonly BatchToMix[];
}

/** The parts and batches of a file, whose recipe and parts may be others. */
function madeOf(input: RunFile): Made {
  const [run] = resolveRuns(input);
  if (run === undefined) throw new Error('no run');
  const sized = sizeBatches(run);
  if (!sized.ok) throw new Error(JSON.stringify(sized.issues));
  const batches = batchesToMix(
    run,
    sized.value.map((amounts) => ({ amounts })),
  );
  if (!batches.ok) throw new Error(JSON.stringify(batches.issues));
  return { parts: sized.value, batches: batches.value };
}

function withParts(over: Readonly<Record<string, Partial<BatchPart>>>, recipe?: BatterRecipe): RunFile {
  const designs = file.designs.map((design) => ({
    ...design,
    parts: design.parts.map((part) => ({ ...part, ...over[part.key] }) as BatchPart),
  }));
  const recipes = file.recipes.map((own) => ({ ...own, ...recipe }) as Recipe);
  return { ...file, designs, recipes };
}

const total = (masses: readonly { readonly massG: number }[]): number =>
  masses.reduce((sum, { massG }) => sum + massG, 0);

/** All that goes into a portion by itself. */
function coloursG({ colourants, additions, fragrances }: BatchToMix['portions'][number]): number {
  return (
    total(colourants) +
    total(colourants.flatMap(({ carrier }) => carrier ?? [])) +
    total(additions) +
    total(fragrances)
  );
}

const colour = fc.record({
  key: fc.constantFrom('blue', 'red'),
  title: fc.constant('Colour'),
  percent: fc.double({ min: 0.01, max: 10, noNaN: true }),
  carrier: fc.option(
    fc.record({
      kind: fc.constantFrom('fat', 'water', 'glycerol'),
      perGram: fc.double({ min: 0.1, max: 20, noNaN: true }),
    }),
    { nil: undefined },
  ),
});

const own = {
  title: fc.constant('Portion'),
  colourants: fc.array(colour, { maxLength: 3 }),
  additions: fc.array(
    fc.record({
      key: fc.constant('clay'),
      title: fc.constant('Clay'),
      kind: fc.constantFrom('clay', 'other'),
      percent: fc.double({ min: 0.01, max: 20, noNaN: true }),
    }),
    { maxLength: 2 },
  ),
  fragrances: fc.array(
    fc.record({
      key: fc.constant('scent'),
      title: fc.constant('Scent'),
      kind: fc.constant('fragrance-oil'),
      percent: fc.double({ min: 0.01, max: 5, noNaN: true }),
      limitCategory: fc.constant('9'),
      behaviour: fc.constant('mild'),
      vanillinPercent: fc.constant(0),
      allergens: fc.constant<Portion['fragrances'][number]['allergens']>([]),
    }),
    { maxLength: 2 },
  ),
};

/** Portions by shares that miss the whole by their rounding, or with grams and a rest. */
const anyPortions: fc.Arbitrary<Portion[]> = fc
  .record({
    portions: fc.array(fc.record(own), { minLength: 2, maxLength: 12 }),
    weights: fc.array(fc.integer({ min: 1, max: 50 }), { minLength: 12, maxLength: 12 }),
    restAt: fc.option(fc.nat(), { nil: undefined }),
    grams: fc.array(fc.option(fc.double({ min: 0.1, max: 60, noNaN: true }), { nil: undefined }), {
      minLength: 12,
      maxLength: 12,
    }),
  })
  .map(({ portions, weights, restAt, grams }) => {
    const sum = portions.reduce((all, _, i) => all + (weights[i] ?? 0), 0);
    const rest = restAt === undefined ? undefined : restAt % portions.length;
    return portions.map((each, i): Portion => {
      const sharePercent = Math.round((1000 * (weights[i] ?? 0)) / sum) / 10;
      const size =
        i === rest
          ? {}
          : rest !== undefined && grams[i] !== undefined
            ? { grams: grams[i] }
            : { sharePercent };
      return { ...each, key: `portion-${String(i)}`, ...size };
    });
  });

/** A part's own colours, as a recipe brings them. */
const sound = anyRecipe.map(({ colourants: _, fragrances: __, ...recipe }) => ({
  ...recipe,
  acids: recipe.acids ?? [],
  additions: recipe.additions ?? [],
}));

describe('what is mixed at once', () => {
  it('is split without a rest, and nothing of it is lost', () => {
    fc.assert(
      fc.property(sound, anyPortions, fc.array(colour, { maxLength: 3 }), (recipe, portions, colourants) => {
        const { parts, batches } = madeOf(withParts({ swirl: { portions }, top: { colourants } }, recipe));
        expect(batches).toHaveLength(1);
        const [batch] = batches;
        if (batch === undefined) return;
        const { amounts } = batch;
        const off = (a: number, b: number): number => Math.abs(a - b) / amounts.batchG;
        expect(off(total(batch.portions), amounts.batchG)).toBeLessThan(1e-9);
        expect(batch.portions.reduce((sum, each) => sum + each.sharePercent, 0)).toBeCloseTo(100, 9);
        expect(off(weighedTogether(amounts), amounts.batchG)).toBeLessThan(1e-9);
        // What the parts take is the batch with the colours, gram for gram.
        const taken = parts.reduce((sum, part) => sum + (part.batch?.batchG ?? NaN), 0);
        const colours = batch.portions.reduce((sum, portion) => sum + coloursG(portion), 0);
        expect(off(taken, amounts.batchG + colours)).toBeLessThan(1e-9);
        for (const field of ['naohG', 'kohG', 'waterG', 'fatsG', 'saltG'] as const) {
          const sum = parts.reduce((all, part) => all + (part.batch?.[field] ?? NaN), 0);
          expect(off(sum, amounts[field])).toBeLessThan(1e-9);
        }
        expect(off(total(materialsOf(parts).map(({ amount }) => ({ massG: amount }))), taken)).toBeLessThan(
          1e-9,
        );
      }),
      { numRuns: 60 },
    );
  });

  /**
   * Worked out anew from published figures: 50 % olive, 25 % coconut and 25 % palm take the middles of the Codex ranges,
   * 190, 256.5 (CXS 210) and 199.5 mg KOH/g, so 209 g KOH per kg; 39.997 / 56.106 of that is NaOH, and 5 % are left out.
   * A gram of fats makes its own volume, that of its lye of 30 %, and that of its lactate at 1.3131 g/mL.
   */
  it('is the batch of the sum, worked out by hand', () => {
    const { parts, batches } = madeOf(file);
    const fats = fatTable([]);
    const naohPerFat = 0.209 * (39.997 / 56.106) * 0.95;
    const lyePerFat = naohPerFat / 0.3;
    const plainMl =
      [
        ['olive', 0.5],
        ['coconut', 0.25],
        ['palm', 0.25],
      ].reduce((sum, [fat, share]) => sum + Number(share) / fatDensity(fats.get(String(fat))!, 38), 0) +
      lyePerFat / lyeDensity(30, 38) +
      0.02 / 1.3131;
    // Micas at 2.8, glycerol at 1.2613, water at 0.998 g/mL; of the swirl a third is white, a third blue, a third green.
    const swirlMl = plainMl + (0.01 / 2.8 + 0.015 / 2.8 + 0.03 / 1.2613) / 3;
    const topMl = plainMl + 0.02 / 2.8 + 0.02 / 0.998;
    const [swirl, top] = parts.map(({ batch }) => batch?.batchMl ?? NaN);
    const fatsG = swirl! / swirlMl + top! / topMl;
    const [batch] = batches;
    expect(batch?.amounts.fatsG).toBeCloseTo(fatsG, 1);
    expect((batch?.amounts.naohG ?? NaN) / (fatsG * naohPerFat)).toBeCloseTo(1, 4);
    expect((batch?.amounts.waterG ?? NaN) / (fatsG * (lyePerFat - naohPerFat))).toBeCloseTo(1, 4);
    const [white, blue] = batch?.portions ?? [];
    expect(white?.massG).toBeCloseTo(blue?.massG ?? NaN, 9);
    expect(white?.massG).toBeCloseTo((swirl! / swirlMl / 3) * (1.02 + lyePerFat), 1);
    expect(blue?.colourants).toMatchObject([{ key: 'blue-mica' }]);
    expect(blue?.colourants[0]?.massG).toBeCloseTo((swirl! / swirlMl / 3) * 0.01, 3);
  });

  it('has one lye and one caution however many come from it', () => {
    const { batches, parts } = madeOf(file);
    expect(batches).toMatchObject([{ batch: 'loaf', title: 'Loaf batter', parts: ['swirl', 'top'] }]);
    expect(batches[0]?.cautions.map(({ code }) => code)).toEqual(['caution.lye', 'caution.fresh-soap']);
    expect(parts.flatMap(({ cautions }) => cautions)).toEqual([]);
    const apart = madeOf(withParts({ top: { batch: undefined } }));
    expect(apart.batches.map(({ batch, title }) => [batch, title])).toEqual([
      ['loaf', 'Swirl'],
      ['top', 'Top'],
    ]);
  });

  it('tells the risks of its recipe once, and those of a colour with its part', () => {
    const strong = { ...file.recipes[0]!, superfatPercent: 1 } as BatterRecipe;
    const much = [{ key: 'ink', title: 'Ink', percent: 4 }];
    const { batches, parts } = madeOf(withParts({ top: { colourants: much } }, strong));
    const codes = (risks: readonly { readonly code: string }[]) => risks.map(({ code }) => code);
    expect(codes(batches[0]?.risks ?? [])).toContain('lye.little-superfat');
    expect(parts.map(({ risks }) => codes(risks))).toEqual([[], ['colourant.much']]);
  });
});

describe('portions in grams', () => {
  const portions = (grams: number): Portion[] => [
    { key: 'line', title: 'Line', grams, colourants: [], additions: [], fragrances: [] },
    {
      ...{ key: 'rest', title: 'Rest', additions: [], fragrances: [] },
      colourants: [{ key: 'ink', title: 'Ink', percent: 10 }],
    },
  ];
  const massesFor = (grams: number, count = 20) => {
    const changed = withParts({ swirl: { portions: portions(grams) } });
    const runs = changed.runs.map((run) => ({ ...run, count }));
    const { batches, parts } = madeOf({ ...changed, runs });
    const taken = batches[0]?.portions.filter(({ part }) => part === 'swirl') ?? [];
    const { risks = [] } = parts[0] ?? {};
    return { masses: taken.map(({ massG }) => massG), risks: risks.map(({ code }) => code) };
  };

  it('weigh just that, whatever else is coloured, and leave the rest', () => {
    const { masses, risks } = massesFor(150);
    expect(masses[0]).toBeCloseTo(150, 9);
    expect(masses[1]).toBeGreaterThan(1500);
    expect(risks).toEqual(['colourant.much']);
    expect(massesFor(150, 10).masses[0]).toBeCloseTo(150, 9);
  });

  it('are cut down where there is not so much, which is told', () => {
    const { masses, risks } = massesFor(5000);
    expect(masses[1]).toBe(0);
    expect(masses[0]).toBeGreaterThan(1500);
    expect(risks).toEqual(['portions.too-heavy', 'colourant.much']);
  });
});

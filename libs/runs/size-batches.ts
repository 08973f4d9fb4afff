import { batchForFats, batchForVolume, questionsAbout, recipeRisks } from '#chemistry';
import type { BatchPart, DecorPart, MeltPart, Part, PartAmounts, Risk } from '#contract';
import { failed, ok, type Issue, type Result } from '#units';
import { cautionFor } from './cautions.js';
import { coverOfDecor, coverOfVolume } from './cover-of.js';
import { learnedUse } from './learned-use.js';
import { leftoverUses } from './leftover-uses.js';
import { cavityMl } from './cavity-of-mould.js';
import type { Batter, RunWorkings } from './workings.js';

/** Density of melted melt-and-pour base, g/mL: common practice, no source; a soap and glycerol gel. */
const MELT_DENSITY = 1.05;
/** What stays in bowl, bag and pipette where nothing is said, g: common practice, no source. */
const USUAL_LOSS = { batch: 20, 'melt-and-pour': 10 } as const;
/** One standard deviation of that, per cent, where nothing is said: common practice, no source. */
const USUAL_LOSS_SPREAD = 25;

/**
 * How much of everything each part of a run takes, so that each part reaches for all pieces with the certainty that
 * the run wants, and how surely it does. What a piece takes is a belief that weighings sharpen (`learnedUse`);
 * what all pieces take follows from it (`demandOf`).
 * @param counts pieces each part is made for, by part key; absent: the run's count
 */
export function sizeBatches(
  run: RunWorkings,
  counts: ReadonlyMap<string, number> = new Map(),
): Result<PartAmounts[]> {
  const amounts: PartAmounts[] = [];
  const issues: Issue[] = [];
  for (const part of run.design.parts) {
    const sized = sizePart(part, counts.get(part.key) ?? run.order.count, run);
    if (sized.ok) amounts.push(sized.value);
    else issues.push(...sized.issues);
  }
  const [first, ...rest] = issues;
  return first === undefined ? ok(amounts) : failed(first, ...rest);
}

type Base = Pick<PartAmounts, 'part' | 'title' | 'kind' | 'count'>;

function sizePart(part: Part, count: number, run: RunWorkings): Result<PartAmounts> {
  const base = { part: part.key, title: part.title, kind: part.kind, count };
  switch (part.kind) {
    case 'decor':
      return ok(sizeDecor(part, base, run));
    case 'melt-and-pour':
      return ok(sizeMelt(part, base, run));
    case 'batch':
      return sizeBatch(part, base, run);
  }
}

function sizeDecor(part: DecorPart, base: Base, run: RunWorkings): PartAmounts {
  const { made, cover } = coverOfDecor(part, base.count, certaintyOf(run));
  return {
    ...base,
    pieces: made,
    ...(part.eachG === undefined ? {} : { massG: part.eachG * made }),
    ...(part.material === undefined ? {} : { material: part.material }),
    cover,
    risks: [],
    cautions: part.material === undefined ? [] : [cautionFor('fresh-soap')],
  };
}

function sizeMelt(part: MeltPart, base: Base, run: RunWorkings): PartAmounts {
  const sized = sizeVolume(part, base, MELT_DENSITY, run);
  return {
    ...sized.told,
    massG: sized.volumeMl * MELT_DENSITY,
    material: part.material,
    risks: [],
    cautions: [cautionFor('hot-base'), cautionFor('alcohol')],
  };
}

function sizeBatch(part: BatchPart, base: Base, run: RunWorkings): Result<PartAmounts> {
  const found = run.recipes.get(part.recipe);
  if (found === undefined) throw new Error(`recipe ${part.recipe} was not checked`);
  const recipe = { ...found, colourants: part.colourants };
  // Everything in a batch grows with its fats, so any batch tells the density.
  const sample = batchForFats(recipe, run.fats, 1000);
  if (!sample.ok) return sample;
  const { told, volumeMl } = sizeVolume(part, base, sample.value.densityGPerMl, run);
  const batch = batchForVolume(recipe, run.fats, volumeMl);
  if (!batch.ok) return batch;
  const { fragrance } = recipe;
  return ok({
    ...told,
    recipe: recipe.key,
    batch: batch.value,
    ...(fragrance === undefined ? {} : { fragrance: fragrance.title ?? 'Fragrance' }),
    risks: [...recipeRisks(recipe, batch.value), ...questionsOf(recipe, run)],
    cautions: [cautionFor('lye')],
  });
}

/** What was questioned about a fat and confirmed is said again where it is weighed. */
function questionsOf({ fats }: Batter, run: RunWorkings): Risk[] {
  return fats.flatMap(({ fat }) => {
    const facts = run.fats.get(fat);
    if (facts?.confirmed !== true) return [];
    return questionsAbout(facts).map(({ code, message }) => ({
      code,
      text: message,
      remedy: 'It was confirmed; check the sheet once more before you weigh the lye.',
    }));
  });
}

function sizeVolume(part: BatchPart | MeltPart, base: Base, densityGPerMl: number, run: RunWorkings) {
  const mould = part.kind === 'batch' && part.mould !== undefined ? run.moulds.get(part.mould) : undefined;
  const around = { densityGPerMl, cavityMl: mould === undefined ? undefined : cavityMl(mould) };
  const { use, told: perPiece } = learnedUse(part, around, run.weighings);
  const lossG = lossOf(part);
  const { volumeMl, cover } = coverOfVolume({
    count: base.count,
    certainty: certaintyOf(run),
    use,
    losses: {
      fixedMl: lossG / densityGPerMl,
      fixedSpreadPercent: part.losses?.spreadPercent ?? USUAL_LOSS_SPREAD,
      trimmingPercent: part.losses?.trimmingPercent ?? 0,
    },
    densityGPerMl,
  });
  const uses = leftoverUses(part, cover.expectedLeftover, densityGPerMl, run);
  return {
    volumeMl,
    told: {
      ...base,
      perPiece,
      neededMl: use.meanMl * base.count,
      lossG,
      cover: { ...cover, leftoverUses: uses },
    },
  };
}

function lossOf(part: BatchPart | MeltPart): number {
  const { losses, lossG } = part;
  if (losses === undefined) return lossG ?? USUAL_LOSS[part.kind];
  return losses.bowlG + losses.bagG + losses.pipetteG;
}

function certaintyOf({ order }: RunWorkings): number {
  return order.certaintyPercent / 100;
}

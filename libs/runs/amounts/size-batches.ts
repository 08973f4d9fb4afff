import { batchForFats, batchForVolume, checkRecipe, givenFatsG, isSureEnough } from '#chemistry';
import {
  mouldOf,
  type BatchPart,
  type DecorPart,
  type MeltPart,
  type Part,
  type PartAmounts,
  type Risk,
} from '#contract';
import { failed, isNonEmpty, ok, type Issue, type Minute, type Result } from '#units';
import { portionRisks, recipeFacts } from './batches-to-mix.js';
import { coverOfDecor, coverOfVolume } from './cover-of.js';
import { learnedUse } from './learned-use.js';
import { leftoverUses } from './leftover-uses.js';
import { mixedTogether } from '../input/mixed-together.js';
import { partBatter } from '../input/part-batter.js';
import { MELT_DENSITY, useSurroundings } from '../input/piece-surroundings.js';
import { piecesWith } from '../input/pieces.js';
import { makingStage, type Batter, type ResolvedRun } from '../input/resolve-run.js';

/** What stays in bowl, bag and pipette where nothing is said, g: common practice, no source. A bag keeps most. */
const USUAL_LOSS = { piped: 40, batch: 20, 'melt-and-pour': 10 } as const;
/** One standard deviation of that, per cent, where nothing is said: common practice, no source. */
const USUAL_LOSS_SPREAD = 25;

/**
 * How much of everything each part of a run takes, so that each part reaches for all pieces with the certainty that
 * the run wants, and how surely it does. What a piece takes is a belief that weighings sharpen (`learnedUse`);
 * what all pieces take follows from it (`demandOf`).
 * @param makings what each part is made for, by part key; absent: for all pieces that have it, and not yet
 */
export function sizeBatches(
  run: ResolvedRun,
  makings: ReadonlyMap<string, Making> = new Map(),
): Result<PartAmounts[]> {
  const amounts: PartAmounts[] = [];
  const issues: Issue[] = [];
  for (const part of run.design.parts) {
    const sized = sizePart(part, run, makings);
    if (sized.ok) amounts.push(sized.value);
    else issues.push(...sized.issues);
  }
  return isNonEmpty(issues) ? failed(...issues) : ok(amounts);
}

/** For how many pieces a part is made, and when that began; what is weighed after that changes no batch that is made. */
export interface Making {
  readonly count: number;
  readonly madeAt?: Minute | undefined;
}

type Base = Pick<PartAmounts, 'part' | 'title' | 'kind'> & Making;

function baseOf(part: Part, run: ResolvedRun, makings: ReadonlyMap<string, Making>): Base {
  const { count, madeAt } = makings.get(part.key) ?? { count: piecesWith(run.order, part.key) };
  return { part: part.key, title: part.title, kind: part.kind, count, madeAt };
}

function sizePart(part: Part, run: ResolvedRun, makings: ReadonlyMap<string, Making>): Result<PartAmounts> {
  const base = baseOf(part, run, makings);
  switch (part.kind) {
    case 'decor':
      return ok(sizeDecor(part, base, run));
    case 'melt-and-pour':
      return ok(sizeMelt(part, base, run));
    case 'batch':
      return sizeBatch(part, base, run, makings);
  }
}

function sizeDecor(part: DecorPart, base: Base, run: ResolvedRun): PartAmounts {
  const { made, cover } = coverOfDecor(part, base.count, certaintyOf(run));
  const { madeAt: _when, ...told } = base;
  return {
    ...told,
    pieces: made,
    ...(part.eachG === undefined ? {} : { massG: part.eachG * made }),
    ...(part.material === undefined ? {} : { material: part.material }),
    cover,
    risks: [],
    cautions: part.material === undefined ? [] : [{ code: 'caution.fresh-soap' }],
  };
}

function sizeMelt(part: MeltPart, base: Base, run: ResolvedRun): PartAmounts {
  const sized = sizeVolume(part, base, run);
  return {
    ...sized.told,
    massG: sized.volumeMl * MELT_DENSITY,
    material: part.material,
    risks: [],
    cautions: [{ code: 'caution.hot-base' }, { code: 'caution.alcohol' }],
  };
}

function sizeBatch(
  part: BatchPart,
  base: Base,
  run: ResolvedRun,
  makings: ReadonlyMap<string, Making>,
): Result<PartAmounts> {
  const recipe = run.recipes.get(part.recipe);
  if (recipe === undefined) throw new Error(`recipe ${part.recipe} was not checked`);
  const issues = checkRecipe({ ...recipe, colourants: part.colourants }, run.fats);
  if (isNonEmpty(issues)) return failed(...issues);
  const ofRun = base.count / piecesWith(run.order, part.key);
  const fatsG = givenFats(part, recipe, run, makings);
  const split = fatsG === undefined ? undefined : partBatter(part, recipe, run.fats, { fatsG, ofRun });
  const given = fatsG === undefined || !split ? undefined : batchForFats(split.batter, run.fats, fatsG);
  if (given?.ok === false) return given;
  const { told, volumeMl } = sizeVolume(part, base, run, given?.value.batchMl);
  const { batter, isCutDown } = split ?? partBatter(part, recipe, run.fats, { volumeMl, ofRun });
  const batch = given ?? batchForVolume(batter, run.fats, volumeMl);
  if (!batch.ok) return batch;
  return ok({
    ...told,
    recipe: recipe.key,
    told: recipeFacts(recipe),
    batch: batch.value,
    risks: [
      ...tooSmall(told),
      ...(isCutDown ? [portionsTooHeavy(part, batch.value.batchG)] : []),
      ...portionRisks(part, recipe, run, batch.value.fatsG),
    ],
    cautions: [],
  });
}

/**
 * Fats of a part where its recipe gives the size of the batch: all of it, or as much as the part takes among those that are
 * mixed with it. Undefined: the pieces say.
 */
function givenFats(
  part: BatchPart,
  recipe: Batter,
  run: ResolvedRun,
  makings: ReadonlyMap<string, Making>,
): number | undefined {
  const fatsG = givenFatsG(recipe);
  if (fatsG === undefined) return undefined;
  const takes = (each: BatchPart): number => sizeVolume(each, baseOf(each, run, makings), run).volumeMl;
  const together = mixedTogether(run.design, part.key);
  if (together.length < 2) return fatsG;
  return (fatsG * takes(part)) / together.reduce((sum, each) => sum + takes(each), 0);
}

function portionsTooHeavy({ portions = [] }: BatchPart, haveG: number): Risk {
  const askedG = portions.reduce((sum, { grams = 0 }) => sum + grams, 0);
  return { code: 'portions.too-heavy', level: 'high', askedG, haveG };
}

/** A batch with a size of its own may reach for fewer pieces than the run makes. */
function tooSmall({ count, cover }: Pick<PartAmounts, 'count' | 'cover'>): Risk[] {
  const { given, wantedCertainty, shortageChance, reaches } = cover;
  if (given !== true || isSureEnough(shortageChance, wantedCertainty)) return [];
  const pieces = reaches.find(({ certainty }) => certainty === wantedCertainty)?.pieces ?? 0;
  return [
    { code: 'batch.reaches-not', level: 'high', count, pieces, certainty: wantedCertainty, shortageChance },
  ];
}

/** @param givenMl what is made whatever the pieces take; absent: as much as they take */
function sizeVolume(
  part: BatchPart | MeltPart,
  { madeAt, ...base }: Base,
  run: ResolvedRun,
  givenMl?: number,
) {
  const around = useSurroundings(part, run);
  // Those that are kept together are older than the last few, and are not told apart any more.
  const before = run.weighings.filter(
    ({ at, times }) => madeAt === undefined || at < madeAt || times !== undefined,
  );
  const { use, told: perPiece } = learnedUse(part, around, before);
  const { densityGPerMl } = around;
  const { lossG, lossFrom } = lossOf(part, run);
  const { volumeMl, cover } = coverOfVolume({
    count: base.count,
    certainty: certaintyOf(run),
    use,
    losses: {
      fixedMl: lossG / densityGPerMl,
      fixedSpreadPercent: part.losses?.spreadPercent ?? USUAL_LOSS_SPREAD,
      // What is cut off a cast piece was cast with it.
      trimmingPercent: mouldOf(part) === undefined ? (part.losses?.trimmingPercent ?? 0) : 0,
    },
    densityGPerMl,
    givenMl,
  });
  const uses = leftoverUses(part, cover.expectedLeftover, densityGPerMl, run);
  return {
    volumeMl,
    told: {
      ...base,
      perPiece,
      neededMl: use.meanMl * base.count,
      lossG,
      lossFrom,
      cover: { ...cover, leftoverUses: uses },
    },
  };
}

function lossOf(
  part: BatchPart | MeltPart,
  { design }: ResolvedRun,
): { readonly lossG: number; readonly lossFrom: 'told' | 'usual' } {
  const { bowlG, bagG, pipetteG } = part.losses ?? {};
  const told = [part.lossG, bowlG, bagG, pipetteG].filter((grams) => grams !== undefined);
  if (told.length > 0) return { lossG: told.reduce((sum, grams) => sum + grams, 0), lossFrom: 'told' };
  const piped = makingStage(design, part.key)?.kind === 'pipe';
  return { lossG: USUAL_LOSS[piped ? 'piped' : part.kind], lossFrom: 'usual' };
}

function certaintyOf({ order }: ResolvedRun): number {
  return order.certaintyPercent / 100;
}

import { batchForFats, type BatchAmounts, type FatFacts } from '#chemistry';
import type { BatchPart, Portion } from '#contract';
import type { Batter } from './batter.js';

type Fats = ReadonlyMap<string, FatFacts>;
type Own = Pick<Portion, 'colourants' | 'additions' | 'fragrances'>;

/** What a part is poured from: its recipe with the colours of all its portions, and how it is split. */
export interface PartBatter {
  readonly batter: ColouredBatter;
  /** Of each portion in the part before colours, 0 to 1, together 1; one for a part that is not split. */
  readonly shares: readonly number[];
  /** Portions in grams take more than there is, so they were cut down to it and leave no rest. */
  readonly isCutDown: boolean;
}

/** A recipe with what a portion or part adds to it, each as a share of all its fats. */
export type ColouredBatter = Batter & { readonly colourants: BatchPart['colourants'] };

/** How much of a part there is, colours included or by its fats, where that is known. */
export type PartSize = ({ readonly volumeMl: number } | { readonly fatsG: number }) & {
  /** For this share of the run's pieces: portions in grams are told for all of them. */
  readonly ofRun: number;
};

/**
 * What a part is poured from. Portions in grams are shares only once it is known how much of the part there is; without
 * that they count for nothing and the rest stands for them, which moves the density by what their colours weigh alone.
 */
export function partBatter(part: BatchPart, recipe: Batter, fats: Fats, size?: PartSize): PartBatter {
  const { portions } = part;
  if (portions === undefined) {
    return { batter: { ...recipe, colourants: part.colourants }, shares: [1], isCutDown: false };
  }
  const { shares, isCutDown } = sharesOf(portions, recipe, fats, size);
  return { batter: withOwn(recipe, portions, shares), shares, isCutDown };
}

/** A portion by itself: the recipe with what goes into this portion alone. */
export function portionBatter(portion: Own, recipe: Batter): ColouredBatter {
  return withOwn(recipe, [portion], [1]);
}

/** What a part's portions are; a part that is not split is one. */
export function portionsOf(part: BatchPart): readonly (Own & Partial<Pick<Portion, 'key' | 'title'>>)[] {
  return part.portions ?? [{ colourants: part.colourants, additions: [], fragrances: [] }];
}

/**
 * Shares of the fats. With F the fats of all, v what one gram of fats comes to before colours and cᵢ what portion i adds
 * to that, portions of Gⱼ grams hold Fⱼ = Gⱼ / (batter for one gram of fats), and the volume is
 *
 *     V = F v + Σ Fⱼ cⱼ + Σ sᵢ F cᵢ + (F − Σ Fⱼ − Σ sᵢ F) c_rest
 */
function sharesOf(
  portions: readonly Portion[],
  recipe: Batter,
  fats: Fats,
  size: PartSize | undefined,
): { readonly shares: number[]; readonly isCutDown: boolean } {
  const told = portions.reduce((sum, { sharePercent = 0 }) => sum + sharePercent, 0) / 100;
  const restAt = portions.findIndex((each) => each.sharePercent === undefined && each.grams === undefined);
  // Shares that are all told miss the whole by rounding only.
  if (restAt < 0) {
    return { shares: portions.map(({ sharePercent = 0 }) => sharePercent / 100 / told), isCutDown: false };
  }
  const left = 1 - told;
  const { ofGrams, isCutDown } = gramShares(portions, restAt, recipe, fats, size);
  const taken = ofGrams.reduce((sum, share) => sum + share, 0);
  const fit = isCutDown ? left / taken : 1;
  const shares = portions.map(({ sharePercent }, i) => {
    if (i === restAt) return isCutDown ? 0 : left - taken;
    return sharePercent === undefined ? (ofGrams[i] ?? 0) * fit : sharePercent / 100;
  });
  return { shares, isCutDown };
}

/** Shares of the portions in grams before they are cut down to what there is; 0 for the others. */
function gramShares(
  portions: readonly Portion[],
  restAt: number,
  recipe: Batter,
  fats: Fats,
  size: PartSize | undefined,
): { readonly ofGrams: number[]; readonly isCutDown: boolean } {
  if (size === undefined || portions.every(({ grams }) => grams === undefined)) {
    return { ofGrams: portions.map(() => 0), isCutDown: false };
  }
  const plain = made(recipe, fats);
  const adds = portions.map((each) => made(portionBatter(each, recipe), fats).batchMl - plain.batchMl);
  const rest = adds[restAt] ?? 0;
  const fatsOf = portions.map(({ grams = 0 }) => (grams * size.ofRun * SAMPLE_G) / plain.batchG);
  const beyond = sum(fatsOf.map((fatsG, i) => (fatsG / SAMPLE_G) * ((adds[i] ?? 0) - rest)));
  const toldShares = portions.map(({ sharePercent = 0 }) => sharePercent / 100);
  const perGram =
    (plain.batchMl +
      sum(toldShares.map((share, i) => share * (adds[i] ?? 0))) +
      (1 - sum(toldShares)) * rest) /
    SAMPLE_G;
  const fatsG = 'fatsG' in size ? size.fatsG : (size.volumeMl - beyond) / perGram;
  const isCutDown = !(fatsG > 0) || sum(fatsOf) > (1 - sum(toldShares)) * fatsG;
  // Without any fats left over the shares among themselves are all that counts.
  const whole = fatsG > 0 ? fatsG : sum(fatsOf);
  return { ofGrams: fatsOf.map((each) => each / whole), isCutDown };
}

/** Everything in a batch grows with its fats, so any batch tells what a gram of them comes to. */
const SAMPLE_G = 1000;

function made(batter: Batter, fats: Fats): BatchAmounts {
  const sample = batchForFats(batter, fats, SAMPLE_G);
  if (!sample.ok) throw new Error(sample.issues.map(({ code }) => code).join(', '));
  return sample.value;
}

/** The recipe with what portions add to it, by their shares. The same colour in two portions is one. */
function withOwn(recipe: Batter, portions: readonly Own[], shares: readonly number[]): ColouredBatter {
  const shareOf = (i: number): number => shares[i] ?? 0;
  const colourants = portions.flatMap((each, i) => each.colourants.map((c) => weighted(c, shareOf(i))));
  const additions = portions.flatMap((each, i) => each.additions.map((a) => weighted(a, shareOf(i))));
  const fragrances = portions.flatMap((each, i) => each.fragrances.map((f) => weighted(f, shareOf(i))));
  return {
    ...recipe,
    colourants: merged(colourants),
    additions: [...recipe.additions, ...merged(additions)],
    fragrances: [...recipe.fragrances, ...merged(fragrances)],
  };
}

function weighted<T extends { readonly percent: number }>(thing: T, share: number): T {
  return { ...thing, percent: thing.percent * share };
}

function merged<T extends { readonly percent: number }>(things: readonly T[]): T[] {
  const byRest = new Map<string, T>();
  for (const thing of things) {
    const rest = JSON.stringify({ ...thing, percent: 0 });
    const before = byRest.get(rest);
    byRest.set(rest, before === undefined ? thing : { ...before, percent: before.percent + thing.percent });
  }
  return [...byRest.values()].filter(({ percent }) => percent > 0);
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}

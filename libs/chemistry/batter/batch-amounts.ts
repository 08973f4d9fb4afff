import type { Issue, Result } from '#units';
import { acids, acidStrength } from '../lye/acids.js';
import {
  acidDensity,
  additionDensity,
  carrierDensity,
  densityOf,
  liquidSolidsDensity,
} from './additive-densities.js';
import type { BatterRecipe, CarrierKind } from '../recipe/batter-recipe.js';
import { checkRecipe } from './check-recipe.js';
import { declaredAllergens, type DeclaredAllergen } from '../fragrance/declared-allergens.js';
import { dryMass } from './dry-mass.js';
import { fatDensity } from '../fats/fat-density.js';
import type { FatFacts } from '../fats/fat-facts.js';
import { labelNames, type LabelNames } from '../fats/label-names.js';
import { fatShares } from '../fats/fat-shares.js';
import { liquidsPerFat, sumOf, type LiquidPerFat } from '../lye/liquids-per-fat.js';
import { lyeStock, type LyeStock } from '../lye/lye-stock.js';
import { lyeForFats, superfatRange, type LyeAmounts } from '../lye/lye-amounts.js';
import { lyeSolutionDensity } from '../lye/lye-solution-density.js';
import { waterViews, type WaterViews } from '../lye/water.js';

/** Something weighed that is neither fat nor lye. */
export interface NamedMass {
  readonly key: string;
  readonly title: string;
  readonly massG: number;
}

/** A liquid to weigh in place of water, and what it brings, g. */
export interface LiquidMass extends NamedMass {
  /** Lye is dissolved in it, or it goes into the batter. */
  readonly addedTo: 'lye' | 'batter';
  readonly waterG: number;
  readonly fatG: number;
  readonly sugarG: number;
  /** For the list of ingredients; absent: not known. */
  readonly inci?: string;
}

/** A batch to weigh, in grams and millilitres, unrounded. `naohG`, `kohG` are weighed, with their impurities. */
export interface BatchAmounts extends LyeAmounts {
  readonly fats: (LabelNames & { readonly fat: string; readonly title: string; readonly massG: number })[];
  readonly fatsG: number;
  /** Instead of the flakes of NaOH and the water; absent: lye is made from flakes. */
  readonly stock?: LyeStock;
  readonly liquids: LiquidMass[];
  readonly acids: NamedMass[];
  /** 60 % solution. */
  readonly sodiumLactateG: number;
  readonly saltG: number;
  readonly sugarG: number;
  readonly fragrances: (NamedMass & {
    /** Whether its supplier's allergens are known. */
    readonly hasAllergens: boolean;
  })[];
  /** What a label of the soap has to name, of those that are known. */
  readonly allergens: DeclaredAllergen[];
  readonly colourants: (NamedMass & {
    readonly carrier?: { readonly kind: CarrierKind; readonly fat?: string; readonly massG: number };
  })[];
  readonly additions: NamedMass[];
  /** Sum of all that is weighed. */
  readonly batchG: number;
  /** At the batter temperature. */
  readonly batchMl: number;
  readonly densityGPerMl: number;
  /** The water in the three ways in which it is told. */
  readonly water: WaterViews;
  /** Superfat that lots of these fats can be left with, per cent; see `superfatRange`. */
  readonly superfat: { readonly low: number; readonly used: number; readonly high: number };
}

type Fats = ReadonlyMap<string, FatFacts>;

/**
 * The batch made from a mass of fats.
 * Volume = Σ mass / density at the batter temperature, volumes being additive. What the reaction does to the
 * volume is left out: moulds are filled before it has gone far.
 * @param fatsG more than 0, at most 1 000 000 g
 * @returns the amounts, or the issues of `checkRecipe` and `batch.fats-out-of-range`
 */
export function batchForFats(recipe: BatterRecipe, fats: Fats, fatsG: number): Result<BatchAmounts> {
  const issues = [
    ...checkRecipe(recipe, fats),
    ...sizeIssues('batch.fats-out-of-range', 'fatsG', fatsG, 'g'),
  ];
  return issues.length > 0 ? { ok: false, issues } : { ok: true, value: amounts(recipe, fats, fatsG) };
}

/**
 * The batch that fills a volume. Every amount grows in proportion to the fats, so the fats needed are the
 * volume over the volume that one gram of fats makes.
 * @param volumeMl more than 0, at most 1 000 000 mL, at the batter temperature; losses are the caller's
 * @returns the amounts, or the issues of `checkRecipe` and `batch.volume-out-of-range`
 */
export function batchForVolume(recipe: BatterRecipe, fats: Fats, volumeMl: number): Result<BatchAmounts> {
  const issues = [
    ...checkRecipe(recipe, fats),
    ...sizeIssues('batch.volume-out-of-range', 'volumeMl', volumeMl, 'mL'),
  ];
  if (issues.length > 0) return { ok: false, issues };
  return { ok: true, value: amounts(recipe, fats, volumeMl / amounts(recipe, fats, 1).batchMl) };
}

/** Far beyond a bench, to catch kilograms typed as milligrams and the like. */
const LARGEST_BATCH = 1_000_000;

function amounts(recipe: BatterRecipe, fats: Fats, fatsG: number): BatchAmounts {
  const of = (percent: number): number => (fatsG * percent) / 100;
  const shares = fatShares(recipe, fats);
  const perFat = liquidsPerFat(recipe, fats);
  const lye = lyeForFats(recipe, fats, fatsG, perFat);
  const stock = lyeStock(recipe, lye);
  const liquidWaterG = fatsG * sumOf(perFat, 'waterG');
  const acidMasses = (recipe.acids ?? []).map((share) => ({
    key: share.acid,
    title: `${acids[share.acid].title}, ${String(100 * acidStrength(share))} %`,
    massG: of(share.percent),
    density: acidDensity(share.acid, 100 * acidStrength(share)),
  }));
  const colourants = (recipe.colourants ?? []).map(({ key, title, percent, carrier }) => ({
    key,
    title,
    massG: of(percent),
    ...(carrier && {
      carrier: {
        kind: carrier.kind,
        ...(carrier.fat !== undefined && { fat: carrier.fat }),
        massG: of(percent) * carrier.perGram,
      },
    }),
  }));
  const additions = (recipe.additions ?? []).map(({ key, title, percent, kind }) => ({
    key,
    title,
    massG: of(percent),
    density: additionDensity[kind],
  }));
  const sodiumLactateG = of(recipe.sodiumLactatePercent);
  const saltG = of(recipe.saltPercent);
  const sugarG = of(recipe.sugarPercent);
  const fragrances = (recipe.fragrances ?? []).map(({ key, title, percent, allergens = [] }) => ({
    ...{ key, title, massG: of(percent), allergens },
  }));
  /** Every ingredient once, as mass and density: mass and volume of the batch are sums over the same list. */
  const ingredients: readonly (readonly [massG: number, gPerMl: number])[] = [
    ...shares.map(
      ({ facts, share }) => [fatsG * share, fatDensity(facts, recipe.batterTemperatureC)] as const,
    ),
    // Water of the liquids makes up the lye, wherever they go in.
    [lye.lyeG + liquidWaterG, densityOfLye(lye, liquidWaterG, inTable(recipe.batterTemperatureC))],
    ...perFat.map((liquid) => drySolids(liquid, fatsG)),
    ...acidMasses.map(({ massG, density }) => [massG, density] as const),
    [sodiumLactateG, densityOf.sodiumLactate],
    [saltG, densityOf.salt],
    [sugarG, densityOf.sugar],
    ...fragrances.map(({ massG }) => [massG, densityOf.fragrance] as const),
    ...colourants.map(({ massG }) => [massG, densityOf.colourant] as const),
    ...colourants.flatMap(({ carrier }) =>
      carrier === undefined ? [] : [[carrier.massG, carrierDensity[carrier.kind]] as const],
    ),
    ...additions.map(({ massG, density }) => [massG, density] as const),
  ];
  const batchG = ingredients.reduce((sum, [massG]) => sum + massG, 0);
  const batchMl = ingredients.reduce((sum, [massG, gPerMl]) => sum + massG / gPerMl, 0);
  return {
    fats: shares.map(({ facts, share }) => ({
      ...{ fat: facts.key, title: facts.title, massG: fatsG * share },
      ...labelNames(facts, recipe.kohSharePercent ?? 0),
    })),
    fatsG,
    ...lye,
    ...(stock === undefined ? {} : { stock }),
    liquids: perFat.map((liquid) => liquidMass(liquid, fatsG)),
    acids: acidMasses.map(({ density: _, ...mass }) => mass),
    sodiumLactateG,
    saltG,
    sugarG,
    fragrances: fragrances.map(({ allergens, ...mass }) => ({
      ...mass,
      hasAllergens: allergens.length > 0,
    })),
    allergens: declaredAllergens(
      fragrances,
      dryMass(recipe, { ...lye, fatsG, batchG, sodiumLactateG, liquidWaterG }),
    ),
    colourants,
    additions: additions.map(({ density: _, ...mass }) => mass),
    batchG,
    batchMl,
    densityGPerMl: batchG / batchMl,
    water: waterViews(recipe, lye, fatsG, perFat),
    superfat: superfatRange(recipe, fats, perFat),
  };
}

/**
 * The tables of lye end at 20 and 80 °C. A batter is mixed at 15 to 90: carried on by the same slope its lye would be 0.4 % lighter or
 * heavier there, and the batter a tenth of a per cent.
 */
const inTable = (tempC: number): number => Math.min(80, Math.max(20, tempC));

/** What else the flakes hold counts as water, as it does in the concentration. */
function densityOfLye(
  { pureNaohG, pureKohG, lyeG }: LyeAmounts,
  liquidWaterG: number,
  temperatureC: number,
): number {
  const waterG = lyeG + liquidWaterG - pureNaohG - pureKohG;
  return lyeSolutionDensity({ naohG: pureNaohG, kohG: pureKohG, waterG }, temperatureC);
}

function liquidMass({ key, title, addedTo, shipped, ...perFat }: LiquidPerFat, fatsG: number): LiquidMass {
  const of = (perGram: number): number => fatsG * perGram;
  return {
    ...{ key, title, massG: of(perFat.massG), addedTo },
    ...{ waterG: of(perFat.waterG), fatG: of(perFat.fatG), sugarG: of(perFat.sugarG) },
    ...(shipped === undefined ? {} : { inci: shipped.inci }),
  };
}

/** What is not water in a liquid, as mass and density. */
function drySolids({ figures, massG, waterG }: LiquidPerFat, fatsG: number): readonly [number, number] {
  return [fatsG * (massG - waterG), liquidSolidsDensity(figures)];
}

function sizeIssues(
  code: 'batch.fats-out-of-range' | 'batch.volume-out-of-range',
  field: string,
  value: number,
  unit: 'g' | 'mL',
): Issue[] {
  if (value > 0 && value <= LARGEST_BATCH) return [];
  const accepted = { kind: 'range', low: 0, high: LARGEST_BATCH, isOpen: true, unit } as const;
  return [
    {
      code,
      path: [field],
      value,
      accepted,
      found: value,
    },
  ];
}

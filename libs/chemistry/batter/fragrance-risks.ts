import type { BatterRecipe, Fragrance } from '../recipe/batter-recipe.js';
import type { BatchAmounts } from './batch-amounts.js';
import { browningOf } from './browning.js';
import { dryMass } from './dry-mass.js';
import type { Risk } from './risk.js';

/** The IFRA category of soap: products for the body that are rinsed off. */
const SOAP_CATEGORY = '9';

/** More than this of the fats is unusual: of essential oils, which are strong, and of fragrance oils. Common practice, no source. */
const USUAL_PERCENT: Readonly<Record<NonNullable<Fragrance['kind']>, number>> = {
  'essential-oil': 3,
  'fragrance-oil': 6,
};

/** A fragrance, and what it makes of the dry soap, per cent. */
interface Dose {
  readonly fragrance: Fragrance;
  readonly massG: number;
  readonly sharePercent: number;
}

/**
 * What makers look at twice in the fragrances of a batch: each against its supplier's limit, all together against theirs,
 * how much there is in all, what they do to the batter, browning. Shares are of the dry soap, the most they can come to.
 */
export function fragranceRisks(recipe: BatterRecipe, batch: BatchAmounts): Risk[] {
  const liquidWaterG = batch.liquids.reduce((sum, { waterG }) => sum + waterG, 0);
  const dry = dryMass(recipe, { ...batch, liquidWaterG });
  const doses = (recipe.fragrances ?? [])
    .map((fragrance, i) => ({ fragrance, massG: batch.fragrances[i]?.massG ?? 0 }))
    .filter(({ massG }) => massG > 0)
    .map((dose) => ({ ...dose, sharePercent: (100 * dose.massG) / dry }));
  const percent = doses.reduce((sum, { fragrance }) => sum + fragrance.percent, 0);
  const browning = browningOf(doses.map(({ fragrance }) => fragrance));
  return [
    ...doses.flatMap((dose) => limitRisk(dose, dry, batch.fatsG) ?? []),
    ...togetherRisk(doses, dry),
    ...(percent > 6 ? [{ code: 'fragrance.much', level: 'medium', percent } as const] : []),
    ...doses.flatMap((dose) => behaviourRisk(dose) ?? []),
    ...(browning === undefined ? [] : [browning]),
  ];
}

function isForSoap({ limitCategory = SOAP_CATEGORY }: Fragrance): boolean {
  return limitCategory === SOAP_CATEGORY;
}

function limitRisk({ fragrance, massG, sharePercent }: Dose, dry: number, fatsG: number): Risk | undefined {
  const { title, percent, supplierLimitPercent: limitPercent, limitCategory } = fragrance;
  if (limitPercent === undefined) {
    // What is more than usual and has no limit may be several times what its certificate allows.
    const level = percent > USUAL_PERCENT[fragrance.kind ?? 'fragrance-oil'] ? 'high' : 'medium';
    return { code: 'fragrance.limit-unknown', level, fragrance: title, percent, sharePercent };
  }
  if (limitCategory !== undefined && !isForSoap(fragrance)) {
    const of = { fragrance: title, sharePercent, category: limitCategory };
    return { code: 'fragrance.limit-not-for-soap', level: 'medium', ...of };
  }
  if (sharePercent <= limitPercent) return undefined;
  // The share is s·f / (rest + s·f), so the dose for a share is found from the rest, not by proportion.
  const allowed = (100 * (dry - massG) * limitPercent) / (100 - limitPercent) / fatsG;
  const figures = { sharePercent, limitPercent, allowedPercent: floored(allowed) };
  return { code: 'fragrance.over-limit', level: 'high', fragrance: title, ...figures };
}

/**
 * Two fragrances, each within its limit, may hold the same substance, and together more of it than either limit allows.
 * What their suppliers do not say is taken at its worst: the shares of the limits add up, and may come to 1. With doses
 * times k the sum is k · Σ(mᵢ/Lᵢ) / (rest + k · Σmᵢ), so k = rest / (Σ(mᵢ/Lᵢ) − Σmᵢ) brings it to 1.
 */
function togetherRisk(doses: readonly Dose[], dry: number): Risk[] {
  const limited = doses.filter(
    ({ fragrance }) => fragrance.supplierLimitPercent !== undefined && isForSoap(fragrance),
  );
  const partOf = ({ fragrance, sharePercent }: Dose): number =>
    sharePercent / (fragrance.supplierLimitPercent ?? 100);
  const sum = limited.reduce((total, dose) => total + partOf(dose), 0);
  if (limited.length < 2 || sum <= 1 || limited.some((dose) => partOf(dose) > 1)) return [];
  const mass = limited.reduce((total, { massG }) => total + massG, 0);
  const overLimits = limited.reduce(
    (total, { massG, fragrance }) => total + (100 * massG) / (fragrance.supplierLimitPercent ?? 100),
    0,
  );
  const allowed = ((dry - mass) / (overLimits - mass)) * 100;
  return [
    {
      ...{ code: 'fragrance.over-together', level: 'high', usedPercent: 100 * sum },
      allowedPercent: Math.floor(allowed),
    },
  ];
}

function behaviourRisk({ fragrance: { title, behaviour } }: Dose): Risk | undefined {
  switch (behaviour) {
    case 'seizing':
      return { code: 'fragrance.seizes', level: 'high', fragrance: title };
    case 'ricing':
      return { code: 'fragrance.rices', level: 'medium', fragrance: title };
    case 'unknown':
      return { code: 'fragrance.untried', level: 'low', fragrance: title };
    default:
      return undefined;
  }
}

/** Rounded down, so that the figure can be followed. */
function floored(value: number): number {
  return Math.floor(value * 10) / 10;
}

import {
  evaluate,
  heatBalance,
  referenceInputs,
  type ClockInputs,
  type HeatBalance,
  type Kept,
  type PieceHeatInputs,
} from '#clocks';
import { batchForFats, shapeSurface, shapeVolume } from '#chemistry';
import { mouldOf, usualKept, type BatchPart } from '#contract';
import { cavityMl } from '../input/cavity-of-mould.js';
import { partBatter } from '../input/part-batter.js';
import { sharersOf, type ResolvedRun } from '../input/resolve-run.js';

/**
 * The balance of heat of a part as it is cast.
 * @param inputs what its clocks read, its heat aside
 * @returns undefined for what is not cast
 */
export function partHeat(part: BatchPart, run: ResolvedRun, inputs: ClockInputs): HeatBalance | undefined {
  const asked = heatInputs(part, run, inputs);
  return asked === undefined ? undefined : balanceOf(asked);
}

/** What the balance of a part is made with; undefined for what is not cast. Parameters as `partHeat`. */
export function heatInputs(
  part: BatchPart,
  run: ResolvedRun,
  inputs: ClockInputs,
): PieceHeatInputs | undefined {
  const recipe = run.recipes.get(part.recipe);
  if (mouldOf(part) === undefined || recipe === undefined || !(inputs.castMl > 0)) return undefined;
  const sample = batchForFats(partBatter(part, recipe, run.fats).batter, run.fats, 1000);
  if (!sample.ok) return undefined;
  const { fatsG, lyeG, batchG, densityGPerMl } = sample.value;
  const { castMl, mould, roomTemperatureC, sugarPercent } = inputs;
  const isMade = inputs.process !== 'cold';
  const batterTemperatureC = isMade ? SPOONED_C : inputs.batterTemperatureC;
  return {
    ...{ volumeMl: castMl, densityGPerMl, mould, batterTemperatureC, roomTemperatureC, sugarPercent },
    ...(isMade && { isMade }),
    kept: toldKept(part, run) ?? usualKept(mould),
    surfaceCm2: surfaceOf(part, run, castMl),
    wallMm: run.moulds.get(mouldOf(part) ?? '')?.wallMm,
    make: {
      fatsShare: fatsG / batchG,
      lyeShare: lyeG / batchG,
      lyePercent: inputs.lyeConcentrationPercent,
      kohSharePercent: inputs.kohSharePercent,
    },
    pace: paceOfReaction(inputs),
  };
}

/** The surface of what is cast in a cavity, cm²; undefined where the shape of the cavity was not told. */
function surfaceOf(part: BatchPart, run: ResolvedRun, castMl: number): number | undefined {
  const mould = run.moulds.get(mouldOf(part) ?? '');
  if (mould?.shape === undefined) return undefined;
  const holdsMl = cavityMl(mould);
  const byMeasures = shapeVolume(mould.shape);
  if (!byMeasures.ok) return undefined;
  // Where a volume is told as well, the cavity is as large as that and of this form.
  const larger = (holdsMl / byMeasures.value) ** (2 / 3);
  return larger * shapeSurface(mould.shape, Math.min(1, castMl / holdsMl));
}

/** How the mould of a part is said to stand after the pour, by itself or by a part that shares its cavity; undefined where nobody says. */
export function toldKept(part: BatchPart, { design }: ResolvedRun): Kept | undefined {
  const mould = mouldOf(part);
  if (part.kept !== undefined || mould === undefined) return part.kept;
  return sharersOf(design, mould).flatMap((each) => (each.kind === 'batch' ? (each.kept ?? []) : []))[0];
}

/** At which cooked soap and soap that was melted again goes into its mould, °C. Common practice, no source. */
const SPOONED_C = 80;

const [SLOWEST, QUICKEST] = [0.6, 1.8];

/**
 * How many times as fast as the usual batter this one turns to soap at the same temperature: by half of what its trace tells, in
 * logarithms, as much that thickens a batter is no soap yet. Our own judgement, and held where trace tells of lumps and waxes.
 */
function paceOfReaction(inputs: ClockInputs): number {
  const { batterTemperatureC, mixing } = referenceInputs;
  const traceMin = evaluate('medium-trace', { ...inputs, batterTemperatureC, mixing }).medianMin;
  const usualMin = evaluate('medium-trace', referenceInputs).medianMin;
  return Math.min(QUICKEST, Math.max(SLOWEST, Math.sqrt(usualMin / traceMin)));
}

/** Plans and what-ifs ask the same many times; a balance takes some milliseconds. */
const KEPT_BALANCES = 300;
const balances = new Map<string, HeatBalance>();

/** The balance of `heatBalance`, remembered for the next who asks. */
export function balanceOf(inputs: PieceHeatInputs): HeatBalance {
  const key = JSON.stringify(inputs);
  const known = balances.get(key);
  if (known !== undefined) return known;
  const found = heatBalance(inputs);
  const [oldest] = balances.keys();
  if (balances.size >= KEPT_BALANCES && oldest !== undefined) balances.delete(oldest);
  balances.set(key, found);
  return found;
}

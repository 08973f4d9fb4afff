import { shapeVolume, waterFillVolume } from '#chemistry';
import type { Mould } from '#contract';
import { ok, under, type Issue, type Result } from '#units';

/** Temperature of tap water left to stand in the room: what a weighing without one is read at. */
const USUAL_WATER_C = 20;
/** What a mould may state outright, so that no other way of stating it gets further. */
const SMALLEST_ML = 0.1;
const LARGEST_ML = 50_000;
/** So far the measures of a cavity may lie from its volume. Common practice, no source: three sides of 40 mm to a millimetre, and corners. */
const SHAPE_TOLERANCE = 0.15;

/**
 * Volume of one cavity of a mould, however it was stated.
 * @returns mL
 * @throws RangeError on a mould that `checkMould` refuses: check it first
 */
export function cavityMl(mould: Mould): number {
  const volume = volumeOf(mould);
  if (!volume.ok) throw new RangeError(`mould ${mould.key} was not checked`);
  return volume.value;
}

/**
 * Checks that a mould's measures make a cavity.
 * @returns `shape.measure-out-of-range`, `shape.tube-too-thick`, `mould.cavity-out-of-range`, `mould.shape-differs`; paths from the mould
 */
export function checkMould(mould: Mould): Issue[] {
  const volume = volumeOf(mould);
  return volume.ok ? [] : [...volume.issues];
}

function volumeOf(mould: Mould): Result<number> {
  const { shape } = mould;
  const statedMl = statedVolume(mould);
  if (shape === undefined) {
    if (statedMl === undefined) throw new RangeError(`mould ${mould.key} was not read through the contract`);
    return ok(statedMl);
  }
  const volume = shapeVolume(shape);
  if (!volume.ok) return { ok: false, issues: under(['shape'], volume.issues) };
  if (statedMl !== undefined) return agreed(statedMl, volume.value);
  if (volume.value >= SMALLEST_ML && volume.value <= LARGEST_ML) return volume;
  const code = 'mould.cavity-out-of-range';
  const accepted = { kind: 'range', low: SMALLEST_ML, high: LARGEST_ML, unit: 'mL' } as const;
  const { value } = volume;
  return { ok: false, issues: [{ code, path: ['shape'], value, accepted, holdsMl: value }] };
}

function statedVolume({ cavityMl: statedMl, waterFillG, waterC }: Mould): number | undefined {
  if (statedMl !== undefined || waterFillG === undefined) return statedMl;
  return waterFillVolume(waterFillG, waterC ?? USUAL_WATER_C);
}

/** A volume counts where the measures of its cavity come near it: corners are round, and a rule is read to a millimetre. */
function agreed(statedMl: number, holdsMl: number): Result<number> {
  if (Math.abs(holdsMl / statedMl - 1) <= SHAPE_TOLERANCE) return ok(statedMl);
  const [low, high] = [statedMl * (1 - SHAPE_TOLERANCE), statedMl * (1 + SHAPE_TOLERANCE)];
  const accepted = { kind: 'range', low, high, unit: 'mL' } as const;
  const code = 'mould.shape-differs';
  return { ok: false, issues: [{ code, path: ['shape'], value: holdsMl, accepted, statedMl, holdsMl }] };
}

import { scaleLinear } from 'd3-scale';
import type { Stretch } from '../look/local-days.js';

/** Pixels above the water, where days and times stand. */
export const HEAD = 46;
/** Pixels for the name of a part, above its flags. */
const NAME = 22;
/** Pixels from the middle of a ribbon to that of the lowest flag on it. */
export const POLE = 38;
/** Pixels from one flag to the next above it: as much as a fingertip needs at least. */
export const LEVEL = 26;
/** Pixels below a ribbon. */
const BELOW = 8;
/** Pixels of a ribbon that is as thick as it gets. */
export const THICKEST = 48;

/** Where things are on the chart, in pixels. */
export interface Frame {
  readonly view: Stretch;
  readonly width: number;
  readonly height: number;
  readonly x: (at: number) => number;
  readonly at: (x: number) => number;
  /** Upper edge of what belongs to a ribbon. */
  readonly top: (row: number) => number;
  /** Middle of a ribbon. */
  readonly y: (row: number) => number;
}

/** The scale of time alone. */
export function timeScale(view: Stretch, width: number): Pick<Frame, 'x' | 'at'> {
  const scale = scaleLinear([view.from, view.to], [0, width]);
  return { x: scale, at: (x) => scale.invert(x) };
}

/** @param levels for each ribbon, how many flags hang above each other on it */
export function frameOf(view: Stretch, width: number, levels: readonly number[]): Frame {
  const above = (row: number): number =>
    NAME + POLE + Math.max(0, (levels[row] ?? 1) - 1) * LEVEL + LEVEL / 2;
  const tops = [HEAD + 6];
  levels.forEach((_, row) => tops.push(tops[row]! + above(row) + THICKEST / 2 + BELOW));
  const top = (row: number): number => tops[row] ?? HEAD;
  return {
    ...{ view, width, ...timeScale(view, width), top },
    height: tops.at(-1)! + 26,
    y: (row) => top(row) + above(row),
  };
}

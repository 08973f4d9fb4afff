import { scaleLinear } from 'd3-scale';
import type { Stretch } from './local-days.js';

/** Pixels above the water, where days and times stand. */
export const HEAD = 46;
/** Pixels from one ribbon's middle to the next. */
const ROW = 78;
/** Pixels of a ribbon that is as thick as it gets. */
export const THICKEST = 48;

/** Where things are on the chart, in pixels. */
export interface Frame {
  readonly view: Stretch;
  readonly width: number;
  readonly height: number;
  readonly x: (at: number) => number;
  readonly at: (x: number) => number;
  /** Middle of a ribbon. */
  readonly y: (row: number) => number;
}

export function frameOf(view: Stretch, width: number, rows: number): Frame {
  const scale = scaleLinear([view.from, view.to], [0, width]);
  return {
    view,
    width,
    height: HEAD + rows * ROW + 26,
    x: scale,
    at: (x) => scale.invert(x),
    y: (row) => HEAD + 18 + row * ROW + ROW / 2,
  };
}

import type { Stretch } from '../look/local-days.js';

/** The shortest and the longest stretch that can be looked at, in milliseconds. */
const CLOSEST = 20 * 60_000;

/** The view with time `about` staying where it is on the screen. @param factor below 1: closer */
export function zoomed(view: Stretch, factor: number, about: number, whole: Stretch): Stretch {
  const length = view.to - view.from;
  const wanted = Math.min(Math.max(length * factor, CLOSEST), whole.to - whole.from);
  const share = (about - view.from) / length;
  return kept({ from: about - share * wanted, to: about + (1 - share) * wanted }, whole);
}

/** The view moved on by a share of its length; it never leaves the whole. */
export function panned(view: Stretch, share: number, whole: Stretch): Stretch {
  const by = share * (view.to - view.from);
  return kept({ from: view.from + by, to: view.to + by }, whole);
}

/** The view moved, if need be, so that an instant is well inside. */
export function showing(view: Stretch, at: number, whole: Stretch): Stretch {
  const margin = (view.to - view.from) * 0.08;
  if (at >= view.from + margin && at <= view.to - margin) return view;
  const half = (view.to - view.from) / 2;
  return kept({ from: at - half, to: at + half }, whole);
}

function kept(view: Stretch, whole: Stretch): Stretch {
  const length = Math.min(view.to - view.from, whole.to - whole.from);
  const from = Math.min(Math.max(view.from, whole.from), whole.to - length);
  return { from, to: from + length };
}

const steps = [5, 15, 30, 60, 120, 180, 360, 720] as const;
const ROOM_FOR_A_TIME = 46;

/** Minutes between times that are written, so that they have room; undefined: only days have. */
export function timeStep(view: Stretch, width: number): number | undefined {
  const pixelsPerMinute = width / ((view.to - view.from) / 60_000);
  return steps.find((step) => step * pixelsPerMinute >= ROOM_FOR_A_TIME);
}

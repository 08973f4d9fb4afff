import type { Contingent } from '../controllability/stnu.js';
import type { Curve } from './curve.js';
import type { CurvedWait } from './implied-waits.js';
import type { PlanLink } from './plan-links.js';

/** A state that opens something, where it stands in the network. */
export interface Opened extends CurvedWait {
  readonly moment: Moment;
}

/** `shift` minutes after a point. */
export interface Moment {
  readonly point: number;
  readonly shift: number;
}

/**
 * Points for the states that openings wait for, numbered from `points`.
 * @param gap how long after the one before a state of the same draw comes; null: that cannot be told
 */
export function statesOf(
  points: number,
  openings: readonly CurvedWait[],
  gap: (before: Curve, curve: Curve) => { readonly min: number; readonly max: number } | null,
): { readonly opened: Opened[]; readonly contingents: Contingent[] } {
  const contingents: Contingent[] = [];
  const after = ({ point, shift }: Moment, min: number, max: number): Moment => {
    if (min === max) return { point, shift: shift + min };
    const to = points + contingents.length;
    contingents.push({ from: point, to, min: shift + min, max: shift + max });
    return { point: to, shift: 0 };
  };
  const last = new Map<string, Opened>();
  const inOrder = [...openings].sort((a, b) => a.curve.low - b.curve.low || a.curve.high - b.curve.high);
  const opened = inOrder.map(({ wait, curve }): Opened => {
    const key = `${wait.from} ${wait.length.draw}`;
    const before = last.get(key);
    if (before !== undefined && isSame(before.curve, curve)) return { wait, curve, moment: before.moment };
    const apart = before === undefined ? null : gap(before.curve, curve);
    const moment =
      before === undefined || apart === null
        ? after({ point: wait.from, shift: 0 }, curve.low, curve.high)
        : after(before.moment, apart.min, apart.max);
    const state = { wait, curve, moment };
    last.set(key, state);
    return state;
  });
  return { opened, contingents };
}

/** What waits for a state starts when it has come, or later. */
export function openingLink({ wait: { to, tag }, moment: { point, shift } }: Opened): PlanLink {
  return { from: point, to, min: shift, tag };
}

function isSame(a: Curve, b: Curve): boolean {
  return a.offset === b.offset && a.median === b.median && a.sigma === b.sigma;
}

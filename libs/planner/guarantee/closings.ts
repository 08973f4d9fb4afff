import type { Stnu } from '../controllability/stnu.js';
import { difference, wholeBelow } from './curve.js';
import { GapGraph } from './gap-graph.js';
import type { CurvedWait } from './implied-waits.js';
import type { Opened } from './opened-states.js';
import type { PlanLink } from './plan-links.js';

/** What must come before a closing comes before the earliest of its band. */
export function closingLink({ wait: { from, to, last, tag }, curve }: CurvedWait): PlanLink {
  return { from, to, max: curve.low - last, tag };
}

/** Closings told from states that open where that can be, else at the earliest of their bands. */
export function toldClosings(
  net: Stnu,
  opened: readonly Opened[],
  closings: readonly CurvedWait[],
): PlanLink[] {
  const settled: PlanLink[] = [];
  const others: CurvedWait[] = [];
  for (const closing of closings) {
    const alike = opened.filter(({ wait }) => wait.length.draw === closing.wait.length.draw);
    const own = alike.filter(({ wait }) => wait.from === closing.wait.from);
    const told = toldFrom(closing, own, () => 0);
    if (told !== null) settled.push(told);
    else if (alike.length === 0) settled.push(closingLink(closing));
    else others.push(closing);
  }
  // These must not be proved from one another, only from what stands without them.
  const proved = new GapGraph(net.points, [...net.requirements, ...settled, ...net.contingents]);
  const told = others.map((closing) => {
    const alike = opened.filter(({ wait }) => wait.length.draw === closing.wait.length.draw);
    const gap = (state: Opened): number => proved.leastGap(state.wait.from, closing.wait.from);
    return toldFrom(closing, alike, gap) ?? closingLink(closing);
  });
  return [...settled, ...told];
}

/**
 * A closing told from the state that shows most of their draw.
 * @param gap the least time from the point a state counts from to the one that the closing counts from
 * @returns null when it may come before each of the states
 */
function toldFrom(
  closing: CurvedWait,
  states: readonly Opened[],
  gap: (state: Opened) => number,
): PlanLink | null {
  const spread = ({ curve }: Opened): number => curve.high - curve.low;
  for (const state of [...states].sort((a, b) => spread(b) - spread(a))) {
    const least = gap(state) + difference(state.curve, closing.curve).least;
    if (least < 0) continue;
    const { to, last, tag } = closing.wait;
    const { point, shift } = state.moment;
    return { from: point, to, max: shift + wholeBelow(least) - last, tag };
  }
  return null;
}

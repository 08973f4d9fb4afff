import type { Stnu } from '../controllability/stnu.js';
import type { Problem, Schedule } from '../problem.js';
import { closingLink, toldClosings } from './closings.js';
import { curveOf, difference, wholeBelow } from './curve.js';
import { withoutImplied, type CurvedWait } from './implied-waits.js';
import { openingLink, statesOf } from './opened-states.js';
import { planLinks, type PlanLink } from './plan-links.js';

/** A plan as a temporal network with uncertainty; `requirements` say what of the problem asks for them. */
export interface PlanNetwork extends Stnu {
  readonly requirements: readonly PlanLink[];
}

/**
 * A plan with every state that opens something as a point of its own, at the end of a contingent link from what it
 * counts from, as if each could come at any time of its band whatever the others do. Lags that count from one point to
 * one state share it. A state that closes something shows only once it is too late, so nobody can wait for it: it is
 * taken at the earliest of its band, and needs no point.
 *
 * That is cautious. All that soap can do is among what is allowed to it here, and shows as it does here; whoever can
 * answer all of that can answer what soap can do.
 */
export function looseNetwork(p: Problem, s: Schedule, certainty: number): PlanNetwork {
  const { points, links, openings, closings } = sorted(p, s, certainty);
  const { opened, contingents } = statesOf(points, openings, () => null);
  return {
    points: points + contingents.length,
    requirements: [...links, ...opened.map(openingLink), ...closings.map(closingLink)],
    contingents,
  };
}

/**
 * The same for states that share a draw: a slow batch is slow to firm and slow to stiffen too. States that count from
 * one point come one after the other, each as long after the one before as the two may lie apart at one and the same
 * draw. A closing is told from a state that opens, which shows how fast the draw is: it comes no sooner after it than
 * the two may lie apart, less what the plan may put between the points they count from. Openings that others imply are
 * left out.
 *
 * That is cautious too, and mostly less so. Rounding to whole minutes, gaps that shrink as the draw grows, and closings
 * told from another point can ask for more than in `looseNetwork`.
 */
export function linkedNetwork(p: Problem, s: Schedule, certainty: number): PlanNetwork {
  const { points, links, openings, closings } = sorted(p, s, certainty);
  const kept = withoutImplied(points, links, openings);
  const { opened, contingents } = statesOf(points, kept, (before, curve) => {
    const { least, greatest } = difference(before, curve);
    return least < 0 ? null : { min: wholeBelow(least), max: -wholeBelow(-greatest) };
  });
  const net = {
    points: points + contingents.length,
    requirements: [...links, ...opened.map(openingLink)],
    contingents,
  };
  return { ...net, requirements: [...net.requirements, ...toldClosings(net, opened, closings)] };
}

function sorted(
  p: Problem,
  s: Schedule,
  certainty: number,
): { points: number; links: readonly PlanLink[]; openings: CurvedWait[]; closings: CurvedWait[] } {
  const { points, links, waits } = planLinks(p, s);
  const curved = waits.map((wait) => ({ wait, curve: curveOf(wait, p.draws, certainty) }));
  return {
    points,
    links,
    openings: curved.filter(({ wait }) => wait.side === 'at-least'),
    closings: curved.filter(({ wait }) => wait.side === 'at-most'),
  };
}

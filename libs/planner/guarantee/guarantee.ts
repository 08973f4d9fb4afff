import { minimalConflict } from '../conflict.js';
import { controllability } from '../controllability/controllability.js';
import type { Certainty, Problem, Requirement, Schedule } from '../problem.js';
import { linkedNetwork, looseNetwork, type PlanNetwork } from './plan-network.js';

/**
 * `requirements`: what cannot all be kept whatever the soap does; all but any one of them can. What was proved from the
 * rest of the plan, such as which of two layers is firm last, is taken as given.
 */
export type Guarantee =
  | { readonly holds: true }
  | { readonly holds: false; readonly requirements: readonly Requirement[] };

/**
 * Whether the order of a plan can be carried through however long every uncertain length turns out within its band,
 * each decision resting only on what has come about by then: dynamic controllability of the plan as a temporal network
 * with uncertainty. A state is taken to be seen when it comes; one that closes something is seen too late to help.
 *
 * Stages follow the order of the schedule, not its start times: one may be earlier or later than planned. Hours are no
 * part of it, since they have gaps, which such networks have not; the odds cover them. Every length is within its band,
 * from the quantile 1 − certainty to the quantile `certainty`, after what was observed of its draw; several such bands
 * hold at once less often than one. What is fixed is a fact and never among the reasons.
 *
 * It is cautious: it may miss that a plan holds, since lengths of one draw that count from different points are taken
 * to vary each by itself unless the plan proves how far apart they count; it never claims control that is not there.
 * @param certainty above 0.5 and below 1; 0.9 asks about bands of 80 %
 */
export function guarantee(p: Problem, s: Schedule, certainty: Certainty = 0.9): Guarantee {
  // Both networks allow all that soap can do, so that either is enough.
  if (controllability(looseNetwork(p, s, certainty)).controllable) return { holds: true };
  const net = linkedNetwork(p, s, certainty);
  const found = controllability(net);
  if (found.controllable) return { holds: true };
  const named = new Set(
    found.cycle.flatMap(({ kind, index }) => {
      const tag = kind === 'requirement' ? net.requirements[index]!.tag : null;
      return tag === null ? [] : [tag];
    }),
  );
  return {
    holds: false,
    requirements: minimalConflict(
      [...named],
      (part) => !controllability(restricted(net, new Set(part))).controllable,
    ),
  };
}

function restricted(net: PlanNetwork, kept: ReadonlySet<Requirement>): PlanNetwork {
  return { ...net, requirements: net.requirements.filter(({ tag }) => tag === null || kept.has(tag)) };
}

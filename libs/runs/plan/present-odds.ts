import type { PlanDocument, WeakLink } from '#contract';
import type { Odds, Schedule } from '#planner';
import { describeLoss } from './describe-loss.js';
import { stageNamed, type Network } from './network-references.js';

const losses = { requirement: 'pieces', 'due-date': 'day', preference: 'looks' } as const;

/** The odds of a plan and where they are lost, as the plan document shows them; the bowl is not in them yet: see `withPaceOdds`. */
export function presentOdds(
  odds: Odds | null,
  network: Network,
  schedule: Schedule,
): Pick<PlanDocument, 'odds' | 'weakLinks'> {
  if (odds === null) return { odds: null, weakLinks: [] };
  const { atAll, onTime, asPlanned, standardError, scenarios, seed } = odds;
  return {
    odds: { soundAtAll: atAll, soundByTheDay: onTime, asPlanned, standardError, scenarios, seed },
    weakLinks: weakLinksOf(odds, network, schedule),
  };
}

function weakLinksOf({ losses: lost }: Odds, { references }: Network, schedule: Schedule): WeakLink[] {
  return lost.map((each) => {
    const { run, stage, attempt } = stageNamed(references, each.stage);
    const why = describeLoss(each, references, schedule.starts);
    return { run, stage: stage ?? 'ready', attempt, share: each.share, loses: losses[each.loses], why };
  });
}

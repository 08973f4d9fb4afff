import type { FillingTime, PlanDocument, WeakLink } from '#contract';
import { fillingTimes } from '../clocks/filling-time.js';
import { makingAttempt, type AssessedRun } from '../assessed-run.js';
import { partReference } from './network-references.js';
import { recipeKeyOf } from '../input/resolve-run.js';

/** The windows in the bowl: the share of scenarios lost at one of them. */
interface PaceLoss {
  readonly run: AssessedRun;
  readonly time: FillingTime;
}

/**
 * Takes the batter clock into the odds of a plan. What happens in the bowl depends on no hour and on no other clock, so
 * the chance that all pieces are done in time multiplies the odds of the windows. Batches of one recipe are fast or
 * slow together, so of these only the most pressed counts.
 */
export function withPaceOdds<Told extends Pick<PlanDocument, 'odds' | 'weakLinks'>>(
  document: Told,
  assessedRuns: readonly AssessedRun[],
): Told {
  const { odds } = document;
  if (odds === null) return document;
  const losses = mostPressed(assessedRuns);
  const links: WeakLink[] = [];
  let kept = 1;
  for (const { run, time } of losses) {
    links.push(linkOf(run, time, kept * (1 - time.chance)));
    kept *= time.chance;
  }
  const windows = document.weakLinks.map((link) => ({ ...link, share: link.share * kept }));
  return {
    ...document,
    odds: {
      ...odds,
      soundAtAll: odds.soundAtAll * kept,
      soundByTheDay: odds.soundByTheDay * kept,
      asPlanned: odds.asPlanned * kept,
      standardError: odds.standardError * kept,
    },
    weakLinks: [...links, ...windows].filter(({ share }) => share > 0).sort((a, b) => b.share - a.share),
  };
}

/** The chance that in every bowl all pieces are done in time: what no start and no plan can better. */
export function paceChance(assessedRuns: readonly AssessedRun[]): number {
  return mostPressed(assessedRuns).reduce((chance, { time }) => chance * time.chance, 1);
}

function mostPressed(assessedRuns: readonly AssessedRun[]): PaceLoss[] {
  const pressed = new Map<string, PaceLoss>();
  for (const run of assessedRuns) {
    for (const time of fillingTimes(run)) {
      if (makingAttempt(run, time.part)?.status !== 'open') continue;
      const batter = `${run.run.order.key}/${recipeKeyOf(run.run, time.part)}`;
      const before = pressed.get(batter);
      if (before === undefined || time.chance < before.time.chance) pressed.set(batter, { run, time });
    }
  }
  return [...pressed.values()];
}

function linkOf(assessed: AssessedRun, time: FillingTime, share: number): WeakLink {
  return {
    run: assessed.run.order.key,
    stage: time.stage,
    attempt: makingAttempt(assessed, time.part)?.attempt ?? 1,
    share,
    loses: 'pieces',
    why: {
      ...{ code: 'loss.batter', part: partReference(assessed, time.part) },
      ...{ minutes: time.neededMin, leaves: time.stretchMin },
    },
  };
}

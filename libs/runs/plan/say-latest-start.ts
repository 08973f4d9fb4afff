import type { PlanDocument } from '#contract';

/** A share as a whole percentage, or finer near 0 and 1, where whole ones would say never or always. */
export function percentOf(share: number): string {
  const percent = share * 100;
  return `${percent > 99 || percent < 1 ? percent.toFixed(1) : percent.toFixed(0)} %`;
}

/** Why no start reaches the odds that are wanted, and whether an earlier one would help. */
export function reasonOutOfReach(of: {
  readonly plan: PlanDocument;
  /** Local text of the best start. */
  readonly begin: string;
  readonly wantedOdds: number;
  readonly bound: number;
  readonly pace: number;
  /** Nothing can begin before this minute. */
  readonly open: number;
  /** The first start tried; null where every start would do but for the batter. */
  readonly lookedFrom: string | null;
}): string {
  const { plan, begin, wantedOdds, bound, pace, open, lookedFrom } = of;
  const best = plan.odds?.probability ?? 0;
  const sentences = [
    `No start has odds of ${percentOf(wantedOdds)}; the best found are ${percentOf(best)}, begun ${begin}.`,
  ];
  const links = plan.weakLinks.slice(0, 2).map(({ share, why }) => `${percentOf(share)} lost: ${why}`);
  if (links.length > 0) sentences.push(`What stands in the way: ${links.join(' ')}`);
  if (pace < wantedOdds) {
    sentences.push(`The batter alone leaves odds of ${percentOf(pace)}, whenever it begins.`);
  } else if (bound < wantedOdds) {
    sentences.push(`Even with every state known beforehand no plan has odds above ${percentOf(bound)}.`);
  }
  const limited = lookedFrom !== null && Date.parse(lookedFrom) <= open * 60_000;
  if (!limited && lookedFrom !== null) {
    sentences.push(
      'An earlier start would not help: the day no longer matters then, and a whole week was tried.',
    );
  }
  return sentences.join(' ');
}

import type { Remedy } from '#contract';
import { minuteOfIso } from '#units';

/** Not more than can be weighed against each other at a glance. */
const SHOWN = 5;
/** Standard errors that a gain has to be above: less may be luck. */
const SURELY = 2;
/** Odds that are worth no change where another gains more, and those worth none at all, however sure they are. */
const WORTHWHILE = 0.05;
const TRIFLE = 0.005;

/**
 * The remedies to show: those that gain five in a hundred, or else the one that helps most; that gain more than chance would and that no other outdoes, the most odds for each point of
 * disturbance first. Where there is no plan, all that make one possible gain the odds that it has.
 */
export function chooseRemedies(remedies: readonly Remedy[]): Remedy[] {
  const helping = remedies.filter(
    ({ effects: { odds } }) => odds.gain >= TRIFLE && odds.gain > SURELY * odds.standardError,
  );
  const worthwhile = helping.filter(({ effects: { odds } }) => odds.gain >= WORTHWHILE);
  const few = [...helping].sort((a, b) => worth(b) - worth(a)).slice(0, 1);
  const shown = worthwhile.length > 0 ? worthwhile : few;
  return shown
    .filter((each) => !shown.some((other) => other !== each && outdoes(other, each)))
    .sort((a, b) => worth(b) - worth(a) || a.disturbance.points - b.disturbance.points)
    .slice(0, SHOWN);
}

/** Odds gained for each point of disturbance. */
function worth({ effects, disturbance }: Remedy): number {
  return effects.odds.gain / disturbance.points;
}

/** Whether one remedy is as good as another in all that counts and better in something. */
function outdoes(a: Remedy, b: Remedy): boolean {
  const [one, other] = [scores(a), scores(b)];
  return one.every((score, i) => score >= (other[i] ?? 0)) && one.some((score, i) => score > (other[i] ?? 0));
}

/** More is better in each. */
function scores({ effects, disturbance }: Remedy): number[] {
  const ready = effects.runs.map(({ readyAt }) => (readyAt.after === null ? 0 : minuteOfIso(readyAt.after)));
  return [effects.odds.gain, -disturbance.points, -Math.max(0, ...ready), effects.pieces.after];
}

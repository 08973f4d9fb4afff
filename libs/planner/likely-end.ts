import { deliveriesOf, totalEnd } from './deliveries.js';
import { lengthAt } from './length.js';
import type { Problem, Schedule } from './problem.js';
import { isUnattended } from './simulation-model.js';

/**
 * When what a schedule makes is likely to be ready, if all is done as planned: the minute at which a delivery ends, in the mean of
 * all; and as much of that mean as comes of deliveries for which no day was asked. What nobody does counts at its likely length, whatever certainty it was planned at, so that schedules of several
 * certainties compare.
 */
export function likelyEnd(
  p: Problem,
  { starts }: Schedule,
): { readonly end: number; readonly waited: number } {
  const deliveries = deliveriesOf(p);
  const places = new Map(p.stages.map(({ id }, i) => [id, i]));
  const at = (i: number): number => {
    const stage = p.stages[i]!;
    const planned = stage.fixed ?? starts.get(stage.id)!;
    if (!isUnattended(p, stage)) return planned;
    let ready = stage.earliest ?? p.from;
    for (const { from, to, point, atLeast } of p.lags) {
      if (to !== stage.id || atLeast === undefined) continue;
      const before = p.stages[places.get(from)!]!;
      const since = (before.fixed ?? starts.get(from)!) + (point === 'end' ? before.duration : 0);
      ready = Math.max(ready, since + lengthAt(atLeast, 0.5, 'at-least', p.draws));
    }
    return ready;
  };
  const undated = deliveries.filter((stages) => stages.every((i) => p.stages[i]!.isDue !== true));
  const mean = (some: readonly (readonly number[])[]): number =>
    totalEnd(some, at, (i) => p.stages[i]!.duration) / deliveries.length;
  return { end: mean(deliveries), waited: mean(undated) };
}

import { band, states, type StateId } from '#clocks';
import type { Risk, StageKind } from '#contract';
import { bandText, durationText } from './duration-text.js';
import type { RunInHand } from './run-in-hand.js';
import { makingStage } from './workings.js';

/** Up to which state of the batter each way of working goes: common practice, no source. */
const worksUntil: Partial<Readonly<Record<StageKind, StateId>>> = {
  pour: 'medium-trace',
  dip: 'medium-trace',
  layer: 'thick-trace',
  pipe: 'stiff',
};

/**
 * The risk where filling, dipping or piping all pieces takes longer than the batter may stay workable.
 * The whole time for the pieces is held against the early end of the band, counted from lye-in; mixing is not.
 */
export function warnOfPace(hand: RunInHand, part: string, count: number): Risk[] {
  const stage = makingStage(hand.run.design, part);
  const state = stage === undefined ? undefined : worksUntil[stage.kind];
  const forecast = state === undefined ? undefined : hand.clocks.get(part)?.get(state);
  if (stage === undefined || state === undefined || forecast === undefined || stage.perPieceS === 0)
    return [];
  const needed = (stage.perPieceS * count) / 60;
  const times = band(forecast);
  if (needed <= times.low) return [];
  const inTime = Math.floor((times.low * 60) / stage.perPieceS);
  return [
    {
      code: 'batter.pace',
      text:
        `${String(count)} pieces take ${durationText(needed)}; the batter is at “${states[state].title}” ` +
        `${bandText(times)} after lye-in. In time nine times out of ten: ${String(Math.min(inTime, count))}.`,
      remedy: 'Split the batch, or slow it with cooler batter, more water or a milder fragrance.',
    },
  ];
}

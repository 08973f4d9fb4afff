import type { Disturbance, RemedyEffects } from '#contract';
import { minuteOfIso } from '#units';
import type { Candidate } from './candidate.js';
import type { NewRisk } from './new-risks.js';

/**
 * What a remedy asks of the maker, in points. One point is about an hour at the bench at a time that was to be free.
 * The weights are our own judgement, no source: what each change asks for by itself stands with its kind, and what the
 * plan makes of it is added here.
 */
const weights = {
  /** To think of it and to do it. */
  anyChange: 0.5,
  /** A stage at another time than was planned. */
  movedStage: 0.1,
  /** Going to the bench once more. */
  sitting: 1,
  /** An hour more at the bench, within the maker’s hours. */
  benchHour: 1,
  /** A week later until the lot is cured. */
  laterWeek: 1,
  risk: { low: 0.5, medium: 1, high: 3 },
} as const;

const WEEK = 7 * 1440;

/** @param effects absent: only what the change asks for by itself and how many stages it moves */
export function disturbanceOf(
  candidate: Candidate,
  moved: number,
  effects?: RemedyEffects,
  risks: readonly NewRisk[] = [],
): Disturbance {
  const { before: sittings = null, after: sittingsNow = 0 } = effects?.sittings ?? {};
  const { before: bench = null, after: benchNow = 0 } = effects?.benchMin ?? {};
  const later = (effects?.runs ?? []).reduce((sum, { readyAt: { before, after } }) => {
    if (before === null || after === null) return sum;
    return sum + Math.max(0, minuteOfIso(after) - minuteOfIso(before));
  }, 0);
  const [sittingsMore, longer] = [more(sittings, sittingsNow), more(bench, benchNow)];
  const all: Disturbance['of'] = [
    { what: { code: 'disturbance.any-change' }, points: weights.anyChange },
    ...candidate.asks,
    { what: { code: 'disturbance.moved-stages', moved }, points: weights.movedStage * moved },
    { what: { code: 'disturbance.sittings', more: sittingsMore }, points: weights.sitting * sittingsMore },
    { what: { code: 'disturbance.bench-time', minutes: longer }, points: (weights.benchHour * longer) / 60 },
    { what: { code: 'disturbance.later-cure', minutes: later }, points: (weights.laterWeek * later) / WEEK },
    ...risks.map(({ parts, risk }) => ({
      what: { code: 'disturbance.new-risk' as const, parts: [...parts] },
      points: weights.risk[risk.level],
    })),
  ];
  const of = all.filter(({ points }) => points > 0);
  return { points: of.reduce((sum, { points }) => sum + points, 0), of };
}

function more(before: number | null, after: number): number {
  return before === null ? 0 : Math.max(0, after - before);
}

import type { RemedyChangeBesides, RemedyEffects, RemedyGain, RemedyLoss } from '#contract';
import { minuteOfIso } from '#units';
import type { Compared } from './compared.js';

/** Materials that are named; the rest is counted. */
const NAMED_MATERIALS = 4;
/** A cure that is earlier by less is as good as the same, minutes. */
const HALF_A_DAY = 720;
/** Sums of money that differ by less are the same. */
const NO_MONEY = 0.005;

/** What becomes better. */
export function describeGains(
  { odds, runs, sittings }: RemedyEffects,
  { before: had, after }: Compared,
): RemedyGain[] {
  const head: RemedyGain =
    odds.before === null
      ? { code: 'remedy.makes-plan', odds: odds.after }
      : { code: 'remedy.better-odds', before: odds.before, after: odds.after };
  const earlier = runs.flatMap(({ run, readyAt }) => {
    if (readyAt.before === null || readyAt.after === null) return [];
    const minutes = minuteOfIso(readyAt.before) - minuteOfIso(readyAt.after);
    if (minutes < HALF_A_DAY) return [];
    return [{ code: 'remedy.earlier-cure' as const, run: titleOf(run, after), minutes }];
  });
  const fewer = sittings.before === null ? 0 : sittings.before - sittings.after;
  const [was, holds] = [had.document.guarantee, after.document.guarantee];
  return [
    head,
    ...(holds?.holds === true && was?.holds !== true
      ? [{ code: 'remedy.holds-within' as const, bandPercent: holds.bandPercent }]
      : []),
    ...earlier,
    ...(fewer > 0 ? [{ code: 'remedy.fewer-sittings' as const, fewer }] : []),
  ];
}

/** Materials that cost more with a change, or less. */
export function describeCost({ materialCost }: RemedyEffects): {
  readonly worse: RemedyLoss[];
  readonly also: RemedyChangeBesides[];
} {
  const more = materialCost === undefined ? 0 : materialCost.after - materialCost.before;
  if (materialCost === undefined || Math.abs(more) < NO_MONEY) return { worse: [], also: [] };
  const { currency, complete } = materialCost;
  const sum = { amount: Math.abs(more), ...(currency !== undefined && { currency }), complete };
  return more > 0
    ? { worse: [{ code: 'remedy.costs-more', ...sum }], also: [] }
    : { worse: [], also: [{ code: 'remedy.costs-less', ...sum }] };
}

/** What else changes: stages that move, and amounts to weigh. */
export function describeBesides(
  { runs, materials }: RemedyEffects,
  { after }: Compared,
): RemedyChangeBesides[] {
  const moves = runs.flatMap(({ run, moved }) =>
    moved === 0 ? [] : [{ code: 'remedy.stages-move' as const, run: titleOf(run, after), moved }],
  );
  if (materials.length === 0) return moves;
  const named = [...materials]
    .sort((a, b) => Math.abs(b.after - b.before) - Math.abs(a.after - a.before))
    .slice(0, NAMED_MATERIALS);
  const more = materials.length - named.length;
  return [...moves, { code: 'remedy.other-amounts', materials: named, more }];
}

function titleOf(run: string, { document }: Compared['after']): string {
  return document.runs.find((each) => each.run === run)?.title ?? run;
}

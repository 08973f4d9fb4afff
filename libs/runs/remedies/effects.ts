import type { MaterialEffect, RemedyEffects } from '#contract';
import { costPieces } from '../amounts/cost-pieces.js';
import { materialsOf, type MaterialUse } from '../amounts/materials-of.js';
import type { RunsInput } from '../input/input.js';
import { comparePlans } from '../plan/compare-plans.js';
import type { FullPlan } from '../plan/plan-run.js';
import { benchMinutes, runPairs, type Compared } from './compared.js';
import type { Gain } from './paired-gain.js';

/** Less of a material than this is no other amount, g or pieces. */
const NOTHING = 0.05;

/** What a change does to a plan, in figures, from the two plans. */
export function effectsOf(compared: Compared, { standardError }: Gain): RemedyEffects {
  const { before, after, inputs, stood } = compared;
  const had = before.document.status === 'planned';
  const was = <T>(value: T): T | null => (had ? value : null);
  const odds = {
    before: before.document.odds?.soundByTheDay ?? null,
    after: after.document.odds?.soundByTheDay ?? 0,
  };
  const changes = stood === undefined ? [] : comparePlans(stood, after.document);
  const cost = { before: costOf(before, inputs.before), after: costOf(after, inputs.after) };
  const { currency } = inputs.after.workshop;
  return {
    odds: { ...odds, gain: odds.after - (odds.before ?? 0), standardError },
    pieces: { before: piecesIn(before), after: piecesIn(after) },
    sittings: { before: was(before.document.sittings.length), after: after.document.sittings.length },
    benchMin: { before: was(benchMinutes(before.document)), after: benchMinutes(after.document) },
    runs: runPairs(compared).map((pair) => ({
      run: pair.now.run,
      readyAt: { before: pair.was.ready?.likely ?? null, after: pair.now.ready?.likely ?? null },
      moved: changes.filter(({ run }) => run === pair.now.run).length,
    })),
    materials: materialEffects(usesOf(before), usesOf(after)),
    ...((cost.before.sum > 0 || cost.after.sum > 0) && {
      materialCost: {
        ...(currency !== undefined && { currency }),
        before: cost.before.sum,
        after: cost.after.sum,
        complete: cost.before.complete && cost.after.complete,
      },
    }),
  };
}

function piecesIn({ document }: FullPlan): number {
  return document.runs.reduce((sum, { count }) => sum + count, 0);
}

function usesOf({ document }: FullPlan): MaterialUse[] {
  return materialsOf(document.runs.flatMap(({ amounts }) => amounts));
}

function materialEffects(before: readonly MaterialUse[], after: readonly MaterialUse[]): MaterialEffect[] {
  const name = ({ key, kind, unit, title }: MaterialUse): string => `${unit} ${kind} ${key} ${title}`;
  const amounts = new Map(before.map((use) => [name(use), use.amount]));
  const now = new Map(after.map((use) => [name(use), use.amount]));
  const all = new Map([...before, ...after].map((use) => [name(use), use]));
  return [...all].flatMap(([id, { key, title, unit }]) => {
    const [was, is] = [amounts.get(id) ?? 0, now.get(id) ?? 0];
    return Math.abs(is - was) < NOTHING ? [] : [{ key, title, unit, before: was, after: is }];
  });
}

/** What the materials of all runs cost, at the best prices known. */
function costOf(
  { document, assessedRuns }: FullPlan,
  { workshop }: RunsInput,
): { sum: number; complete: boolean } {
  const materialsAlone = { ...workshop, hourlyRate: 0 };
  const costs = document.runs.flatMap(({ run, amounts, count }) => {
    const assessed = assessedRuns.find((each) => each.run.order.key === run);
    if (assessed === undefined) return [];
    const { materials, complete } = costPieces(assessed, materialsOf(amounts), materialsAlone);
    return [{ cost: materials * count, complete }];
  });
  return {
    sum: costs.reduce((sum, { cost }) => sum + cost, 0),
    complete: costs.every(({ complete }) => complete),
  };
}

import type { RemediesDocument, RemediesNote, Remedy } from '#contract';
import { isoInstant, minute, ok, type Result } from '#units';
import type { PlanOptions, RunsInput } from '../input/input.js';
import { planInFull, type FullPlan } from '../plan/plan-run.js';
import { BENCH } from '../assessed-run.js';
import type { Candidate, Situation } from './candidate.js';
import { chooseRemedies } from './choose.js';
import type { Compared } from './compared.js';
import { describeBesides, describeCost, describeGains } from './describe-effects.js';
import { disturbanceOf } from './disturbance.js';
import { effectsOf } from './effects.js';
import { newRisks } from './new-risks.js';
import { chances, pairedGain } from './paired-gain.js';
import { remedyKinds } from './remedy-kinds.js';
import { shortlist } from './shortlist.js';
import { troublesIn } from './trouble.js';
import { withChange } from './with-change.js';
import { worseThan } from './worse.js';

/** Candidates that get a full plan: more than are shown, as some fall away. */
const PLANNED_IN_FULL = 6;

/**
 * Changes that would help a plan, each with what it does, from a plan made with it: recipe, start, hours, moulds, two runs
 * for one, parts left out, fewer pieces, a later day. The weak links or the conflict say which are tried. All plans of a
 * call live through the same weather, so small gains show.
 *
 * A remedy is planned afresh, not held to `options.previous`: `planRuns(withChange(input, change), options)` without it
 * has the odds that are told. With `previous` the plan to be helped is the one that is held to it, and planning afresh
 * is a remedy of its own.
 * @param options.stop once it says true, no more changes are tried, and a note says that time was up; the plan at hand
 *   is then the best so far, which may hide what its change would gain
 * @returns five remedies at most, in order; or issues for input that makes no sense
 */
export function suggestRemedies(input: RunsInput, options: PlanOptions): Result<RemediesDocument> {
  const planned = planInFull(input, options);
  if (!planned.ok) return planned;
  const plan = planned.value;
  const situation: Situation = {
    ...{ input, options, plan },
    troubles: troublesIn(plan),
    zone: input.workshop.timeZone,
    open: (plan.solved.problem.calendars[BENCH] ?? []).map(({ from, to }) => ({
      from: minute(from),
      to: minute(to),
    })),
  };
  const candidates = situation.troubles.length === 0 ? [] : remedyKinds.flatMap((kind) => kind(situation));
  const { seed = 1, stop = () => false } = options;
  const before = chances(plan, seed, plan.document.odds?.scenarios ?? 1);
  const { worthwhile, tried } = shortlist(situation, candidates, PLANNED_IN_FULL);
  let isCut = tried < candidates.length;
  const remedies: Remedy[] = [];
  for (const each of worthwhile) {
    if (stop()) {
      isCut = true;
      break;
    }
    const remedy = remedyFrom(each, situation, before);
    if (remedy !== undefined) remedies.push(remedy);
  }
  const chosen = chooseRemedies(remedies);
  return ok({
    schema: 'benchtide.remedies/3',
    madeAt: isoInstant(options.now),
    timeZone: situation.zone,
    planStatus: plan.document.status,
    odds: plan.document.odds,
    tried,
    remedies: chosen,
    notes: [noteOn(plan, tried, chosen.length), ...(isCut ? [{ code: 'remedies.time-up' as const }] : [])],
  });
}

/** @returns undefined where the change makes no plan, or brings a risk that is worth no odds */
function remedyFrom(candidate: Candidate, situation: Situation, before: Float64Array): Remedy | undefined {
  const { previous, ...options } = situation.options;
  const changed = withChange(situation.input, candidate.change);
  const planned = planInFull(changed, options);
  if (!planned.ok || planned.value.document.odds === null) return undefined;
  const compared: Compared = {
    before: situation.plan,
    after: planned.value,
    inputs: { before: situation.input, after: changed },
    stood: situation.plan.document.status === 'planned' ? situation.plan.document : previous,
    zone: situation.zone,
  };
  const risks = newRisks(compared);
  if (risks.some(({ risk }) => risk.level === 'high')) return undefined;
  const after = chances(planned.value, options.seed ?? 1, planned.value.document.odds.scenarios);
  const effects = effectsOf(compared, pairedGain(before, after));
  const cost = describeCost(effects);
  const moved = effects.runs.reduce((sum, each) => sum + each.moved, 0);
  return {
    title: candidate.title,
    change: candidate.change,
    does: describeGains(effects, compared),
    worse: [...candidate.worse, ...worseThan(compared), ...cost.worse],
    also: [...candidate.also, ...describeBesides(effects, compared), ...cost.also],
    effects,
    disturbance: disturbanceOf(candidate, moved, effects, risks),
    cautions: candidate.cautions.map((code) => ({ code })),
  };
}

function noteOn({ document }: FullPlan, tried: number, shown: number): RemediesNote {
  const planned = document.status === 'planned';
  if (tried === 0) return { code: planned ? 'remedies.nothing-lost' : 'remedies.nothing-to-try' };
  if (shown === 0) return { code: planned ? 'remedies.none-gains' : 'remedies.none-enough', tried };
  return { code: 'remedies.sorted', tried };
}

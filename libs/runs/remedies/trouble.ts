import type { Requirement } from '#planner';
import { lagNamed, stageNamed, type NetworkReferences } from '../plan/network-references.js';
import type { FullPlan } from '../plan/plan-run.js';
import { makingAttempt, type AssessedRun } from '../assessed-run.js';

/** Below this a weak link is not worth a remedy. */
const WORTH_IT = 0.005;

/** Something that a run's plan is lost at, or cannot have. */
export interface Trouble {
  readonly run: string;
  readonly kind: Requirement['kind'] | 'pace' | 'scarce' | 'unknown';
  /** Stages that take part in it. */
  readonly stages: readonly string[];
  /** Parts whose clocks take part in it. */
  readonly parts: readonly string[];
  /** It is about the day the lot is cured. */
  readonly cure: boolean;
  readonly resource?: string;
}

/**
 * What is wrong with a plan: its weak links, or what it is in conflict about. Most odds first.
 * A run of an undecided plan is in trouble of a kind that is not known.
 */
export function troublesIn({ document, assessedRuns, solved }: FullPlan): Trouble[] {
  const { outcome, problem, references, odds } = solved;
  const of = (requirement: Requirement, at?: string): Trouble[] =>
    troublesOf(requirement, { assessedRuns, references }, at);
  if (outcome === undefined) {
    return problem.holds.flatMap((hold) => {
      const capacity = problem.resources.find(({ id }) => id === hold.resource)?.capacity ?? 0;
      if (hold.amount <= capacity) return [];
      const at = stagesAt(references, [hold.from]);
      return [{ ...none, ...at, kind: 'scarce' as const, resource: hold.resource }];
    });
  }
  if (outcome.status === 'undecided') return assessedRuns.map(({ run }) => ({ ...none, run: run.order.key }));
  if (outcome.status === 'conflict') return outcome.requirements.flatMap((each) => of(each));
  const lost = (odds?.losses ?? []).filter(({ share }) => share >= WORTH_IT);
  return [...lost.flatMap(({ missed, stage }) => of(missed, stage)), ...paces(document.runs, assessedRuns)];
}

const none = { kind: 'unknown', stages: [], parts: [], cure: false } as const;

/** @param at the planner's name of the stage at which it shows */
function troublesOf(
  requirement: Requirement,
  {
    assessedRuns,
    references,
  }: { readonly assessedRuns: readonly AssessedRun[]; readonly references: NetworkReferences },
  at?: string,
): Trouble[] {
  const { kind } = requirement;
  const shown = at === undefined ? [] : stagesAt(references, [at]).stages;
  switch (kind) {
    case 'lag-at-least':
    case 'lag-at-most': {
      const { assessed, from, to, reason } = lagNamed(references, requirement.lag);
      const run = assessed.run.order.key;
      if (reason.kind === 'cure') return [{ run, kind, stages: [], parts: [reason.part], cure: true }];
      const ends = stagesAt(references, reason.kind === 'link' ? [from, to] : [to]).stages;
      if (reason.kind === 'made') return [{ ...none, run, kind, stages: ends }];
      const { design } = assessed.run;
      const stages = [...new Set([...shown, ...ends])];
      // A stage that is late because it waited for the soap is helped by whatever it waited for.
      const waits = design.waits.filter(({ stage }) => stages.includes(stage));
      const before = design.links.filter((link) => stages.includes(link.to)).map((link) => link.from);
      const earlier = design.waits.filter(({ stage }) => before.includes(stage));
      const parts = [...new Set([...waits, ...earlier].map(({ part }) => part))];
      return [{ run, kind, stages, parts, cure: false }];
    }
    case 'calendar':
    case 'earliest':
    case 'latest':
    case 'fixed': {
      const { run, stages } = stagesAt(references, [requirement.stage]);
      const cure = stages.length === 0;
      return [{ run, kind, stages: cure ? shown : stages, parts: [], cure }];
    }
    case 'resource': {
      const { resource } = requirement;
      return requirement.stages.map((id) => ({ ...none, ...stagesAt(references, [id]), kind, resource }));
    }
    case 'horizon':
      return assessedRuns.map(({ run }) => ({ ...none, run: run.order.key, kind }));
  }
}

/** Stages of one run by key, without the cured lot, at which nothing is done. */
function stagesAt(
  references: NetworkReferences,
  ids: readonly [string, ...string[]],
): { readonly run: string; readonly stages: readonly string[] } {
  const found = ids.map((id) => stageNamed(references, id));
  const { run } = stageNamed(references, ids[0]);
  return { run, stages: found.flatMap(({ stage }) => stage ?? []) };
}

/** Batches that may stiffen before all pieces are done. */
function paces(runs: FullPlan['document']['runs'], assessedRuns: readonly AssessedRun[]): Trouble[] {
  return runs.flatMap(({ run, filling }) =>
    filling.flatMap(({ part, stage, chance }) => {
      const assessed = assessedRuns.find((each) => each.run.order.key === run);
      if (1 - chance < WORTH_IT || assessed === undefined) return [];
      if (makingAttempt(assessed, part)?.status !== 'open') return [];
      return [{ run, kind: 'pace' as const, stages: [stage], parts: [part], cure: false }];
    }),
  );
}

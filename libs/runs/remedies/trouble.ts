import type { Requirement } from '#planner';
import { splitId } from '../plan/describe-conflict.js';
import type { FullPlan } from '../plan/plan-run.js';
import { makingAttempt, READY, type RunInHand } from '../run-in-hand.js';

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
export function troublesIn({ document, hands, solved }: FullPlan): Trouble[] {
  const { outcome, problem, odds } = solved;
  const of = (requirement: Requirement, at?: string): Trouble[] => troublesOf(requirement, hands, at);
  if (outcome === undefined) {
    return problem.holds.flatMap((hold) => {
      const capacity = problem.resources.find(({ id }) => id === hold.resource)?.capacity ?? 0;
      if (hold.amount <= capacity) return [];
      const [run, stage] = splitId(hold.from);
      return [{ ...none, run, kind: 'scarce' as const, stages: [stage], resource: hold.resource }];
    });
  }
  if (outcome.status === 'undecided') return hands.map(({ run }) => ({ ...none, run: run.order.key }));
  if (outcome.status === 'conflict') return outcome.requirements.flatMap((each) => of(each));
  const lost = (odds?.losses ?? []).filter(({ share }) => share >= WORTH_IT);
  return [...lost.flatMap(({ missed, stage }) => of(missed, stage)), ...paces(document.runs, hands)];
}

const none = { kind: 'unknown', stages: [], parts: [], cure: false } as const;

/** @param at the planner's name of the stage at which it shows */
function troublesOf(requirement: Requirement, hands: readonly RunInHand[], at?: string): Trouble[] {
  const { kind } = requirement;
  const shown = at === undefined ? [] : [splitId(at)];
  const stagesAt = shown.flatMap(([, stage]) => (stage === READY ? [] : [stage]));
  switch (kind) {
    case 'lag-at-least':
    case 'lag-at-most': {
      const [run = '', list = '', which = ''] = requirement.lag.split('/');
      const hand = hands.find((each) => each.run.order.key === run);
      if (hand === undefined) return [];
      const { design } = hand.run;
      if (list === 'cure') return [{ run, kind, stages: [], parts: [which], cure: true }];
      if (list === 'made') return [{ ...none, run, kind, stages: [which] }];
      const link = list === 'links' ? design.links[Number(which)] : undefined;
      const wait = list === 'waits' ? design.waits[Number(which)] : undefined;
      const stages = [
        ...new Set([...stagesAt, ...(link ? [link.from, link.to] : []), ...(wait ? [wait.stage] : [])]),
      ];
      // A stage that is late because it waited for the soap is helped by whatever it waited for.
      const waits = design.waits.filter(({ stage }) => stages.includes(stage));
      const before = design.links.filter(({ to }) => stages.includes(to)).map(({ from }) => from);
      const earlier = design.waits.filter(({ stage }) => before.includes(stage));
      const parts = [...new Set([...waits, ...earlier].map(({ part }) => part))];
      return [{ run, kind, stages, parts, cure: false }];
    }
    case 'calendar':
    case 'earliest':
    case 'latest':
    case 'fixed': {
      const [run, stage] = splitId(requirement.stage);
      const cure = stage === READY;
      return [{ run, kind, stages: cure ? stagesAt : [stage], parts: [], cure }];
    }
    case 'resource': {
      const { resource } = requirement;
      return requirement.stages.map((id) => {
        const [run, stage] = splitId(id);
        return { ...none, run, kind, stages: [stage], resource };
      });
    }
    case 'horizon':
      return hands.map(({ run }) => ({ ...none, run: run.order.key, kind }));
  }
}

/** Batches that may stiffen before all pieces are done. */
function paces(runs: FullPlan['document']['runs'], hands: readonly RunInHand[]): Trouble[] {
  return runs.flatMap(({ run, filling }) =>
    filling.flatMap(({ part, stage, chance }) => {
      const hand = hands.find((each) => each.run.order.key === run);
      if (1 - chance < WORTH_IT || hand === undefined) return [];
      if (makingAttempt(hand, part)?.status !== 'open') return [];
      return [{ run, kind: 'pace' as const, stages: [stage], parts: [part], cure: false }];
    }),
  );
}

import { mould, parseWith, pieceDesign, recipe, workshopFacts, type PlanInput } from '#contract';
import type { Issue } from '#units';
import type { Base, Wish } from '../../whatif/messages.js';
import { weekOf, type GuideContents, type GuideDraft, type Step } from './guide-draft.js';

/** What the shared schemas say of a draft: what is wrong, by step; and what to ask the planner once nothing is. */
export interface CheckedGuide {
  readonly issues: Readonly<Record<Step, readonly Issue[]>>;
  /** null while a mould or a recipe is not described. */
  readonly request: { readonly base: Base; readonly wish: Wish } | null;
}

/** Checks the shape of everything; its meaning is for the planner and the chemistry to check. */
export function checkGuide(draft: GuideDraft, contents: GuideContents, input: PlanInput): CheckedGuide {
  const facts = {
    ...input.workshop,
    hours: { ...input.workshop.hours, weekly: weekOf(draft, input.workshop.hours.weekly) },
  };
  const read = {
    mould: parseWith(mould, contents.mould),
    recipe: parseWith(recipe, contents.recipe),
    design: parseWith(pieceDesign, contents.design),
    workshop: parseWith(workshopFacts, facts),
  };
  const weekless = Object.values(facts.hours.weekly).every((spans) => spans.length === 0);
  const issues = {
    mould: read.mould.ok ? [] : mouldIssues(read.mould.issues, contents.mould),
    recipe: read.recipe.ok ? [] : read.recipe.issues,
    hours: read.workshop.ok ? (weekless ? [neverOpen] : []) : read.workshop.issues,
    start: [],
  };
  const { mould: m, recipe: r, design: d, workshop: w } = read;
  if (!m.ok || !r.ok || !d.ok || !w.ok) return { issues, request: null };
  const beside = <T extends { readonly key: string }>(list: readonly T[], one: T): T[] => [
    ...list.filter(({ key }) => key !== one.key),
    one,
  ];
  const planned: PlanInput = {
    ...input,
    workshop: w.value,
    moulds: beside(input.moulds, m.value),
    recipes: beside(input.recipes, r.value),
    designs: beside(input.designs, d.value),
  };
  return {
    issues,
    request: { base: { input: planned }, wish: { kind: 'order', order: contents.order, recipes: [] } },
  };
}

/** Of the ways to state a cavity this form has one, so what is said of the others belongs there. */
function mouldIssues(issues: readonly Issue[], { waterFillG }: GuideContents['mould']): Issue[] {
  const told = issues.filter(({ path }) => path[0] !== 'cavityMl');
  return waterFillG === undefined ? [...told, noWater] : told;
}

const noWater: Issue = {
  code: 'input.missing',
  path: ['waterFillG'],
};

const neverOpen: Issue = {
  code: 'hours.never-open',
  path: ['hours', 'weekly'],
};

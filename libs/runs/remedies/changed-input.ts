import { checkRecipe, fatTable, fromSheet } from '#chemistry';
import {
  mould,
  parseWith,
  recipe,
  runOrder,
  workshopFacts,
  type RemedyChange,
  type RunOrder,
} from '#contract';
import { isNonEmpty, ok, under, type Issue, type Result } from '#units';
import { checkMould } from '../input/cavity-of-mould.js';
import { checkGroups } from '../input/check-groups.js';
import type { RunsInput } from '../input/input.js';
import { withChange } from './with-change.js';

/**
 * The input with a change carried out, once every thing that the change made different has been checked as if it had been
 * sent as a whole: a change may be within its own bounds and still make no recipe, order, mould or day of hours.
 * @returns issues with paths from what holds the change as `change`
 */
export function changedInput(before: RunsInput, change: RemedyChange): Result<RunsInput> {
  const after = withChange(before, change);
  const about = issuesOfNames(before, change);
  const issues = under(['change'], about.length > 0 ? about : issuesOfChange(before, after));
  return isNonEmpty(issues) ? { ok: false, issues } : ok(after);
}

/** A change of what is not there would leave all as it is, and be taken for carried out. */
function issuesOfNames({ runs, recipes, moulds }: RunsInput, change: RemedyChange): Issue[] {
  const keys = (things: readonly { readonly key: string }[]) => things.map(({ key }) => key);
  if ('run' in change) return unlessAmong(keys(runs), 'run', change.run);
  if (change.kind === 'recipe') return unlessAmong(keys(recipes), 'recipe', change.recipe);
  if (change.kind === 'cavities') return unlessAmong(keys(moulds), 'mould', change.mould);
  return [];
}

function unlessAmong(known: readonly string[], what: 'run' | 'recipe' | 'mould', key: string): Issue[] {
  if (known.includes(key)) return [];
  const accepted = { kind: 'one-of', values: known } as const;
  return [{ code: `change.no-such-${what}`, path: [what], value: key, accepted, known }];
}

function issuesOfChange(before: RunsInput, after: RunsInput): Issue[] {
  const fats = fatTable(after.fats.map(fromSheet));
  const facts = after.workshop === before.workshop ? [] : shapeIssues(workshopFacts, after.workshop);
  return [
    ...facts,
    ...changed(before.recipes, after.recipes).flatMap((each) => [
      ...shapeIssues(recipe, each),
      ...checkRecipe(each, fats),
    ]),
    ...changed(before.moulds, after.moulds).flatMap((each) => [
      ...shapeIssues(mould, each),
      ...checkMould(each),
    ]),
    ...changed(before.runs, after.runs).flatMap((each) => [
      ...shapeIssues(runOrder, each),
      ...groupIssues(each, after),
    ]),
  ];
}

function groupIssues(order: RunOrder, { designs }: RunsInput): Issue[] {
  const design = designs.find(({ key }) => key === order.design);
  return design === undefined ? [] : checkGroups(order, design);
}

/** What is not the same object as any before. */
function changed<T>(before: readonly T[], after: readonly T[]): T[] {
  return after.filter((each) => !before.includes(each));
}

function shapeIssues(schema: Parameters<typeof parseWith>[0], content: unknown): readonly Issue[] {
  const parsed = parseWith(schema, content);
  return parsed.ok ? [] : parsed.issues;
}

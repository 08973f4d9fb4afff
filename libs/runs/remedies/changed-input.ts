import { checkRecipe, fatTable, fromSheet } from '#chemistry';
import { mould, parseWith, recipe, runOrder, workshopFacts, type RemedyChange } from '#contract';
import { isNonEmpty, ok, under, type Issue, type Result } from '#units';
import { checkMould } from '../input/cavity-of-mould.js';
import type { RunsInput } from '../input/input.js';
import { withChange } from './with-change.js';

/**
 * The input with a change carried out, once every thing that the change made different has been checked as if it had been
 * sent as a whole: a change may be within its own bounds and still make no recipe, order, mould or day of hours.
 * @returns issues with paths from what holds the change as `change`
 */
export function changedInput(before: RunsInput, change: RemedyChange): Result<RunsInput> {
  const after = withChange(before, change);
  const issues = under(['change'], issuesOfChange(before, after));
  return isNonEmpty(issues) ? { ok: false, issues } : ok(after);
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
    ...changed(before.runs, after.runs).flatMap((each) => shapeIssues(runOrder, each)),
  ];
}

/** What is not the same object as any before. */
function changed<T>(before: readonly T[], after: readonly T[]): T[] {
  return after.filter((each) => !before.includes(each));
}

function shapeIssues(schema: Parameters<typeof parseWith>[0], content: unknown): readonly Issue[] {
  const parsed = parseWith(schema, content);
  return parsed.ok ? [] : parsed.issues;
}

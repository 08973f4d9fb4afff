import { checkRecipe, fatTable, fromSheet } from '#chemistry';
import { mould, parseWith, recipe, runOrder, workshopFacts, type RemedyChange } from '#contract';
import { checkMould, withChange, type RunsInput } from '#runs';
import { under, type Issue } from '#units';
import { invalidInput } from '../problems/api-problem.js';

/**
 * The input with a change carried out, once every thing that the change made different has been checked as if it had been
 * sent as a whole: a change may be within its own bounds and still make no recipe, order, mould or day of hours.
 * @throws ApiProblem with paths in the change
 */
export function changedInput(before: RunsInput, change: RemedyChange): RunsInput {
  const after = withChange(before, change);
  const issues = issuesOfChange(before, after);
  if (issues.length > 0) throw invalidInput(under(['change'], issues));
  return after;
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

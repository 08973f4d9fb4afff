import { checkFat, checkRecipe, fatTable, fromSheet } from '#chemistry';
import type { WorkshopFacts } from '#contract';
import { instantOf, isTimeZone } from '#hours';
import { under, type Issue } from '#units';
import { checkMould } from './cavity-of-mould.js';
import { checkGroups } from './check-groups.js';
import { checkDesign } from './check-design.js';
import type { RunsInput } from './input.js';
import { repeatedKeys, unknownName } from './name-issues.js';
import { byKey } from './by-key.js';

/**
 * Checks the meaning of input whose shape is right: that names refer to something, that shares add up, that
 * hours open, that links can be met.
 * @returns one issue per fault, each with the path of the field from the root of the input
 */
export function checkInput(input: RunsInput): Issue[] {
  const named = ['moulds', 'fats', 'recipes', 'designs', 'runs'] as const;
  const repeated = named.flatMap((list) => repeatedKeys(list, input[list]));
  const fats = fatTable(input.fats.map(fromSheet));
  return [
    ...repeated,
    ...under(['workshop'], checkFacts(input.workshop)),
    ...input.moulds.flatMap((mould, i) => under(['moulds', i], checkMould(mould))),
    ...input.fats.flatMap((fat, i) => under(['fats', i], checkFat(fromSheet(fat)))),
    ...input.recipes.flatMap((recipe, i) => under(['recipes', i], checkRecipe(recipe, fats))),
    ...input.designs.flatMap((design, i) => under(['designs', i], checkDesign(design, input))),
    ...input.runs.flatMap((run, i) => under(['runs', i], checkRun(run, input))),
    ...input.log.flatMap((line, i) =>
      input.runs.some((run) => run.key === line.run)
        ? []
        : [unknownName(['log', i, 'run'], 'run', line.run, input.runs)],
    ),
  ];
}

/** Checks all facts of a workshop. @returns issues with paths from the workshop */
export function checkWorkshop(workshop: WorkshopFacts): Issue[] {
  return [...checkFacts(workshop), ...checkHours(workshop)];
}

/** What amounts and clocks need to be sound: the time zone, and materials that are each told once. */
function checkFacts({ timeZone, materials }: WorkshopFacts): Issue[] {
  const issues: Issue[] = repeatedKeys('materials', materials);
  if (!isTimeZone(timeZone)) {
    issues.push({
      code: 'workshop.unknown-time-zone',
      path: ['timeZone'],
      value: timeZone,
    });
  }
  return issues;
}

/** Checks that the hours ever open, which only a plan needs. @returns issues with paths from the workshop */
export function checkHours({ hours }: WorkshopFacts): Issue[] {
  const open =
    Object.values(hours.weekly).some((spans) => spans.length > 0) ||
    hours.exceptions.some((day) => day.spans.length > 0);
  if (open) return [];
  return [
    {
      code: 'hours.never-open',
      path: ['hours', 'weekly'],
      value: hours.weekly,
    },
  ];
}

function checkRun(run: RunsInput['runs'][number], input: RunsInput): Issue[] {
  const issues: Issue[] = [];
  if (!byKey(input.designs).has(run.design)) {
    issues.push(unknownName(['design'], 'design', run.design, input.designs));
  }
  const design = byKey(input.designs).get(run.design);
  if (design !== undefined) issues.push(...checkGroups(run, design));
  const { timeZone } = input.workshop;
  const start = instantOf(run.startAfter, timeZone);
  const ready = run.readyBy === undefined ? undefined : instantOf(run.readyBy, timeZone);
  if (start !== undefined && ready !== undefined && ready <= start) {
    issues.push({
      code: 'run.ready-before-start',
      path: ['readyBy'],
      value: run.readyBy,
      ...{ readyBy: run.readyBy ?? '', startAfter: run.startAfter },
    });
  }
  return issues;
}

import type { RunFile } from '#contract';
import { failed, ok, type Issue, type Result } from '#units';
import type { PastRun, RunsInput } from './input.js';
import { unknownName } from './name-issues.js';

/** The input that a run file is: its earlier runs were made by the designs and recipes that stand in it. */
export function runFileInput(file: RunFile): Result<RunsInput> {
  const { earlier, ...rest } = file;
  const { recipes, fats, moulds } = file;
  const past: PastRun[] = [];
  const issues: Issue[] = [];
  earlier.forEach(({ run, log }, i) => {
    const design = file.designs.find(({ key }) => key === run.design);
    if (design === undefined) {
      issues.push(unknownName(['earlier', i, 'run', 'design'], 'design', run.design, file.designs));
    } else past.push({ order: run, design, recipes, fats, moulds, log });
  });
  const [first, ...more] = issues;
  return first === undefined ? ok({ ...rest, past }) : failed(first, ...more);
}

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { RunFile } from '#contract';
import { planRuns } from '#runs';
import { minuteOfIso } from '#units';
import { loadRunFile } from '../../../tests/support/run-files.js';

const now = minuteOfIso('2026-11-25T12:00:00Z');

/** Fields of a design that hold the key of a part, a stage or a batch. */
const NAMING = new Set(['key', 'part', 'parts', 'stage', 'from', 'to', 'batch', 'into', 'onto', 'of']);

/** The same file, its runs, parts, stages, batches, recipes and moulds called otherwise. */
function renamed(file: RunFile, name: (before: string) => string): RunFile {
  const own = new Set(
    file.designs.flatMap(({ parts, stages }) => [
      ...[...parts, ...stages].map(({ key }) => key),
      ...parts.flatMap((part) => (part.kind === 'batch' && part.batch !== undefined ? [part.batch] : [])),
    ]),
  );
  const called = (value: unknown, field: string): unknown => {
    if (Array.isArray(value)) return value.map((each) => called(each, field));
    if (typeof value === 'string') {
      if (field === 'title' || field === 'recipe' || field === 'mould') return name(value);
      return NAMING.has(field) && own.has(value) ? name(value) : value;
    }
    if (value === null || typeof value !== 'object') return value;
    return Object.fromEntries(Object.entries(value).map(([key, each]) => [key, called(each, key)]));
  };
  return {
    ...file,
    designs: file.designs.map((design) => called(design, '') as RunFile['designs'][number]),
    recipes: file.recipes.map((recipe) => ({ ...recipe, key: name(recipe.key), title: name(recipe.title) })),
    moulds: file.moulds.map((mould) => ({ ...mould, key: name(mould.key), title: name(mould.title) })),
    runs: file.runs.map((run) => ({ ...run, key: name(run.key), title: name(run.title) })),
  };
}

/** When each stage is planned, by its place in the design, and the odds. */
function planned(file: RunFile): unknown {
  const found = planRuns(file, { now, scenarios: 600 });
  if (!found.ok) throw new Error(JSON.stringify(found.issues));
  const { status, runs, odds } = found.value;
  const starts = runs.map(({ stages, ready }, i) => {
    const design = file.designs.find(({ key }) => key === file.runs[i]!.design)!;
    const at = design.stages.map(({ key }) => stages.find((stage) => stage.key === key)?.startAt);
    return { at, ready };
  });
  return { status, starts, odds };
}

describe('what a maker calls things', () => {
  it.each([
    ['demo', 'rockpool-tiles'],
    ['demo', 'orchard-loaves'],
    ['demo', 'honeycomb-tartlets'],
    ['ok', 'two-layer'],
  ] as const)('changes no plan and no odds: %s %s', (kind, name) => {
    const file = loadRunFile(kind, name);
    const before = planned(file);
    expect(before).toMatchObject({ status: 'planned' });
    fc.assert(
      fc.property(fc.stringMatching(/^[a-z]{1,6}$/), fc.boolean(), (text, isBefore) => {
        const other = renamed(file, (old) => (isBefore ? `${text}-${old}` : `${old}-${text}`).slice(0, 60));
        expect(planned(other)).toEqual(before);
      }),
      { numRuns: 4, seed: 7 },
    );
  });
});

import { mouldOf, type BatchPart, type MeltPart, type PieceDesign } from '#contract';
import { under, type Issue } from '#units';
import { batchOf } from './mixed-together.js';
import { preparingStage, processOf } from './stage-order.js';
import { repeatedKeys } from './name-issues.js';

/**
 * Checks that what is mixed at once can be: one recipe and one mixing for all parts of a batch, keys of portions that differ, as many
 * cavities for a piece wherever parts share them, and a test of what is cooked.
 * @returns issues with paths from the design's root
 */
export function checkBatches(design: PieceDesign): Issue[] {
  const before: BatchPart[] = [];
  const cast: (BatchPart | MeltPart)[] = [];
  return design.parts.flatMap((part, i): Issue[] => {
    if (part.kind === 'decor') return [];
    const cavities = cavityIssues(part, i, cast);
    cast.push(part);
    if (part.kind === 'melt-and-pour') return cavities;
    const issues = [
      ...under(['parts', i], repeatedKeys('portions', part.portions ?? [])),
      ...recipeIssues(part, i, before),
      ...mixingIssues(part, i, before, design),
      ...testIssues(part, i, before, design),
      ...cavities,
    ];
    before.push(part);
    return issues;
  });
}

function recipeIssues(part: BatchPart, i: number, before: readonly BatchPart[]): Issue[] {
  const other = before.find((each) => batchOf(each) === batchOf(part) && each.recipe !== part.recipe);
  if (other === undefined) return [];
  return [
    {
      code: 'design.batch-recipes',
      path: ['parts', i, 'batch'],
      value: batchOf(part),
      titles: [other.title, part.title],
    },
  ];
}

/**
 * The parts of one batch stiffen together from its mixing on, so that must have a stage: without it nothing says by when the
 * last of them has to be poured.
 */
function mixingIssues(
  part: BatchPart,
  i: number,
  before: readonly BatchPart[],
  design: PieceDesign,
): Issue[] {
  const other = before.find((each) => batchOf(each) === batchOf(part));
  const begins = ['mix', 'cook', 'rebatch'] as const;
  if (other === undefined || begins.some((kind) => preparingStage(design, part.key, kind) !== undefined)) {
    return [];
  }
  return [
    {
      code: 'design.batch-needs-mix',
      path: ['parts', i, 'batch'],
      value: batchOf(part),
      titles: [other.title, part.title],
    },
  ];
}

/**
 * Nothing else tells whether the pot was cooked long enough, and no weeks go by in which the rest of the lye is used up. The test of one
 * batch says nothing of another pot.
 */
function testIssues(part: BatchPart, i: number, before: readonly BatchPart[], design: PieceDesign): Issue[] {
  const isTold = before.some((each) => batchOf(each) === batchOf(part));
  const isTested = preparingStage(design, part.key, 'zap-test') !== undefined;
  if (isTold || isTested || processOf(design, part.key) === 'cold') return [];
  return [{ code: 'design.cook-needs-test', path: ['parts', i, 'key'], value: part.key, title: part.title }];
}

function cavityIssues(
  part: BatchPart | MeltPart,
  i: number,
  before: readonly (BatchPart | MeltPart)[],
): Issue[] {
  const { cavitiesPerPiece } = part;
  const mould = mouldOf(part);
  const other = before.find(
    (each) => mould !== undefined && each.mould === mould && each.cavitiesPerPiece !== cavitiesPerPiece,
  );
  if (other === undefined) return [];
  return [
    {
      code: 'design.cavities-differ',
      path: ['parts', i, 'cavitiesPerPiece'],
      value: cavitiesPerPiece,
      titles: [other.title, part.title],
    },
  ];
}

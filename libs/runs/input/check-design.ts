import { checkRecipe, fatTable, fromSheet } from '#chemistry';
import { closingStates, mouldOf, openingStates } from '#contract';
import type { Fat, MeltPart, BatchPart, Mould, PieceDesign, Recipe, Wait, WorkshopFacts } from '#contract';
import { under, type Issue } from '#units';
import { checkBatches } from './check-batches.js';
import { checkPortions } from './check-portions.js';
import { expectedUse } from './expected-use.js';
import { cavityMl, checkMould } from './cavity-of-mould.js';
import { repeatedKeys, unknownName } from './name-issues.js';
import { lookupTables, MELT_DENSITY, useSurroundings } from './piece-surroundings.js';
import { handsOnOf, stageKindFacts } from './stage-kinds.js';
import { isClosing, stateHasClock } from './states-of-parts.js';
import { freeingStage, makingStage, sharersOf } from './resolve-run.js';
import { isBeforeMaking, stagesBehind, startingStage } from './stage-order.js';

/** What a design may refer to. */
export interface DesignSurroundings {
  readonly recipes: readonly Recipe[];
  readonly fats: readonly Fat[];
  readonly moulds: readonly Mould[];
  readonly workshop: WorkshopFacts;
}

/**
 * Checks that a piece design makes sense: names, one making stage per part, cavities that hold their parts,
 * links and waits without a circle.
 * @returns issues with paths from the design's root
 */
export function checkDesign(design: PieceDesign, around: DesignSurroundings): Issue[] {
  const names = checkNames(design, around);
  if (names.length > 0) return names;
  return [
    ...checkMaking(design),
    ...checkBatches(design),
    ...design.parts.flatMap((part, i) =>
      part.kind === 'batch' ? under(['parts', i], checkPortions(part, recipeOf(part, around))) : [],
    ),
    ...checkCavities(design, around),
    ...checkCircles(design),
    ...checkWithout(design),
    ...checkHandsOn(design),
  ];
}

function checkNames(design: PieceDesign, around: DesignSurroundings): Issue[] {
  const parts = new Set(design.parts.map((part) => part.key));
  const stages = new Set(design.stages.map((stage) => stage.key));
  const equipment = new Set(around.workshop.equipment.map((item) => item.key));
  const stageIssue = (path: (string | number)[], name: string): Issue[] =>
    stages.has(name) ? [] : [unknownName(path, 'stage', name, design.stages)];
  const partIssue = (path: (string | number)[], name: string): Issue[] =>
    parts.has(name) ? [] : [unknownName(path, 'part', name, design.parts)];
  return [
    ...repeatedKeys('parts', design.parts),
    ...repeatedKeys('stages', design.stages),
    ...design.parts.flatMap((part, i): Issue[] => {
      const mould = mouldOf(part);
      return [
        ...(part.kind !== 'batch' || around.recipes.some((r) => r.key === part.recipe)
          ? []
          : [unknownName(['parts', i, 'recipe'], 'recipe', part.recipe, around.recipes)]),
        ...(mould === undefined || around.moulds.some((m) => m.key === mould)
          ? []
          : [unknownName(['parts', i, 'mould'], 'mould', mould, around.moulds)]),
      ];
    }),
    ...design.stages.flatMap((stage, i) => [
      ...partIssue(['stages', i, 'part'], stage.part),
      ...(stage.onto === undefined ? [] : partIssue(['stages', i, 'onto'], stage.onto)),
      ...stage.needs.flatMap((need, j) =>
        equipment.has(need.equipment)
          ? []
          : [
              unknownName(
                ['stages', i, 'needs', j, 'equipment'],
                'equipment',
                need.equipment,
                around.workshop.equipment,
              ),
            ],
      ),
    ]),
    ...design.links.flatMap((link, i) => [
      ...stageIssue(['links', i, 'from'], link.from),
      ...stageIssue(['links', i, 'to'], link.to),
    ]),
    ...design.waits.flatMap((wait, i) => [
      ...stageIssue(['waits', i, 'stage'], wait.stage),
      ...partIssue(['waits', i, 'part'], wait.part),
    ]),
    ...design.without.flatMap((each, i) => [
      ...stageIssue(['without', i, 'stage'], each.stage),
      ...partIssue(['without', i, 'part'], each.part),
    ]),
  ];
}

function checkMaking(design: PieceDesign): Issue[] {
  const issues: Issue[] = [];
  design.parts.forEach((part, i) => {
    const making = design.stages.filter((s) => s.part === part.key && stageKindFacts[s.kind].makes);
    const needed = part.kind === 'decor' ? making.length <= 1 : making.length === 1;
    if (!needed) {
      issues.push({
        code: 'design.making-stage',
        path: ['parts', i, 'key'],
        value: making.map((stage) => stage.key),
        ...{ title: part.title, count: making.length },
      });
    }
  });
  design.waits.forEach((wait, i) => {
    issues.push(...checkStates(design, wait, i));
    const asked = [wait.opens, wait.closes].filter((state) => state !== undefined);
    const behind = asked.map((state) => startingStage(design, wait.part, state));
    if (behind.includes(undefined)) {
      issues.push({
        code: 'design.wait-without-making',
        path: ['waits', i, 'part'],
        value: wait.part,
        title: design.parts.find(({ key }) => key === wait.part)?.title ?? wait.part,
      });
    }
  });
  return issues;
}

/** A piece that takes nobody's time was entered by half: its plan would have all of it done in one minute. */
function checkHandsOn(design: PieceDesign): Issue[] {
  const takesTime = design.stages.some((stage) => {
    const { setupMin, perPieceS } = handsOnOf(stage);
    return setupMin > 0 || perPieceS > 0;
  });
  return takesTime ? [] : [{ code: 'design.no-hands-on', path: ['stages'], value: 0 }];
}

/** What a design must never go without: soap that is taken out or cut before it is firm is lost. */
function checkWithout(design: PieceDesign): Issue[] {
  return design.without.flatMap(({ stage, state }, i): Issue[] => {
    const { kind, title } = design.stages.find(({ key }) => key === stage) ?? {};
    const isFirmness = (kind === 'unmould' || kind === 'cut') && !isClosing(state);
    return isFirmness
      ? [
          {
            code: 'design.firmness-refused',
            path: ['without', i, 'state'],
            value: state,
            title: title ?? stage,
          },
        ]
      : [];
  });
}

function checkStates(design: PieceDesign, wait: Wait, i: number): Issue[] {
  const part = design.parts.find((p) => p.key === wait.part);
  if (part === undefined) return [];
  return (['opens', 'closes'] as const).flatMap((side) => {
    const state = wait[side];
    if (state === undefined || stateHasClock(part.kind, state)) return [];
    const known = [...openingStates, ...closingStates].filter((each) => stateHasClock(part.kind, each));
    return [
      {
        code: 'design.state-without-clock',
        path: ['waits', i, side],
        value: state,
        ...(known.length > 0 && { accepted: { kind: 'one-of', values: known } }),
        ...{ title: part.title, state, states: known },
      },
    ];
  });
}

function recipeOf({ recipe }: BatchPart, { recipes }: DesignSurroundings): Recipe | undefined {
  return recipes.find(({ key }) => key === recipe);
}

/** Of what the part is poured from; 1 where its recipe or a portion is unsound, which is told there. */
function densityOf(part: BatchPart | MeltPart, around: DesignSurroundings): number {
  if (part.kind === 'melt-and-pour') return MELT_DENSITY;
  const fats = fatTable(around.fats.map(fromSheet));
  const recipe = recipeOf(part, around);
  if (recipe === undefined || checkRecipe(recipe, fats).length > 0) return 1;
  if (checkPortions(part, recipe).length > 0) return 1;
  return useSurroundings(part, lookupTables([recipe], around.fats, [])).densityGPerMl;
}

function checkCavities(design: PieceDesign, around: DesignSurroundings): Issue[] {
  const issues: Issue[] = [];
  design.parts.forEach((part, i) => {
    const cast = mouldOf(part);
    if (part.kind === 'decor' || cast === undefined) return;
    const mould = around.moulds.find((m) => m.key === cast);
    // What is wrong with a mould is told at the mould; its volume is unknown until then.
    if (mould === undefined || checkMould(mould).length > 0) return;
    const holds = cavityMl(mould);
    const sharing = sharersOf(design, mould.key);
    const filled = sharing.reduce((sum, p) => {
      const use = { cavityMl: holds, densityGPerMl: densityOf(p, around) };
      return sum + (expectedUse(p, use).meanMl * p.piecesPerCavity) / p.cavitiesPerPiece;
    }, 0);
    // Shares that make up the whole cavity must not fail by the last bit of their sum.
    if (sharing[0]?.key === part.key && filled > holds * (1 + 1e-9)) {
      issues.push({
        code: 'design.cavity-overfull',
        path: ['parts', i, part.amount === undefined ? 'perPieceMl' : 'amount'],
        value: part.perPieceMl ?? part.amount,
        accepted: { kind: 'range', low: 0, high: holds, unit: 'mL' },
        ...{ mould: mould.title, filledMl: filled, holdsMl: holds },
      });
    }
    if (freeingStage(design, part) === undefined) {
      issues.push({
        code: 'design.mould-never-freed',
        path: ['parts', i, 'mould'],
        value: mould.key,
        title: part.title,
      });
    }
  });
  return issues;
}

/** An arrow from a stage to one that cannot start before it has ended. */
interface Arrow {
  readonly from: string;
  readonly to: string;
  readonly path: (string | number)[];
}

function checkCircles(design: PieceDesign): Issue[] {
  const arrows: Arrow[] = [
    ...design.links.map((link, i) => ({ from: link.from, to: link.to, path: ['links', i, 'to'] })),
    ...design.waits.flatMap((wait, i) => {
      return stagesBehind(design, wait).map(({ key }) => ({
        from: key,
        to: wait.stage,
        path: ['waits', i, 'stage'],
      }));
    }),
    ...design.stages.flatMap((stage, i) => {
      const making = makingStage(design, stage.part);
      if (making === undefined || making === stage || isBeforeMaking(design, stage)) return [];
      return [{ from: making.key, to: stage.key, path: ['stages', i, 'part'] }];
    }),
  ];
  const circle = findCircle(design, arrows);
  if (circle === undefined) return [];
  const closing = circle.at(-1) as Arrow;
  const titles = new Map(design.stages.map(({ key, title }) => [key, title]));
  const way = [closing.to, ...circle.map((arrow) => arrow.to)].map((key) => titles.get(key) ?? key);
  return [
    {
      code: 'design.circular-links',
      path: closing.path,
      value: closing.to,
      way,
    },
  ];
}

function findCircle(design: PieceDesign, arrows: readonly Arrow[]): Arrow[] | undefined {
  const left = new Map<string, Arrow[]>();
  for (const arrow of arrows) left.set(arrow.from, [...(left.get(arrow.from) ?? []), arrow]);
  const finished = new Set<string>();
  const walk = (stage: string, way: Arrow[]): Arrow[] | undefined => {
    if (finished.has(stage)) return undefined;
    const start = way.findIndex((arrow) => arrow.from === stage);
    if (start >= 0) return way.slice(start);
    for (const arrow of left.get(stage) ?? []) {
      const found = walk(arrow.to, [...way, arrow]);
      if (found !== undefined) return found;
    }
    finished.add(stage);
    return undefined;
  };
  for (const stage of design.stages) {
    const found = walk(stage.key, []);
    if (found !== undefined) return found;
  }
  return undefined;
}

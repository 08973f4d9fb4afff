import type { Part, Stage } from '#contract';
import { onOnePiece } from './pieces.js';
import type { PartCondition } from './stage-kind-facts.js';
import { stageKindFacts } from './stage-kinds.js';
import { isBefore, leadsTo, makingStage, type Outline } from './stage-order.js';

/** The part itself, and all that shares its cavity on any piece. @returns nothing for a part that is not in the design */
export function castTogether(design: Outline, key: string): Part[] {
  const part = design.parts.find((each) => each.key === key);
  if (part === undefined) return [];
  const mould = part.kind === 'batch' ? part.mould : undefined;
  if (mould === undefined) return [part];
  return design.parts.filter(
    (each) => each.kind === 'batch' && each.mould === mould && onOnePiece(design, key, each.key),
  );
}

/**
 * What a stage puts its part onto or into, where its kind does that: what the stage names, if it is there, else, for a layer, the part
 * made last before in the same cavity, for anything else the part made last before. Decor carries nothing.
 * @param dropped parts that are left out, or that the pieces in question go without
 */
export function hostOf(
  design: Outline,
  stage: Stage,
  dropped: ReadonlySet<string> = new Set(),
): Part | undefined {
  const isThere = ({ key }: Part): boolean => !dropped.has(key);
  const onto = design.parts.find((part) => part.key === stage.onto && isThere(part));
  if (onto !== undefined) return onto;
  if (stageKindFacts[stage.kind].hosted === undefined) return undefined;
  const own = design.parts.find(({ key }) => key === stage.part);
  // A stage that sets or sprinkles something in may be said to handle what that goes into.
  if (!stageKindFacts[stage.kind].makes && own !== undefined && own.kind !== 'decor')
    return isThere(own) ? own : undefined;
  const among = stage.kind === 'layer' ? castTogether(design, stage.part) : design.parts;
  const made = among.flatMap((part) => {
    const making = makingStage(design, part.key);
    const carries = part.key !== stage.part && part.kind !== 'decor' && isThere(part);
    return carries && making !== undefined && isBefore(design, making, stage) ? [{ part, making }] : [];
  });
  made.sort((a, b) => (isBefore(design, a.making, b.making) ? -1 : 1));
  return made.at(-1)?.part;
}

/** How a part was made and where it is when a stage comes to it. @returns undefined for a part that nothing makes */
export function conditionAt(design: Outline, stage: Stage, part: Part): PartCondition | undefined {
  if (part.kind === 'decor') return 'decor';
  const making = makingStage(design, part.key);
  if (making === undefined) return undefined;
  if (part.kind === 'melt-and-pour') return 'melted';
  if (making.kind === 'dip') return 'dipped';
  if (making.kind === 'pipe') return 'piped';
  if (part.mould === undefined) return 'without-mould';
  const unmould = unmouldOf(design, part);
  return unmould !== undefined && unmould !== stage && isBefore(design, unmould, stage)
    ? 'out-of-mould'
    : 'in-mould';
}

/** The stage that takes a part out of its mould; a mould that is filled again has several. */
export function unmouldOf(design: Outline, part: Part): Stage | undefined {
  const cast = new Set(castTogether(design, part.key).map(({ key }) => key));
  const making = makingStage(design, part.key);
  return design.stages.find(
    (stage) =>
      stage.kind === 'unmould' &&
      cast.has(stage.part) &&
      (making === undefined || !leadsTo(design, stage.key, making.key)),
  );
}

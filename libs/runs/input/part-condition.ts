import { mouldOf, type Part, type Stage } from '#contract';
import { onOnePiece } from './pieces.js';
import type { PartCondition } from './stage-kind-facts.js';
import { stageKindFacts } from './stage-kinds.js';
import { isBefore, leadsTo, makingStage, type Outline } from './stage-order.js';

/** The part itself, and all that shares its cavity on any piece. @returns nothing for a part that is not in the design */
export function castTogether(design: Outline, key: string): Part[] {
  const part = design.parts.find((each) => each.key === key);
  if (part === undefined) return [];
  const mould = mouldOf(part);
  if (mould === undefined) return [part];
  return design.parts.filter((each) => mouldOf(each) === mould && onOnePiece(design, key, each.key));
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
  const isHost = own !== undefined && own.kind !== 'decor' && !isSetInto(design, stage);
  if (!stageKindFacts[stage.kind].makes && isHost) return isThere(own) ? own : undefined;
  const among = stage.kind === 'layer' ? castTogether(design, stage.part) : design.parts;
  const made = among.flatMap((part) => {
    const making = makingStage(design, part.key);
    const carries = part.key !== stage.part && part.kind !== 'decor' && isThere(part);
    return carries && making !== undefined && isBefore(design, making, stage) ? [{ part, making }] : [];
  });
  made.sort((a, b) => (isBefore(design, a.making, b.making) ? -1 : 1));
  return made.at(-1)?.part;
}

/**
 * Whether a stage sets its own part into another, a part made before: it says into which, or the part was cast from melted base and is
 * out of its mould by then, while another is made after that. Decor is always set in, and not meant here.
 */
export function isSetInto(design: Outline, stage: Stage): boolean {
  const { hosted, makes } = stageKindFacts[stage.kind];
  const own = design.parts.find(({ key }) => key === stage.part);
  if (hosted === undefined || makes || own === undefined || own.kind === 'decor') return false;
  if (stage.onto !== undefined) return stage.onto !== own.key;
  const unmould = own.kind === 'melt-and-pour' && own.mould !== undefined && unmouldOf(design, own);
  if (!unmould || !isBefore(design, unmould, stage)) return false;
  return design.parts.some(({ key, kind }) => {
    const making = kind === 'decor' || key === own.key ? undefined : makingStage(design, key);
    return making !== undefined && isBefore(design, unmould, making) && isBefore(design, making, stage);
  });
}

/** How a part was made and where it is when a stage comes to it. @returns undefined for a part that nothing makes */
export function conditionAt(design: Outline, stage: Stage, part: Part): PartCondition | undefined {
  if (part.kind === 'decor') return 'decor';
  const making = makingStage(design, part.key);
  if (making === undefined) return undefined;
  const isMelted = part.kind === 'melt-and-pour';
  if (isMelted && (part.mould === undefined || making.kind === 'glaze')) return 'melted';
  if (making.kind === 'dip') return 'dipped';
  if (making.kind === 'pipe') return 'piped';
  if (part.mould === undefined) return 'without-mould';
  const unmould = unmouldOf(design, part);
  const isOut = unmould !== undefined && unmould !== stage && isBefore(design, unmould, stage);
  if (isMelted) return isOut ? 'melt-out-of-mould' : 'melt-in-mould';
  return isOut ? 'out-of-mould' : 'in-mould';
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

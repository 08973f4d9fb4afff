import type { BatchPart, Part, PieceDesign } from '#contract';

/** The key of the batch that a part is poured from: the one it names, else its own. */
export function batchOf(part: Pick<BatchPart, 'key' | 'batch'>): string {
  return part.batch ?? part.key;
}

/** A part and all that are mixed with it, in the order of the design. @returns nothing for a part that no batter goes into */
export function mixedTogether(design: Pick<PieceDesign, 'parts'>, key: string): BatchPart[] {
  const part = design.parts.find((each) => each.key === key);
  if (part?.kind !== 'batch') return [];
  return design.parts.filter((each) => isFrom(each, batchOf(part)));
}

/** The parts that are prepared at once with a part: those mixed with it, or a part of melted base by itself. */
export function preparedTogether(design: Pick<PieceDesign, 'parts'>, key: string): Part[] {
  const melted = design.parts.filter((each) => each.key === key && each.kind === 'melt-and-pour');
  return melted.length > 0 ? melted : mixedTogether(design, key);
}

function isFrom(part: Part, batch: string): part is BatchPart {
  return part.kind === 'batch' && batchOf(part) === batch;
}

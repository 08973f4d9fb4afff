import type { BatchPart, MeltPart, Mould, PieceDesign, RunGroup } from '#contract';
import { mouldOf } from '#contract/names';

/** What a design needs of one kind of mould. */
export interface Filling {
  readonly mould: string;
  readonly title: string;
  readonly owned: number;
  readonly needed: number;
  /** Pieces that all cavities owned are enough for at once. */
  readonly mostPieces: number;
}

/**
 * Cavities that so many pieces of a design take, by kind of mould. One that is not known has none.
 * @param groups in which pieces part ways: only those with something in a mould fill it, and what is cut from one cavity
 * has the same in it; absent: all are alike
 */
export function fillingsOf(
  design: PieceDesign,
  moulds: readonly Mould[],
  count: number,
  groups?: readonly RunGroup[],
): Filling[] {
  const shared = new Map<string, BatchPart | MeltPart>();
  for (const part of design.parts) {
    // Parts with the same mould share its cavities, so they are counted once.
    if (part.kind === 'decor' || part.mould === undefined || shared.has(part.mould)) continue;
    shared.set(part.mould, part);
  }
  return [...shared].map(([key, { piecesPerCavity, cavitiesPerPiece }]) => {
    const mould = moulds.find((each) => each.key === key);
    const owned = mould?.cavities ?? 0;
    return {
      ...{ mould: key, title: mould?.title ?? key, owned },
      needed:
        kindsIn(design, key, groups ?? [{ count, parts: design.parts.map((part) => part.key) }]).reduce(
          (sum, pieces) => sum + Math.ceil(pieces / piecesPerCavity),
          0,
        ) * cavitiesPerPiece,
      mostPieces: Math.floor(owned / cavitiesPerPiece) * piecesPerCavity,
    };
  });
}

/** Pieces with something in a mould, a number for each kind of contents. */
function kindsIn(
  { parts }: PieceDesign,
  mould: string,
  groups: readonly Pick<RunGroup, 'count' | 'parts'>[],
): number[] {
  const kinds = new Map<string, number>();
  for (const group of groups) {
    const inside = parts.filter((part) => mouldOf(part) === mould && group.parts.includes(part.key));
    const contents = inside.map(({ key }) => key).join(' ');
    if (contents !== '') kinds.set(contents, (kinds.get(contents) ?? 0) + group.count);
  }
  return [...kinds.values()];
}

/** More than so many are offered only where moulds ask for it. */
const MOST_WITHOUT_MOULD = 100;
const MOST = 5000;

/** Pieces that can be made at once; where no mould is needed, as many as anybody makes by hand. */
export function mostPieces(design: PieceDesign, moulds: readonly Mould[]): number {
  const fillings = fillingsOf(design, moulds, 1);
  if (fillings.length === 0) return MOST_WITHOUT_MOULD;
  return Math.min(MOST, ...fillings.map((each) => each.mostPieces));
}

import type { BatchPart, Mould, PieceDesign } from '#contract';

/** What a design needs of one kind of mould. */
export interface Filling {
  readonly mould: string;
  readonly title: string;
  readonly owned: number;
  readonly needed: number;
  /** Pieces that all cavities owned are enough for at once. */
  readonly mostPieces: number;
}

/** Cavities that so many pieces of a design take, by kind of mould. One that is not known has none. */
export function fillingsOf(design: PieceDesign, moulds: readonly Mould[], count: number): Filling[] {
  const shared = new Map<string, BatchPart>();
  for (const part of design.parts) {
    // Parts with the same mould share its cavities, so they are counted once.
    if (part.kind === 'batch' && part.mould !== undefined && !shared.has(part.mould)) {
      shared.set(part.mould, part);
    }
  }
  return [...shared].map(([key, { piecesPerCavity, cavitiesPerPiece }]) => {
    const mould = moulds.find((each) => each.key === key);
    const owned = mould?.cavities ?? 0;
    return {
      ...{ mould: key, title: mould?.title ?? key, owned },
      needed: Math.ceil(count / piecesPerCavity) * cavitiesPerPiece,
      mostPieces: Math.floor(owned / cavitiesPerPiece) * piecesPerCavity,
    };
  });
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

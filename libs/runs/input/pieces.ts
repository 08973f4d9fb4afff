import type { PieceDesign, RunGroup, RunOrder } from '#contract';

/** The parts of a design, and the groups in which the pieces of a run have them. */
export interface PartsOfPieces {
  readonly parts: readonly { readonly key: string }[];
  /** Absent: all pieces are alike. */
  readonly groups?: readonly RunGroup[] | undefined;
}

/** A design as one run makes it: only what some of its pieces have, and which have what. */
export type RunDesign = PieceDesign & Pick<PartsOfPieces, 'groups'>;

/** Keys of the parts that pieces have, a set for each group; one with all parts where all pieces are alike. */
export function piecesAlike({ parts, groups }: PartsOfPieces): ReadonlySet<string>[] {
  return groups?.map((group) => new Set(group.parts)) ?? [new Set(parts.map(({ key }) => key))];
}

/** Whether any piece has all of these parts. */
export function onOnePiece(design: PartsOfPieces, ...parts: readonly string[]): boolean {
  return piecesAlike(design).some((has) => parts.every((part) => has.has(part)));
}

/** Pieces of a run that have a part. */
export function piecesWith({ count, groups }: Pick<RunOrder, 'count' | 'groups'>, part: string): number {
  return groups === undefined ? count : piecesIn(groups.filter(({ parts }) => parts.includes(part)));
}

/** Pieces of groups together. */
export function piecesIn(groups: readonly Pick<RunGroup, 'count'>[]): number {
  return groups.reduce((sum, { count }) => sum + count, 0);
}

/**
 * Pieces of a run that are cast in a mould, a count for each kind of contents: pieces that are cut from one cavity have
 * the same in it.
 */
export function countsInside(
  { count, groups }: Pick<RunOrder, 'count' | 'groups'>,
  { parts }: PartsOfPieces,
  inMould: ReadonlySet<string>,
): number[] {
  const alike = new Map<string, number>();
  for (const group of groups ?? [{ count, parts: parts.map(({ key }) => key) }]) {
    const inside = group.parts
      .filter((part) => inMould.has(part))
      .sort()
      .join(' ');
    if (inside !== '') alike.set(inside, (alike.get(inside) ?? 0) + group.count);
  }
  return [...alike.values()];
}

/**
 * An order for another number of pieces: its groups shrink or grow in proportion, and each keeps a piece.
 * @param count at least as many as there are groups, else the groups come to more
 */
export function withPieces(order: RunOrder, count: number): RunOrder {
  const { groups } = order;
  if (groups === undefined) return { ...order, count };
  const shares = proportional(
    groups.map((group) => group.count),
    count,
    1,
  );
  return { ...order, count, groups: groups.map((group, i) => ({ ...group, count: shares[i] ?? 1 })) };
}

/** What is left of an order once some of its pieces are made in another: groups without a piece are gone. */
export function withoutPieces(order: RunOrder, taken: RunOrder): RunOrder {
  const count = order.count - taken.count;
  if (order.groups === undefined) return { ...order, count };
  const groups = order.groups.map((group) => {
    const gone = taken.groups?.find(({ key }) => key === group.key)?.count ?? 0;
    return { ...group, count: group.count - gone };
  });
  return { ...order, count, groups: groups.filter((group) => group.count > 0) };
}

/** Whole shares of a whole in proportion to weights: each one goes to the share that is furthest behind. */
function proportional(weights: readonly number[], whole: number, least: number): number[] {
  const sum = weights.reduce((all, weight) => all + weight, 0);
  const shares = weights.map(() => least);
  const behind = (i: number): number => ((weights[i] ?? 0) * whole) / sum - (shares[i] ?? 0);
  for (let left = whole - least * weights.length; left > 0; left -= 1) {
    const next = weights.reduce((most, _, i) => (behind(i) > behind(most) ? i : most), 0);
    shares[next] = (shares[next] ?? 0) + 1;
  }
  return shares;
}

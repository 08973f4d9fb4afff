/** What a piece being entered can be given without leaving it for good. */
export type MadeKind = 'recipes' | 'moulds';

const fields = { recipes: 'recipe', moulds: 'mould' } as const;

/** For which part of which piece something new is made; the part is empty for all of a pattern. */
export interface ForPiece {
  /** Id of the design, or `new`. */
  readonly piece: string;
  readonly part: string;
}

/** Where something new is described for a part of a piece. What was entered of the piece waits in its draft. */
export function newForPiece(kind: MadeKind, piece: string, part: string): string {
  return `/makings/${kind}/new?${new URLSearchParams({ piece, part }).toString()}`;
}

/** Read from the address of what is being described. @returns null where it is for no piece */
export function forPieceIn(search: URLSearchParams): ForPiece | null {
  const piece = search.get('piece');
  // It becomes part of an address: nothing but an id.
  return piece === null || !/^[\w-]{1,64}$/.test(piece) ? null : { piece, part: search.get('part') ?? '' };
}

/** Back to the piece. @param made key of what was made for it; absent: nothing was */
export function backToPiece({ piece, part }: ForPiece, kind: MadeKind, made?: string): string {
  const taken =
    made === undefined ? '' : `?${new URLSearchParams({ part, [fields[kind]]: made }).toString()}`;
  return `/makings/designs/${piece}${taken}`;
}

/** What was made for a part, as the address of the piece tells it. */
export function madeIn(
  search: URLSearchParams,
): { readonly part: string; readonly field: 'recipe' | 'mould'; readonly key: string } | null {
  for (const field of ['recipe', 'mould'] as const) {
    const key = search.get(field);
    if (key !== null) return { part: search.get('part') ?? '', field, key };
  }
  return null;
}

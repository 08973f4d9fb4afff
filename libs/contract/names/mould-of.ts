/** What of a part says whether it is cast; decor never is. */
type Castable = { readonly kind: 'decor' } | { readonly kind: string; readonly mould?: string | undefined };

/** The mould that a part is cast in. @returns undefined for what is never in one */
export function mouldOf(part: Castable): string | undefined {
  return 'mould' in part ? part.mould : undefined;
}

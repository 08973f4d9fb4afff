/** How well a figure is known. Shown to the maker wherever the figure decides something. */
export type Evidence =
  /** The source named was read, or a copy of its table. */
  | { readonly kind: 'published'; readonly source: string }
  /** What makers do; no source was found. A default to change, never an oracle. */
  | { readonly kind: 'common practice' }
  /** Recalled, not read; `source` names what it was recalled from, if anything. */
  | { readonly kind: 'from memory'; readonly source?: string }
  /** What the workshop's own log tells. */
  | { readonly kind: 'bench log' };

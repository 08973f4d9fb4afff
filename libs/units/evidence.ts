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

/** The evidence in a few words, for a reason line. */
export function evidenceText(evidence: Evidence): string {
  switch (evidence.kind) {
    case 'published':
      return evidence.source;
    case 'common practice':
      return 'common practice, no source';
    case 'bench log':
      return 'your bench log';
    case 'from memory':
      return evidence.source === undefined ? 'from memory' : `from memory of ${evidence.source}`;
  }
}

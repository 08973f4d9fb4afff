/** Something that may go wrong with a batch as it is written, and what would help. */
export interface Risk {
  /** Stable, dotted. */
  readonly code: string;
  /** How much it matters: a nuisance, a spoilt piece, a burn or a spoilt batch. */
  readonly level: 'low' | 'medium' | 'high';
  readonly text: string;
  readonly remedy: string;
}

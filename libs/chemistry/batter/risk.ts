/** Something that may go wrong with a batch as it is written, and what would help. */
export interface Risk {
  /** Stable, dotted. */
  readonly code: string;
  readonly text: string;
  readonly remedy: string;
}

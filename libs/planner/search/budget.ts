/** How much may be spent on a search, over everything that is asked of it. */
export interface Budget {
  /** Conflicts to learn from. */
  left: number;
  /** Asked now and then; the search ends soon after it says true. */
  readonly stop: () => boolean;
}

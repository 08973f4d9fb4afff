import type { Learned } from '#contract';

/** What a workshop has learned that has logged nothing. */
export const nothingLearned: Learned = { paces: [], earliest: [], uses: [] };

import type { StageKind } from '#contract/names';
import { useWords, type Words } from '../../../words/words.js';
import type { PieceTitles } from './piece-titles.js';

/** Titles in the language of the page for what is added to a design. */
export function usePieceTitles(): PieceTitles {
  return pieceTitles(useWords());
}

/** @returns titles that a maker could have given; of a stage that only handles a part, what is done */
export function pieceTitles({ patterns, library }: Pick<Words, 'patterns' | 'library'>): PieceTitles {
  const made: Readonly<Partial<Record<StageKind, (part: string) => string>>> = patterns.stageTitles;
  return {
    roles: patterns.roles,
    colour: library.colour,
    joinHalves: patterns.joinHalves,
    stage: (kind, part) => (part === '' ? undefined : made[kind]?.(part)) ?? library.stageKinds[kind],
  };
}

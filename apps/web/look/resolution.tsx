import type { ReactNode } from 'react';
import type { ConflictResolution } from '#contract';
import { Sentence, SentenceList } from './sentence.js';

/** What a conflict comes to on the clock, and what alone would be enough to end it, under a heading. */
export function Resolution({
  of: { timing, relaxations },
  words,
}: {
  readonly of: ConflictResolution;
  readonly words: { readonly relaxations: string; readonly noRelaxation: string };
}): ReactNode {
  return (
    <>
      {timing !== null && (
        <p>
          <Sentence of={timing} />
        </p>
      )}
      <h3>{relaxations.length === 0 ? words.noRelaxation : words.relaxations}</h3>
      <SentenceList of={relaxations} />
    </>
  );
}

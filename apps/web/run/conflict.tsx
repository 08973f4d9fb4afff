import type { ReactNode } from 'react';
import { Resolution } from '../look/resolution.js';
import { SentenceList } from '../look/sentence.js';
import { useWords } from '../words/words.js';
import type { Document } from './use-run.js';

/** Why there is no plan: the smallest set of things that cannot all be, and what alone would be enough. */
export function Conflict({ document }: { readonly document: Document }): ReactNode {
  const { conflictNote: words, undecided } = useWords().run;
  const { conflict, resolution, status, runs } = document;
  const keeps = runs.some(({ stages }) => stages.some((stage) => stage.status === 'planned'));
  if (status === 'undecided') {
    return (
      <section className="note amber stack tight">
        <h2>{undecided}</h2>
        <p>{words.undecided}</p>
      </section>
    );
  }
  return (
    <section className="note coral stack tight">
      <h2>{words.title}</h2>
      <SentenceList of={conflict} />
      {resolution !== undefined && <Resolution of={resolution} words={words} />}
      {keeps && <p className="small">{words.kept}</p>}
    </section>
  );
}

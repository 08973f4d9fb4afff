import type { ReactNode } from 'react';
import { useWords } from '../words/words.js';
import type { Document } from './use-run.js';

/** Why there is no plan: the smallest set of things that cannot all be, and what alone would be enough. */
export function Clash({ document }: { readonly document: Document }): ReactNode {
  const { clash: words, undecided } = useWords().run;
  const { conflict, clash, status, runs } = document;
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
      {clash?.text && <p>{clash.text}</p>}
      <ul>
        {conflict.map(({ code, text }) => (
          <li key={`${code} ${text}`}>{text}</li>
        ))}
      </ul>
      {clash !== undefined && <p>{clash.either}</p>}
      {clash !== undefined && clash.ways.length > 1 && (
        <>
          <h3>{words.ways}</h3>
          <ul>
            {clash.ways.map(({ code, text }) => (
              <li key={`${code} ${text}`}>{text}</li>
            ))}
          </ul>
        </>
      )}
      {keeps && <p className="small">{words.kept}</p>}
    </section>
  );
}

import type { ReactNode } from 'react';
import { Sentence } from '../look/sentence.js';
import { useTexts } from '../look/use-texts.js';
import { useWords } from '../words/words.js';
import type { Document } from './use-run.js';

/** The stages that cost the most odds, the worst first. */
export function WeakLinks({
  document,
  run,
}: {
  readonly document: Document;
  readonly run: string;
}): ReactNode {
  const { weak } = useWords().run;
  const { odds } = useTexts();
  if (document.odds === null) return null;
  const stages = document.runs.find((each) => each.run === run)?.stages ?? [];
  const titleOf = (key: string): string =>
    key === 'ready' ? weak.ready : (stages.find((stage) => stage.key === key)?.title ?? key);
  const most = Math.max(...document.weakLinks.map((link) => link.share));
  return (
    <section className="stack tight">
      <h2>{weak.title}</h2>
      {document.weakLinks.length === 0 && <p>{weak.none}</p>}
      <ol className="run-weak">
        {document.weakLinks.slice(0, 4).map((link) => (
          <li key={`${link.stage} ${String(link.attempt)}`}>
            <span
              className="run-leak"
              aria-hidden
              style={{ inlineSize: `${String(Math.max(4, (link.share / most) * 100))}%` }}
            />
            <strong>{titleOf(link.stage)}</strong>{' '}
            <span className="numbers">{weak.lost(odds(link.share))}</span>
            <br />
            <span className="small">
              <Sentence of={link.why} />
            </span>
          </li>
        ))}
      </ol>
    </section>
  );
}

import { TriangleAlert } from 'lucide-react';
import { useEffect, useRef, type ReactNode } from 'react';
import { Sentence } from '../look/sentence.js';
import { useWords } from '../words/words.js';
import type { BenchStage } from './bench-view.js';
import { distinctCautions, useCautionsSeen } from './cautions-seen.js';

/** The cautions of a sitting, each once: in full until they were read, and a tap away after that. */
export function SittingCautions({ stages }: { readonly stages: readonly BenchStage[] }): ReactNode {
  const { now } = useWords();
  const cautions = distinctCautions(
    stages.flatMap(({ state, stage }) => (state === 'open' ? stage.cautions : [])),
  );
  const [isSeen, say] = useCautionsSeen(cautions);
  const folded = useRef<HTMLElement>(null);
  const wasUnread = useRef(false);
  useEffect(() => {
    // The button that was pressed is gone, so the focus would be nowhere.
    if (isSeen && wasUnread.current) folded.current?.focus();
    wasUnread.current = !isSeen;
  }, [isSeen]);
  if (cautions.length === 0) return null;
  const head = (
    <>
      <TriangleAlert size={18} aria-hidden /> {now.mind}:{' '}
      {cautions.map(({ code }) => now.cautionNames[code]).join(', ')}
    </>
  );
  const list = (
    <ul className="stack tight small">
      {cautions.map((caution) => (
        <li key={caution.code}>
          <Sentence of={caution} />
        </li>
      ))}
    </ul>
  );
  if (isSeen) {
    return (
      <details className="note amber sitting-cautions">
        <summary ref={folded}>{head}</summary>
        {list}
      </details>
    );
  }
  return (
    <section className="note amber stack tight sitting-cautions" aria-label={now.mind}>
      <h3>{head}</h3>
      {list}
      <p>
        <button type="button" className="button" onClick={say}>
          {now.readCautions}
        </button>
      </p>
    </section>
  );
}

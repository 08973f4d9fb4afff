import type { ReactNode } from 'react';
import { useAmounts } from '../look/amounts.js';
import { Sentence, SentenceList } from '../look/sentence.js';
import { useTimes } from '../look/times.js';
import { useWords } from '../words/words.js';
import { useOdds } from './use-odds.js';
import type { Document } from './use-run.js';

/** Odds in words and number, the guarantee, and when the lot is likely cured. */
export function Holds({ document, run }: { readonly document: Document; readonly run: string }): ReactNode {
  const { run: words } = useWords();
  const { holds } = words;
  const { day } = useTimes();
  const { number } = useAmounts();
  const odds = useOdds();
  const ready = document.runs.find((each) => each.run === run)?.ready;
  return (
    <section className="card stack tight">
      <h2>{holds.title}</h2>
      {document.odds === null ? (
        <p>{document.status === 'planned' ? holds.nothingLeft : words.noOdds}</p>
      ) : (
        <>
          <p className="run-odds">{odds.full(document.odds)}</p>
          <p className="small soft">{holds.means(number(document.odds.scenarios))}</p>
        </>
      )}
      <Guaranteed guarantee={document.guarantee} />
      {ready && (
        <p>
          <strong>
            {words.ready} {day(ready.likely)}
          </strong>
          , {words.readyBand(day(ready.low), day(ready.high))}.
        </p>
      )}
      {document.runs
        .find((each) => each.run === run)
        ?.cautions.map((caution) => (
          <p key={caution.code} className="note amber">
            <Sentence of={caution} />
          </p>
        ))}
    </section>
  );
}

function Guaranteed({ guarantee }: { readonly guarantee: Document['guarantee'] }): ReactNode {
  const { holds } = useWords().run;
  if (guarantee === null) return null;
  const percent = `${String(guarantee.bandPercent)} %`;
  if (guarantee.holds) return <p>{holds.yes(percent)}</p>;
  return (
    <details>
      <summary>{holds.no(percent)}</summary>
      <SentenceList of={guarantee.reasons} />
    </details>
  );
}

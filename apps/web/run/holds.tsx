import type { ReactNode } from 'react';
import { useAmounts } from '../look/amounts.js';
import { oneStop, Sentence, SentenceList } from '../look/sentence.js';
import { useTexts } from '../look/use-texts.js';
import { useTimes } from '../look/times.js';
import { useWords } from '../words/words.js';
import { OddsBar } from './odds-bar.js';
import type { Document } from './use-run.js';

/** Odds, the guarantee, and when the lot is likely cured. */
export function Holds({ document, run }: { readonly document: Document; readonly run: string }): ReactNode {
  const { run: words } = useWords();
  const { holds } = words;
  const { day } = useTimes();
  const { odds } = useTexts();
  const ready = document.runs.find((each) => each.run === run)?.ready;
  return (
    <section className="card stack tight">
      <h2>{holds.title}</h2>
      {document.odds === null ? (
        <p>{document.status === 'planned' ? holds.nothingLeft : holds.noPlan}</p>
      ) : (
        <>
          <p>
            <span className="run-odds">{odds(document.odds.soundByTheDay)}</span>{' '}
            {document.odds.soundAtAll > document.odds.soundByTheDay ? holds.meansByTheDay : holds.means}
          </p>
          <OddsBar odds={document.odds} />
          <Besides odds={document.odds} />
          <Method odds={document.odds} />
        </>
      )}
      <Guaranteed guarantee={document.guarantee} />
      {ready && (
        <p>
          <strong>
            {words.ready} {day(ready.likely)}
          </strong>
          {oneStop(`, ${words.countOn(day(ready.high))}.`)}
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

/** The other two odds, where they say anything else than the first. */
function Besides({ odds }: { readonly odds: NonNullable<Document['odds']> }): ReactNode {
  const { holds } = useWords().run;
  const texts = useTexts();
  const [byTheDay, atAll, asPlanned] = [odds.soundByTheDay, odds.soundAtAll, odds.asPlanned].map(texts.odds);
  if (byTheDay === undefined || atAll === undefined || asPlanned === undefined) return null;
  if (atAll === byTheDay && asPlanned === byTheDay) return null;
  return <p className="small">{holds.besides(atAll, asPlanned)}</p>;
}

/** How the odds were found, and how well they are known. */
function Method({ odds }: { readonly odds: NonNullable<Document['odds']> }): ReactNode {
  const { holds } = useWords().run;
  const { number } = useAmounts();
  const texts = useTexts();
  const { scenarios, soundByTheDay, standardError } = odds;
  return (
    <details className="small">
      <summary>{holds.method}</summary>
      <p>{holds.tried(number(scenarios), texts.odds(soundByTheDay), texts.odds(standardError))}</p>
    </details>
  );
}

function Guaranteed({ guarantee }: { readonly guarantee: Document['guarantee'] }): ReactNode {
  const { holds } = useWords().run;
  const { percent } = useAmounts();
  if (guarantee === null) return null;
  // As much lies beyond either end of the band.
  const beyond = percent((100 - guarantee.bandPercent) / 2);
  if (guarantee.holds) return <p>{holds.yes(beyond)}</p>;
  return (
    <details>
      <summary>{holds.no(beyond)}</summary>
      <SentenceList of={guarantee.reasons} />
    </details>
  );
}

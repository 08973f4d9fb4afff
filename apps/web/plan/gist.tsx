import type { ReactNode } from 'react';
import { oneStop } from '../look/sentence.js';
import { useTexts } from '../look/use-texts.js';
import { useTimes } from '../look/times.js';
import { useWords } from '../words/words.js';
import type { WhatIfState } from '../whatif/use-what-if.js';

/** Odds and date in one line, beside the sliders on a phone; read out once things have come to rest. */
export function Gist({ state }: { readonly state: WhatIfState }): ReactNode {
  const { plan: words } = useWords();
  const texts = useTexts();
  const times = useTimes();
  const outcome = state.told?.outcome;
  const plan = outcome?.ok === true ? outcome.plan : undefined;
  const ready = plan?.runs[0]?.ready;
  const odds = plan?.odds ? texts.odds(plan.odds.soundByTheDay) : '–';
  const cured = ready ? times.day(ready.likely) : words.never;
  const isPlanned = plan?.status === 'planned';
  return (
    <>
      <div className="gist numbers" aria-hidden>
        {plan === undefined ? (
          <span>{words.reckoning}</span>
        ) : isPlanned ? (
          <>
            <span>
              {words.odds} <strong>{odds}</strong>
            </span>
            <span>
              {words.cured} <strong>{cured}</strong>
            </span>
            <span>{words.sittings(plan.sittings.length)}</span>
          </>
        ) : (
          <span>{words.gistConflict}</span>
        )}
      </div>
      <p className="visually-hidden" role="status">
        {state.isSettled && (isPlanned ? oneStop(words.gist(odds, cured)) : words.gistConflict)}
      </p>
    </>
  );
}

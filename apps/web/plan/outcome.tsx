import type { ReactNode } from 'react';
import type { PlanDocument } from '#contract';
import type { Issue } from '#units';
import { useAmounts } from '../look/amounts.js';
import { useTimes } from '../look/times.js';
import { pathText } from '#units';
import { useWords } from '../words/words.js';
import type { WhatIfState } from '../whatif/use-what-if.js';
import { AddedNote } from './added-note.js';
import { Amounts } from './amounts.js';
import { cautionsOf, minutesIn, weakest } from './plan-facts.js';
import { Sittings } from './sittings.js';
import { Resolution } from '../look/resolution.js';
import { Sentence, SentenceList, Sentences } from '../look/sentence.js';
import { useTexts } from '../look/use-texts.js';

/** What a plan comes to, as it is tried: odds, dates, sittings, amounts; or why there is none. */
export function Outcome({ state }: { readonly state: WhatIfState }): ReactNode {
  const { plan: words } = useWords();
  const { told, broken } = state;
  if (broken !== null) return <p className="note coral">{words.broken(broken)}</p>;
  if (told === null) return <p className="soft">{words.reckoning}</p>;
  if (!told.outcome.ok) return <Wrong issues={told.outcome.issues} />;
  const { plan, latest } = told.outcome;
  return (
    <div className="stack">
      {latest !== undefined && (
        <p className={latest.status === 'found' ? 'note' : 'note amber'}>
          <Sentences of={latest.why} />
        </p>
      )}
      {plan.status === 'planned' && <Headline plan={plan} isRough={!state.isSettled} />}
      {plan.status === 'conflict' && <Conflict plan={plan} />}
      {plan.status === 'undecided' && <p className="note amber">{words.undecided}</p>}
      {plan.status === 'planned' && <Sittings plan={plan} hours={told.ask.base.input.workshop.hours} />}
      <AddedNote run={plan.runs[0]} />
      <Amounts plan={plan} />
      <Cautions plan={plan} />
    </div>
  );
}

function Headline({ plan, isRough }: { readonly plan: PlanDocument; readonly isRough: boolean }): ReactNode {
  const { plan: words } = useWords();
  const amounts = useAmounts();
  const times = useTimes();
  const ready = plan.runs[0]?.ready;
  const texts = useTexts();
  const weak = weakest(plan);
  return (
    <dl className="headline">
      <div>
        <dt>{words.odds}</dt>
        <dd className="numbers">
          <strong className="figure">{plan.odds === null ? '–' : texts.odds(plan.odds.soundByTheDay)}</strong>
          <span className="soft small">
            {hasLateness(plan) ? words.oddsByTheDay : words.oddsMeaning},{' '}
            {isRough ? words.oddsRough : words.oddsFull(amounts.number(plan.odds?.scenarios ?? 0))}
          </span>
        </dd>
      </div>
      <div>
        <dt>{words.cured}</dt>
        <dd className="numbers">
          <strong className="figure">{ready ? times.day(ready.likely) : words.never}</strong>
          {ready && <span className="soft small">{words.countOn(times.day(ready.high))}</span>}
        </dd>
      </div>
      <div>
        <dt>{words.sittings(plan.sittings.length)}</dt>
        <dd className="numbers soft small">{words.atBench(times.length(minutesIn(plan)))}</dd>
      </div>
      <div className="wide">
        <dt>{words.weakLink}</dt>
        <dd className="small">
          {weak === undefined ? (
            words.noWeakLink
          ) : (
            <>
              {words.weakLinkLoses(weak.title ?? words.curedInTime, texts.odds(weak.share))}.{' '}
              <Sentence of={weak.why} />
            </>
          )}
        </dd>
      </div>
    </dl>
  );
}

/** Whether a day was asked for that some runs miss; without, sound by the day and sound at all are one. */
function hasLateness({ odds }: PlanDocument): boolean {
  return odds !== null && odds.soundAtAll > odds.soundByTheDay;
}

function Conflict({ plan }: { readonly plan: PlanDocument }): ReactNode {
  const { plan: words } = useWords();
  const { resolution, conflict } = plan;
  return (
    <div className="note amber stack tight" role="status">
      <h3>{words.conflictTitle}</h3>
      <SentenceList of={conflict} />
      {resolution !== undefined && <Resolution of={resolution} words={words} />}
    </div>
  );
}

function Wrong({ issues }: { readonly issues: readonly Issue[] }): ReactNode {
  const { plan: words } = useWords();
  const texts = useTexts();
  return (
    <div className="note amber stack tight" role="status">
      <h3>{words.wrongTitle}</h3>
      <ul>
        {issues.map((issue) => (
          <li key={`${issue.code} ${pathText(issue.path)}`}>{texts.issue(issue)}</li>
        ))}
      </ul>
    </div>
  );
}

function Cautions({ plan }: { readonly plan: PlanDocument }): ReactNode {
  const { plan: words } = useWords();
  const cautions = cautionsOf(plan);
  return (
    cautions.length > 0 && (
      <section className="note coral stack tight">
        <h3>{words.cautions}</h3>
        <ul className="small">
          {cautions.map((caution) => (
            <li key={caution.code}>
              <Sentence of={caution} />
            </li>
          ))}
        </ul>
      </section>
    )
  );
}

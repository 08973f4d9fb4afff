import type { ReactNode } from 'react';
import { timesFor } from '../../look/times.js';
import type { WhatIfState } from '../../whatif/use-what-if.js';
import { useLanguage, useWords } from '../../words/words.js';
import { asUtc, hoursBetween, later, type LocalTime } from '../local-times.js';
import { Outcome } from '../outcome.js';
import { Slider } from '../slider.js';
import { countOf, mostOf, type GuideDraft } from './guide-draft.js';

const DAYS = 14;

/** How many and from when; and all that comes of it. */
export function StartStep({
  draft,
  now,
  state,
  onChange,
}: {
  readonly draft: GuideDraft;
  readonly now: LocalTime;
  readonly state: WhatIfState;
  readonly onChange: (change: Partial<GuideDraft>) => void;
}): ReactNode {
  const { plan } = useWords();
  const times = timesFor(useLanguage(), 'UTC');
  const count = countOf(draft);
  return (
    <>
      <Slider
        label={plan.guide.count}
        value={count}
        text={plan.pieceCount(count)}
        low={1}
        high={Math.max(2, mostOf(draft))}
        step={1}
        onChange={(value) => onChange({ count: value })}
      />
      <Slider
        label={plan.start}
        value={hoursBetween(now, draft.startAfter)}
        text={times.dayTime(asUtc(draft.startAfter))}
        low={0}
        high={Math.max(DAYS * 24, hoursBetween(now, draft.startAfter))}
        step={1}
        ends={[plan.nowEnd, times.day(asUtc(later(now, DAYS * 1440)))]}
        onChange={(value) => onChange({ startAfter: later(now, value * 60) })}
      />
      <p className="soft small">{plan.guide.willSave}</p>
      <section className="card outcome" aria-label={plan.outcome}>
        <h3>{plan.outcome}</h3>
        {state.told === null ? <p className="soft">{plan.guide.weighFirst}</p> : <Outcome state={state} />}
      </section>
    </>
  );
}

import type { ReactNode } from 'react';
import { useAmounts } from '../look/amounts.js';
import { timesFor } from '../look/times.js';
import { useLanguage, useWords } from '../words/words.js';
import { asUtc, hoursBetween, later, type LocalTime } from './local-times.js';
import type { PlanDraft } from './plan-draft.js';
import { Slider } from './slider.js';

/** How far ahead the slider reaches; the field beside it goes further. */
const SLIDER_DAYS = 21;

/** Begin after a moment, or be ready by a day. All on the wall of the workshop. */
export function When({
  draft,
  now,
  onChange,
}: {
  readonly draft: PlanDraft;
  /** The coming hour. */
  readonly now: LocalTime;
  readonly onChange: (change: Partial<PlanDraft>) => void;
}): ReactNode {
  const { plan } = useWords();
  const amounts = useAmounts();
  const times = timesFor(useLanguage(), 'UTC');
  const hours = Math.max(SLIDER_DAYS * 24, hoursBetween(now, draft.startAfter));
  return (
    <fieldset className="stack">
      <legend>{plan.when}</legend>
      <div className="choices">
        {(['after', 'by'] as const).map((aim) => (
          <label key={aim}>
            <input
              type="radio"
              name="aim"
              value={aim}
              checked={draft.aim === aim}
              onChange={() => onChange({ aim })}
            />
            <span>{plan.aims[aim]}</span>
          </label>
        ))}
      </div>
      {draft.aim === 'after' ? (
        <>
          <Slider
            label={plan.start}
            value={hoursBetween(now, draft.startAfter)}
            text={times.dayTime(asUtc(draft.startAfter))}
            low={0}
            high={hours}
            step={1}
            ends={[plan.nowEnd, times.day(asUtc(later(now, hours * 60)))]}
            onChange={(value) => onChange({ startAfter: later(now, value * 60) })}
          />
          <div className="field">
            <label htmlFor="start-after">{plan.startExactly}</label>
            <input
              id="start-after"
              type="datetime-local"
              value={draft.startAfter}
              min={now}
              onChange={({ target }) => {
                if (target.value !== '') onChange({ startAfter: target.value });
              }}
            />
          </div>
        </>
      ) : (
        <>
          <div className="field">
            <label htmlFor="ready-by">{plan.readyBy}</label>
            <input
              id="ready-by"
              type="date"
              value={draft.readyBy}
              min={later(now, 1440).slice(0, 10)}
              onChange={({ target }) => {
                if (target.value !== '') onChange({ readyBy: target.value });
              }}
            />
          </div>
          <Slider
            label={plan.wantedOdds}
            value={draft.oddsPercent}
            text={amounts.percent(draft.oddsPercent)}
            low={50}
            high={99}
            step={1}
            onChange={(oddsPercent) => onChange({ oddsPercent })}
          />
        </>
      )}
    </fieldset>
  );
}

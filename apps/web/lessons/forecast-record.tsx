import { Suspense, type ReactNode } from 'react';
import type { Schemas } from '../api/client.js';
import { useAmounts } from '../look/amounts.js';
import { Sign } from '../look/sign.js';
import type { RecordWords } from '../words/en/record.js';
import { lazyWords } from '../words/lazy-words.js';

type Told = Schemas['ForecastRecord'];
type Verdict = Told['forecasts'][number]['verdict'];

const useRecordWords = lazyWords<RecordWords>({
  en: async () => (await import('../words/en/record.js')).record,
  de: async () => (await import('../words/de/record.js')).record,
});

const verdicts = ['inside', 'earlier', 'later', 'unknown'] as const satisfies readonly Verdict[];

/** How past forecasts came true, so that a maker sees what odds are worth here. */
export function ForecastRecord({ record }: { readonly record: Told }): ReactNode {
  return (
    <Suspense fallback={null}>
      <Card record={record} />
    </Suspense>
  );
}

function Card({ record: { forecasts, expectedInside, bandPercent } }: { readonly record: Told }): ReactNode {
  const words = useRecordWords();
  const { number, share } = useAmounts();
  const count = (verdict: Verdict): number => forecasts.filter((each) => each.verdict === verdict).length;
  const [earlier, later, unknown] = [count('earlier'), count('later'), count('unknown')];
  return (
    <section className="card stack tight record" aria-labelledby="record">
      <h2 id="record">{words.title}</h2>
      <p>
        <strong>{words.told(forecasts.length, count('inside'), number(expectedInside, 0))}</strong>
      </p>
      <div className="record-marks" aria-hidden>
        {forecasts.map(({ verdict, day, pace, recipe }, i) => (
          <svg key={`${String(i)} ${String(day)} ${pace} ${recipe}`} width="20" height="16">
            <Mark verdict={verdict} />
          </svg>
        ))}
      </div>
      <p className="legend row small soft" aria-hidden>
        {verdicts
          .filter((verdict) => count(verdict) > 0)
          .map((verdict) => (
            <Sign key={verdict} text={words.marks[verdict]}>
              <Mark verdict={verdict} />
            </Sign>
          ))}
      </p>
      {earlier + later > 0 && <p className="small">{words.outside(earlier, later)}</p>}
      {unknown > 0 && <p className="small">{words.unknown(unknown)}</p>}
      <p className="small soft">{words.how(share(bandPercent / 100))}</p>
    </section>
  );
}

/** By its shape, 20 by 16. */
function Mark({ verdict }: { readonly verdict: Verdict }): ReactNode {
  switch (verdict) {
    case 'inside':
      return <circle className="record-inside" cx="10" cy="8" r="6" />;
    case 'earlier':
      return <path className="record-outside" d="M3 8 15 2V14z" />;
    case 'later':
      return <path className="record-outside" d="M17 8 5 2V14z" />;
    case 'unknown':
      return <circle className="record-unknown" cx="10" cy="8" r="5" />;
  }
}

import type { ReactNode } from 'react';
import type { Schemas } from '../api/client.js';
import { useTimes } from '../look/times.js';
import { useWords } from '../words/words.js';

type Band = Schemas['Lot']['ready'];

/** From when on soap may be used, when it is cured, and when it is at its best: likely, and to count on. */
export function CureDays({
  usable,
  cured,
  best,
  now,
}: {
  /** Absent: the plan is from before this was told. */
  readonly usable?: Band | undefined;
  readonly cured: Band;
  readonly best?: Band | undefined;
  readonly now: number;
}): ReactNode {
  const { shelf } = useWords();
  const { day } = useTimes();
  const rows = [
    [shelf.days.usable, usable],
    [shelf.days.cured, cured],
    [shelf.days.best, best],
  ] as const;
  return (
    <>
      <dl className="cure-days numbers">
        {rows.map(
          ([name, band]) =>
            band !== undefined && (
              <div key={name}>
                <dt>{name}</dt>
                <dd>
                  {Date.parse(band.high) <= now ? (
                    shelf.days.since(day(band.high))
                  ) : (
                    <>
                      <strong>{shelf.days.likely(day(band.likely))}</strong>{' '}
                      <span className="soft">{shelf.days.countOn(day(band.high))}</span>
                    </>
                  )}
                </dd>
              </div>
            ),
        )}
      </dl>
      <p className="soft small">{shelf.days.means}</p>
    </>
  );
}

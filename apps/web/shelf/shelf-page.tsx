import { useQuery } from '@tanstack/react-query';
import type { ReactNode } from 'react';
import { Link } from 'react-router';
import { answered, api, type Schemas } from '../api/client.js';
import { useNow } from '../look/times.js';
import { useTimeZone } from '../session/session.js';
import { Failed, Loading } from '../shell/states.js';
import { useWords } from '../words/words.js';
import { LotCard } from './lot-card.js';
import { lotStatus } from './lot-status.js';
import './shelf.css';

/** What is ready when: lots by the day on which they are likely to be cured. */
export default function ShelfPage(): ReactNode {
  const { shelf } = useWords();
  const { data, error, refetch } = useQuery({
    queryKey: ['lots'],
    queryFn: () => answered(api.GET('/api/lots')),
  });
  return (
    <div className="shelf stack">
      <h1>{shelf.title}</h1>
      {data !== undefined ? (
        <Lots lots={data} />
      ) : error !== null ? (
        <Failed error={error} again={() => void refetch()} />
      ) : (
        <Loading />
      )}
    </div>
  );
}

function Lots({ lots }: { readonly lots: readonly Schemas['Lot'][] }): ReactNode {
  const { shelf } = useWords();
  const now = useNow(60_000);
  const timeZone = useTimeZone();
  const placed = lots.map((lot) => ({ lot, status: lotStatus(lot.ready, now, timeZone) }));
  const curing = placed.filter(({ status }) => status.stage !== 'ready');
  const ready = placed.filter(({ status }) => status.stage === 'ready').reverse();
  if (lots.length === 0) return <EmptyShelf />;
  const from = Math.min(...curing.map(({ lot }) => Date.parse(lot.madeAt)));
  const until = Math.max(now, ...curing.map(({ lot }) => Date.parse(lot.ready.high)));
  return (
    <>
      {curing.length > 0 && (
        <section className="stack" aria-labelledby="curing">
          <h2 id="curing">{shelf.curing}</h2>
          <p className="note amber">{shelf.caution}</p>
          {curing.map((each) => (
            <LotCard key={each.lot.id} {...each} now={now} span={{ from, until }} />
          ))}
        </section>
      )}
      {ready.length > 0 && (
        <section className="stack" aria-labelledby="ready">
          <h2 id="ready">{shelf.ready}</h2>
          {ready.map((each) => (
            <LotCard key={each.lot.id} {...each} now={now} />
          ))}
        </section>
      )}
    </>
  );
}

function EmptyShelf(): ReactNode {
  const { shelf } = useWords();
  return (
    <div className="card stack empty-shelf">
      <svg viewBox="0 0 240 90" aria-hidden className="boards">
        <path className="board" d="M8 76h224M24 76v10M216 76v10" />
        <rect className="bar one" x="34" y="44" width="40" height="30" rx="6" />
        <rect className="bar two" x="84" y="36" width="40" height="38" rx="6" />
        <rect className="bar three" x="134" y="50" width="40" height="24" rx="6" />
      </svg>
      <p className="lead">{shelf.empty}</p>
      <p className="soft">{shelf.emptyHow}</p>
      <p>
        <Link className="button" to="/runs">
          {shelf.toRuns}
        </Link>
      </p>
    </div>
  );
}

import { useQueries } from '@tanstack/react-query';
import type { ReactNode } from 'react';
import { Link } from 'react-router';
import { answered, api, type Schemas } from '../api/client.js';
import { useNow } from '../look/times.js';
import { useTimeZone } from '../session/session.js';
import { Failed, Loading } from '../shell/states.js';
import { useWords } from '../words/words.js';
import { nextWeighIn, type NextWeighIn } from './curing-runs.js';
import { LotCard } from './lot-card.js';
import { lotStatus, type LotStatus } from './lot-status.js';
import { MakingCard } from './making-card.js';
import './shelf.css';
import { useShelf, type Pouring } from './use-shelf.js';

/** What is ready when: all soap from its first pour on, by the day on which it is likely to be cured. */
export default function ShelfPage(): ReactNode {
  const { shelf } = useWords();
  const { lots, pouring, isLooking, error, again } = useShelf();
  return (
    <div className="shelf stack">
      <h1>{shelf.title}</h1>
      {lots !== undefined && (!isLooking || lots.length + pouring.length > 0) ? (
        <Shelf lots={lots} pouring={pouring} />
      ) : error !== null ? (
        <Failed error={error} again={again} />
      ) : (
        <Loading />
      )}
    </div>
  );
}

interface Placed {
  readonly lot: Schemas['Lot'];
  readonly status: LotStatus;
}

function Shelf({
  lots,
  pouring,
}: {
  readonly lots: readonly Schemas['Lot'][];
  readonly pouring: readonly Pouring[];
}): ReactNode {
  const { shelf } = useWords();
  const now = useNow(60_000);
  const timeZone = useTimeZone();
  const placed = lots.map((lot) => ({ lot, status: lotStatus(lot.ready, now, timeZone) }));
  const curing = placed.filter(({ status }) => status.stage !== 'ready');
  const ready = placed.filter(({ status }) => status.stage === 'ready').reverse();
  const weighIns = useWeighIns(curing, now);
  if (lots.length + pouring.length === 0) return <EmptyShelf />;
  const from = Math.min(
    ...curing.map(({ lot }) => Date.parse(lot.madeAt)),
    ...pouring.map(({ pouredAt }) => pouredAt),
  );
  const ends = [...curing.map(({ lot }) => lot.ready), ...pouring.flatMap(({ plan }) => plan.ready ?? [])];
  const span = { from, until: Math.max(now, ...ends.map(({ high }) => Date.parse(high))) };
  return (
    <>
      {curing.length + pouring.length > 0 && (
        <section className="stack" aria-labelledby="curing">
          <h2 id="curing">{shelf.curing}</h2>
          <p className="note amber">{shelf.caution}</p>
          <DueWeighIns placed={curing} weighIns={weighIns} />
          {curing.map((each, i) => (
            <LotCard key={each.lot.id} {...each} {...{ now, span }} weighIn={weighIns[i]} />
          ))}
          {pouring.map((each) => (
            <MakingCard key={each.run.id} pouring={each} {...{ now, span }} />
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

/** When each lot is to be weighed next; undefined where its log is not here. */
function useWeighIns(placed: readonly Placed[], now: number): readonly (NextWeighIn | undefined)[] {
  return useQueries({
    queries: placed.map(({ lot: { runId: id } }) => ({
      queryKey: ['log', id],
      queryFn: () => answered(api.GET('/api/runs/{id}/log', { params: { path: { id } } })),
    })),
  }).map(({ data }, i) => {
    const madeAt = Date.parse(placed[i]?.lot.madeAt ?? '');
    return data === undefined ? undefined : nextWeighIn(data, madeAt, now);
  });
}

/** Which lots wait for the scales, with the way to each. */
function DueWeighIns({
  placed,
  weighIns,
}: {
  readonly placed: readonly Placed[];
  readonly weighIns: readonly (NextWeighIn | undefined)[];
}): ReactNode {
  const { shelf } = useWords();
  const due = placed.filter((_, i) => weighIns[i]?.isDue === true);
  if (due.length === 0) return null;
  return (
    <p className="note due-weigh-ins">
      <strong>{shelf.weighThese(due.length)}</strong>
      {due.map(({ lot }) => (
        <a key={lot.id} href={`#lot-${lot.id}`}>
          {lot.title}
        </a>
      ))}
    </p>
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

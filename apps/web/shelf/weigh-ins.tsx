import { useQuery } from '@tanstack/react-query';
import type { ReactNode } from 'react';
import { answered, api, type Schemas } from '../api/client.js';
import { useAmounts } from '../look/amounts.js';
import { Sentence } from '../look/sentence.js';
import { useLogQueue } from '../offline/use-log-queue.js';
import { Failed, Loading } from '../shell/states.js';
import { useWords } from '../words/words.js';
import { CurePicture } from './cure-picture.js';
import { CureTable } from './cure-table.js';
import { Readings } from './readings.js';
import { WeighInForm } from './weigh-in-form.js';

type Lot = Schemas['Lot'];
type Cure = Schemas['CureCurve'];

/** The weigh-ins of a lot, what they lead to expect, and the next one. */
export function WeighIns({ lot, isCuring }: { readonly lot: Lot; readonly isCuring: boolean }): ReactNode {
  const { data, error, refetch } = useQuery({
    queryKey: ['cure', lot.runId],
    queryFn: () => answered(api.GET('/api/runs/{id}/cure', { params: { path: { id: lot.runId } } })),
  });
  if (data === undefined) {
    return error === null ? <Loading /> : <Failed error={error} again={() => void refetch()} />;
  }
  return <Weighed lot={lot} cure={data} isCuring={isCuring} />;
}

function Weighed({
  lot,
  cure,
  isCuring,
}: {
  readonly lot: Lot;
  readonly cure: Cure;
  readonly isCuring: boolean;
}): ReactNode {
  const { shelf } = useWords();
  const waiting = useLogQueue().filter(
    ({ runId, entry, refusal }) => runId === lot.runId && entry.kind === 'weigh-in' && refusal === undefined,
  ).length;
  if (cure.startedAt === null) return <p className="soft">{shelf.notBegun}</p>;
  return (
    <div className="stack weigh-ins">
      {cure.readings.length === 0 ? (
        <p className="soft">{shelf.noWeighIns}</p>
      ) : (
        <>
          <CurePicture lot={lot} cure={cure} startedAt={cure.startedAt} />
          <Told cure={cure} />
          <Readings runId={lot.runId} readings={cure.readings} />
          {cure.curve.length > 0 && <CureTable cure={cure} startedAt={cure.startedAt} />}
        </>
      )}
      {waiting > 0 && (
        <p className="note" role="status">
          {shelf.waitingCount(waiting)}
        </p>
      )}
      <WeighInForm lot={lot} last={cure.readings.at(-1)} isCuring={isCuring} />
    </div>
  );
}

/** What the weighings say, in words. */
function Told({ cure: { cure, byWeight } }: { readonly cure: Cure }): ReactNode {
  const { shelf } = useWords();
  const { mass, number } = useAmounts();
  const { freshG, settledG, readyDays, settled, note } = cure;
  const day = (days: number): string => number(days, 0);
  return (
    <ul className="told">
      <li>{byWeight ? shelf.byWeight : shelf.byClock}</li>
      {settled && <li>{shelf.settled}</li>}
      {freshG && <li>{shelf.fresh(mass(freshG.likely), mass(freshG.low), mass(freshG.high))}</li>}
      {settledG && <li>{shelf.settles(mass(settledG.likely), mass(settledG.low), mass(settledG.high))}</li>}
      {readyDays && !settled && (
        <li>{shelf.readyByWeight(day(readyDays.low), day(readyDays.likely), day(readyDays.high))}</li>
      )}
      {note !== undefined && (
        <li className="soft">
          <Sentence of={note} />
        </li>
      )}
    </ul>
  );
}

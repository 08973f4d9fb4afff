import type { ReactNode } from 'react';
import type { Schemas } from '../api/client.js';
import { serverNow } from '../api/server-time.js';
import { useAmounts } from '../look/amounts.js';
import { useTimes } from '../look/times.js';
import { Confirm } from '../shell/confirm.js';
import { Failed } from '../shell/states.js';
import { useWords } from '../words/words.js';
import { useLogEntry } from '../offline/use-log-entry.js';

type Reading = Schemas['CureCurve']['readings'][number];

/** What was on the scales, latest first, each to be taken back if it was a slip. */
export function Readings({
  runId,
  readings,
}: {
  readonly runId: string;
  readonly readings: readonly Reading[];
}): ReactNode {
  const { shelf } = useWords();
  const times = useTimes();
  const { mass, share } = useAmounts();
  const log = useLogEntry(runId);
  const first = readings.find(({ counts }) => counts);
  return (
    <>
      <h4>{shelf.weighInsCount(readings.length)}</h4>
      <ul className="readings">
        {readings.toReversed().map((reading) => (
          <li key={reading.entry} className="row apart">
            <div className="numbers">
              <p>
                {times.dayTime(reading.at)}: <strong>{mass(reading.pieceG)}</strong>{' '}
                <span className="soft">{shelf.perPiece}</span>
                {reading.counts && first !== undefined && first !== reading && (
                  <span className="soft"> ({signed(reading.pieceG / first.pieceG - 1, share)})</span>
                )}
              </p>
              <p className="soft small">
                {shelf.pieces(reading.pieces)}, {mass(reading.massG)}
                {!reading.counts && ` · ${shelf.legend.leftOut}`}
              </p>
            </div>
            <Confirm
              label={shelf.takeBack}
              name={shelf.takeBackThis(times.dayTime(reading.at))}
              ask={shelf.takeBackAsk(times.dayTime(reading.at))}
              yes={shelf.takeBackYes}
              no={shelf.keep}
              className="button plain small"
              busy={log.isPending}
              onYes={() =>
                log.mutate({
                  kind: 'take-back',
                  entry: reading.entry,
                  at: new Date(serverNow()).toISOString(),
                })
              }
            />
          </li>
        ))}
      </ul>
      {log.error !== null && <Failed error={log.error} again={() => log.reset()} />}
    </>
  );
}

function signed(share: number, write: (share: number) => string): string {
  return share < 0 ? `−${write(-share)}` : `+${write(share)}`;
}
